/** Changes of a text at the place of one entry: all else of it stays as it was, to the letter. */
import { isScalar, type Pair, type ParsedNode } from 'yaml'
import { endOf, endOfPair } from '../../scenario/with-changes.js'
import type { Difference, Holder, InHolder, Replace } from './differences.js'
import { lineOf } from './yaml-text.js'

/** From where to where an entry stands, its key included. */
interface Span {
  from: number
  to: number
}

/** The text with the difference made: at its place alone, or where that is written in a way that forbids it, with all that holds it. */
export function spliced(text: string, difference: Difference): string {
  if (difference.does === 'replace') return replacedAt(text, difference)
  return splicedInside(text, difference) ?? replacedAt(text, difference.whole)
}

/** A whole document has its keys in lines. */
function replacedAt(text: string, { holder, index, value }: Replace): string {
  if (holder) return replaced(text, holder, index, lineOf(value))
  const entries = Object.entries(value as object)
  return entries.map(([key, each]) => `${lineOf(key)}: ${lineOf(each)}\n`).join('')
}

function splicedInside(text: string, difference: InHolder): string | null {
  const { holder, index } = difference
  if (difference.does === 'insert') {
    const { key, value } = difference
    const entry = key === null ? lineOf(value) : `${lineOf(key)}: ${lineOf(value)}`
    return (holder.flow ? insertedInFlow : insertedInBlock)(text, holder, index, entry)
  }
  if (difference.does === 'remove')
    return (holder.flow ? removedFromFlow : removedFromBlock)(text, holder, index)
  return (holder.flow ? movedInFlow : movedInBlock)(text, holder, index, difference.to)
}

const isPair = (item: Holder['items'][number]): item is Pair<ParsedNode, ParsedNode | null> => 'key' in item

function spanOf(text: string, { items }: Holder, index: number): Span {
  const item = items[index]!
  if (!isPair(item)) return { from: item.range[0], to: endOf(text, item) }
  return { from: item.key.range[0], to: endOfPair(text, item) }
}

/** A value that is not written at all. */
const isNothing = (node: ParsedNode): boolean => isScalar(node) && node.range[0] === node.range[1]

const startOfLine = (text: string, at: number): number => text.lastIndexOf('\n', at - 1) + 1
/** Behind the line in which `at` lies, its end included. */
function endOfLine(text: string, at: number): number {
  const end = text.indexOf('\n', at)
  return end < 0 ? text.length : end + 1
}
const lineBreak = (text: string): string => (text.includes('\r\n') ? '\r\n' : '\n')

/** Whether nothing but room stands before `at` in its line. */
const isAtStart = (text: string, at: number): boolean => /^[ ]*$/.test(text.slice(startOfLine(text, at), at))

/** Where an entry in lines of its own begins: of a list at its dash. */
const headOf = (text: string, holder: Holder, index: number): number => {
  const { from } = spanOf(text, holder, index)
  return isPair(holder.items[index]!) ? from : text.lastIndexOf('-', from - 1)
}

function replaced(text: string, holder: Holder, index: number, value: string): string {
  const item = holder.items[index]!
  const node = isPair(item) ? item.value : item
  if (!isPair(item)) return text.slice(0, item.range[0]) + value + text.slice(endOf(text, item))
  const colon = text.indexOf(':', item.key.range[1]) + 1
  if (!node || isNothing(node)) return `${text.slice(0, colon)} ${value}${text.slice(colon)}`
  const head = text.slice(colon, node.range[0])
  const rest = text.slice(endOf(text, node))
  // what stands in lines below its key comes up beside it, before a comment there
  const [first = ''] = head.split(/\r?\n/, 1)
  if (!head.includes('\n')) return `${text.slice(0, node.range[0])}${value}${rest}`
  return `${text.slice(0, colon)} ${value}${first.trim() === '' ? '' : ` ${first}`}${rest}`
}

function insertedInFlow(text: string, holder: Holder, index: number, entry: string): string {
  if (index < 0) {
    const { from } = spanOf(text, holder, 0)
    return `${text.slice(0, from)}${entry}, ${text.slice(from)}`
  }
  const { to } = spanOf(text, holder, index)
  return `${text.slice(0, to)}, ${entry}${text.slice(to)}`
}

function insertedInBlock(text: string, holder: Holder, index: number, entry: string): string | null {
  const head = headOf(text, holder, 0)
  const indent = ' '.repeat(head - startOfLine(text, head))
  const line = `${indent}${isPair(holder.items[0]!) ? '' : '- '}${entry}`
  const br = lineBreak(text)
  if (index < 0) {
    if (!isAtStart(text, head)) return null
    const at = startOfLine(text, head)
    return `${text.slice(0, at)}${line}${br}${text.slice(at)}`
  }
  const at = endOfLine(text, spanOf(text, holder, index).to)
  const isOpen = at > 0 && text[at - 1] !== '\n'
  return `${text.slice(0, at)}${isOpen ? br : ''}${line}${br}${text.slice(at)}`
}

function removedFromFlow(text: string, holder: Holder, index: number): string {
  const { from, to } = spanOf(text, holder, index)
  if (index + 1 < holder.items.length) {
    const next = spanOf(text, holder, index + 1).from
    const between = text.slice(to, next)
    const comma = to + between.indexOf(',') + 1
    // a comment between them may be of the line, and stays
    return text.slice(0, from) + text.slice(between.includes('#') ? comma : next).replace(/^ +/, '')
  }
  const before = index > 0 ? spanOf(text, holder, index - 1).to : from
  return text.slice(0, text.slice(before, from).includes('#') ? from : before) + text.slice(to)
}

function removedFromBlock(text: string, holder: Holder, index: number): string | null {
  const head = headOf(text, holder, index)
  const { to } = spanOf(text, holder, index)
  if (isAtStart(text, head)) return text.slice(0, startOfLine(text, head)) + text.slice(endOfLine(text, to))
  // the first key beside the dash of a list: the next one comes up to it
  if (index + 1 >= holder.items.length) return null
  return text.slice(0, head) + text.slice(headOf(text, holder, index + 1))
}

function movedInFlow(text: string, holder: Holder, index: number, to: number): string {
  const own = spanOf(text, holder, index)
  const entry = text.slice(own.from, own.to)
  const { from } = spanOf(text, holder, to)
  const without = removedFromFlow(text, holder, index)
  return `${without.slice(0, from)}${entry}, ${without.slice(from)}`
}

/** The lines of an entry, with the comments directly above it. */
function linesOf(text: string, holder: Holder, index: number): Span | null {
  const head = headOf(text, holder, index)
  if (!isAtStart(text, head)) return null
  let from = startOfLine(text, head)
  const indent = text.slice(from, head)
  for (;;) {
    const above = startOfLine(text, from - 1)
    const isComment = from > 0 && text.slice(above, from).startsWith(`${indent}#`)
    if (!isComment || above === from) break
    from = above
  }
  return { from, to: endOfLine(text, spanOf(text, holder, index).to) }
}

function movedInBlock(text: string, holder: Holder, index: number, to: number): string | null {
  const own = linesOf(text, holder, index)
  const target = linesOf(text, holder, to)
  if (!own || !target) return null
  const lines = text.slice(own.from, own.to)
  const whole = lines.endsWith('\n') ? lines : lines + lineBreak(text)
  return text.slice(0, target.from) + whole + text.slice(target.from, own.from) + text.slice(own.to)
}
