/** The first screen as text for a terminal. */
import type { Said, Screen, Tone } from './screen.js'
import type { Table } from './table.js'
import { tableText } from './table-text.js'
import { paragraph, type TextStyle } from './text.js'

/** How the first screen is set: words in the colour of what they say, where the terminal shows it. */
export interface ScreenStyle extends TextStyle {
  toned: (tone: Tone, text: string) => string
}

/** Where sentences begin: behind the longest word that heads them. */
const indent = 10

const spacing = { gap: 3, margin: 0 }

/** The screen, ending in a newline. */
export function screenText({ title, display, verdict, parts }: Screen, style: ScreenStyle): string {
  const { bold, width, toned } = style
  const { word, tone, text } = verdict
  const said = paragraph(`${word}${text.startsWith(':') ? '' : ' '}${text}`, width)
  return `${[
    bold(paragraph(title, width)),
    '',
    toned(tone, word) + said.slice(word.length),
    '',
    ...parts.flatMap((part) =>
      'head' in part ? saidText(part, style) : [tableText(withMore(part), display, style, spacing)],
    ),
  ].join('\n')}\n`
}

/** The terminal has the rest behind an option. */
const withMore = ({ more = 0, ...table }: Table): Table => ({
  ...table,
  title: `${table.title}${more > 0 ? `; ${more} more with --full` : ''}`,
})

/** Its word, and the sentences beside it; several are counted. */
function saidText({ head, lines, tone = 'plain' }: Said, { width, toned }: ScreenStyle): string[] {
  return lines.map((line, index) => {
    const word = index === 0 ? head : ''
    const text = lines.length > 1 ? `${index + 1}. ${line}` : line
    const set = paragraph(
      text,
      width,
      ' '.repeat(lines.length > 1 ? indent + 3 : indent),
      word.padEnd(indent),
    )
    return toned(tone, word) + set.slice(word.length)
  })
}
