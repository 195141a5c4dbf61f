/** Whatever is typed into a field, the text says it or it is said why not; comments stay, the loader has words for it, and undo brings back each letter. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { ScenarioError } from '../../src/scenario/problems.js'
import { readScenario } from '../../src/scenario/read.js'
import { isSame } from '../../src/try/draft/differences.js'
import { begun, edited, redone, undone } from '../../src/try/draft/history.js'
import { standingAt, stepsOf } from '../../src/try/draft/steps.js'
import { setValue, unsetValue } from '../../src/try/draft/values.js'
import { treeOf } from '../../src/try/draft/yaml-text.js'
import { typedValue } from '../../src/try/fields/amounts.js'
import type { Field } from '../../src/try/fields/field.js'
import { smallLine } from '../cli/in-process.js'
import { expectTried } from '../tried.js'
import { demo, fieldsOf } from '../try/demos.js'
import { attack, type Change, changes, spoiltText } from './mutate.js'

const short = `# Why: a test
${smallLine.replace('shift:', '# how long\nshift:')}# the end
`

/** What people type on the way to a value, by mistake, or to see what happens. */
const typed = [
  ...['', ' ', '-', '3', '1e999', '-0', '0x10', '1,5', 'NaN', '.inf', '٣', '12 parsecs', '1 %', '90 s'],
  ...[
    '{',
    '[1',
    '[1, 2]',
    '{a: 1}',
    '{__proto__: 1}',
    '{guess: 90 s, between: [60 s, 150 s]}',
    '3 in 400 cases',
  ],
  ...['# not a comment', 'a # b', '"', "'", '*a', '&a 3', '<<: {}', '- 3', 'a: b', '| \n x', '!!binary aGk='],
  ...[
    'null',
    '~',
    'true',
    'yes',
    '\u0000',
    '\u202e',
    '🙂',
    '\ud800',
    '</script>',
    'a\nb: 1',
    '---',
    'x'.repeat(3000),
  ],
]

const fieldsIn = (text: string): Field[] => fieldsOf(treeOf(text)!)

/** Comments in lines of their own, outside of all values. */
const commentsIn = (text: string) => text.split('\n').filter((line) => line.startsWith('#'))

let tried = 0

/** What a change types into which field: one of the above, or what stands there, spoilt. */
function typing(fields: readonly Field[], change: Change): { path: string; value: string } {
  const { path, written, usual, amount } = fields[change.at % fields.length]!
  const text =
    change.does % 3 === 0 ? spoiltText(written ?? usual ?? '', [change]) : typed[change.what % typed.length]!
  return { path, value: typedValue(text, amount?.unit ?? '') }
}

/** The text once this was typed; null where it is refused, which is said. */
function after(text: string, change: Change): { text: string; path: string } | null {
  tried++
  const { path, value } = typing(fieldsIn(text), change)
  const made = value === '' ? unsetValue(text, path) : setValue(text, path, value)
  if ('rule' in made) {
    for (const words of [made.rule, made.fix]) expect(words).not.toMatch(/^$|undefined|\[object/)
    return null
  }
  const tree = treeOf(made.text)
  expect(tree).not.toBeNull()
  expect(commentsIn(made.text)).toEqual(commentsIn(text))
  if (value !== '') {
    const steps = stepsOf(tree!, path)
    const stands = Array.isArray(steps) ? standingAt(tree, steps) : steps
    expect(isSame(stands ?? null, parse(value) ?? null)).toBe(true)
  }
  read(made.text)
  return { text: made.text, path }
}

/** The loader takes it, or says what is wrong. */
function read(text: string): void {
  try {
    readScenario(text)
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error
    expect(error.problems.length).toBeGreaterThan(0)
    for (const { rule } of error.problems) expect(rule).not.toMatch(/undefined|\[object/)
  }
}

/** Types one after the other, takes all of it back and does it again. */
function typeInto(text: string, all: readonly Change[]): void {
  const texts = [text]
  let history = begun(text)
  for (const [at, change] of all.entries()) {
    const made = after(history.present.text, change)
    if (made === null || made.text === history.present.text) continue
    history = edited(history, made.text, made.path, at * 5000)
    texts.push(made.text)
  }
  for (const before of texts.slice(0, -1).reverse()) {
    history = undone(history)
    expect(history.present.text).toBe(before)
  }
  for (const next of texts.slice(1)) {
    history = redone(history)
    expect(history.present.text).toBe(next)
  }
}

describe('what is typed into fields', () => {
  it('of a short scenario', async () => {
    expect(() => readScenario(short)).not.toThrow()
    await attack(
      fc.property(changes, (all) => typeInto(short, all)),
      40,
    )
  })

  it('of demos', async () => {
    const texts = ['soap-works.yaml', 'tape-choice.yaml'].map((name) => demo(name).text)
    await attack(
      fc.property(fc.constantFrom(...texts), changes, (text, all) => typeInto(text, all)),
      5,
    )
  })

  it('is counted', () => expectTried('values typed into fields', tried))
})
