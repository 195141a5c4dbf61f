/** A text of the manual for a terminal: plain, broken at spaces. */
import { words } from '../report/cell.js'
import { tableText } from '../report/table-text.js'
import { paragraph, type TextStyle } from '../report/text.js'
import { type Block, blocksOf, type Inline } from './markdown.js'

const spacing = { gap: 3, margin: 0 }

/** The text, ending in a newline. */
export const terminalText = (text: string, style: TextStyle): string =>
  `${blocksOf(text)
    .map((block) => blockText(block, style, ''))
    .join('\n\n')}\n`

/** What is typed stands between backticks, but for the name that begins an item. */
const inlineText = (inlines: readonly Inline[], isItem = false): string =>
  inlines
    .map((each, index) => {
      if (each.kind === 'code') return isItem && index === 0 ? each.text : `\`${each.text}\``
      if (each.kind === 'text') return each.text
      const said = inlineText(each.inlines)
      return each.kind === 'link' && said !== each.to ? `${said} (${each.to})` : said
    })
    .join('')

function blockText(block: Block, style: TextStyle, indent: string): string {
  switch (block.kind) {
    case 'heading':
      return style.bold(paragraph(inlineText(block.inlines), style.width))
    case 'paragraph':
      return paragraph(inlineText(block.inlines), style.width, indent, indent)
    case 'code':
      return block.text
        .split('\n')
        .map((line) => `${indent}  ${line}`.trimEnd())
        .join('\n')
    case 'quote':
      return block.blocks.map((each) => blockText(each, style, `${indent}  `)).join('\n\n')
    case 'list':
      return listText(block, style, indent)
    case 'table':
      return tableOf(block, style)
  }
}

function listText({ isOrdered, items }: Block & { kind: 'list' }, style: TextStyle, indent: string): string {
  const isWide = items.some((blocks) => blocks.length > 1)
  return items
    .map((blocks, index) => {
      const mark = isOrdered ? `${index + 1}. ` : '- '
      const deeper = indent + ' '.repeat(mark.length)
      const [first, ...rest] = blocks.map((block, at) =>
        at === 0 && block.kind === 'paragraph'
          ? paragraph(inlineText(block.inlines, true), style.width, deeper, indent + mark)
          : blockText(block, style, deeper),
      )
      return [first, ...rest].join('\n')
    })
    .join(isWide ? '\n\n' : '\n')
}

/** The first row heads the columns. */
const tableOf = ({ head, rows }: Block & { kind: 'table' }, style: TextStyle): string =>
  tableText(
    {
      title: '',
      columns: words(...head.map((cell) => inlineText(cell, true))),
      rows: rows.map((row) => row.map((cell) => inlineText(cell, true))),
    },
    'metric',
    style,
    spacing,
  ).replace(/^[^\n]*\n/, '')
