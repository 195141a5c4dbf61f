/** Parts of the page: sentences, lists, tables, pictures. */
import type { Display } from '../catalogue/printed-units.js'
import { type Cell, type Column, cellParts, cellText, saysSomething } from '../report/cell.js'
import type { Picture } from '../report/marks/chart.js'
import { empty, html, inLines, type Markup, markup } from '../report/markup.js'
import type { Table } from '../report/report.js'
import { base64 } from './base64.js'

/** A figure with its plus-minus and its unit, and without the unit: no line may end within it. */
const figure = String.raw`\d[\d.\u2009]*(?: ± [\d.\u2009]+)?`
/** An option of a command: no line may end within it, neither behind its dashes. */
const option = /(?<![\w-])--[a-z][a-z-]*/g
const units = ['%', '(?:m|ft|cases)/min', 'mm', 'cm', 'm', 'ft', 's', 'min', 'h', 'kg', 'lb']
/** The codes of ISO 4217. */
const currencies = Intl.supportedValuesOf('currency')
const withUnit = new RegExp(`${figure}(?: (?:${[...units, ...currencies].join('|')})(?!\\w))?`, 'g')
const alone = new RegExp(`${figure}(?: %)?`, 'g')

/** What a sentence sets between backticks: a key of the file, a name, a command. */
const literal = /`([^`]+)`/g
/** A dot within a path. */
const dot = /(?<=[a-z])\.(?=[a-z])/g

/** A text with what fits `pattern` as `mark` makes it, and what lies between as `rest` makes it. */
function marked(
  text: string,
  pattern: RegExp,
  mark: (found: RegExpMatchArray) => Markup,
  rest: (between: string) => Markup = (between) => html`${between}`,
): Markup {
  const parts: Markup[] = []
  let at = 0
  for (const found of text.matchAll(pattern)) {
    parts.push(rest(text.slice(at, found.index)), mark(found))
    at = found.index + found[0].length
  }
  return html`${[...parts, rest(text.slice(at))]}`
}

/**
 * A sentence: a figure stays in one line with its unit, and what stands between backticks is code. Sentences come from scenarios and
 * saved documents too, where they are text.
 */
export const prose = (text: string, figures = withUnit, rest?: (between: string) => Markup): Markup => {
  const inOnePiece = (part: string) =>
    marked(
      part,
      figures,
      ([found]) => (/[\u2009 ]/.test(found) ? html`<span class="n">${found}</span>` : html`${found}`),
      (between) => marked(between, option, ([found]) => html`<span class="n">${found}</span>`, rest),
    )
  return marked(text, literal, ([, code]) => html`<code>${inOnePiece(code!)}</code>`, inOnePiece)
}

/** A list of sentences. */
export const list = (lines: readonly string[], tag: 'ul' | 'ol' = 'ul'): Markup =>
  lines.length === 0
    ? empty
    : html`<${tag} class="plain">${lines.map((line) => html`<li>${prose(line)}</li>`)}</${tag}>`

export const paragraphs = (lines: readonly string[]): Markup =>
  html`${lines.map((line) => html`<p>${prose(line)}</p>`)}`

export const notes = (lines: readonly string[]): Markup =>
  html`${lines.map((line) => html`<p class="note">${prose(line)}</p>`)}`

/** Tables of more columns than this are set closer, to fit a screen; paper breaks their heads anywhere. */
const mostInFull = 6
/** Those of more than this are also set in smaller letters. */
const mostInClose = 10

/** Words of no more letters than this need no room to be broken in. */
const brief = 20

const brokenAt = (text: string, dots: RegExp) => marked(text, dots, () => html`.<wbr>`)

/** Words of a table: a path may be broken after its dots, also within a sentence. */
const wordsHtml = (cell: Cell, display: Display): Markup =>
  cell !== null && typeof cell === 'object' && 'path' in cell
    ? brokenAt(cell.path, /\./g)
    : prose(cellText(cell, display), alone, (between) => brokenAt(between, dot))

/** A sentence in large letters: a path in it may be broken after its dots. */
export const largeProse = (text: string): Markup => prose(text, withUnit, (between) => brokenAt(between, dot))

const isToFill = (cell: Cell): boolean => cell !== null && typeof cell === 'object' && 'toFill' in cell

/** Figures, broken only between their parts. */
function figuresHtml(cell: Cell, display: Display, label: Markup): Markup {
  const [first, ...rest] = cellParts(cell, display).map((part) => html`<span class="n">${part}</span>`)
  if (rest.length === 0) return html`<td${label}>${cellText(cell, display)}</td>`
  return html`<td class="parts"${label}>${first!}${rest.map((part) => html` ${part}`)}</td>`
}

/** So many letters of a row fit a telephone side by side. */
const lettersAcross = 40

/** Is a row too wide for a telephone? There each row becomes a card. */
function isWide({ columns, rows }: Table, display: Display): boolean {
  const longest = columns.map(({ title }, column) =>
    rows.reduce(
      (most, row) => Math.max(most, Math.min(brief, cellText(row[column], display).length)),
      Math.min(brief, title.length / 2),
    ),
  )
  return columns.length > 2 && longest.reduce((sum, letters) => sum + letters + 2, 0) > lettersAcross
}

/** A table behind the chart that shows the same figures. */
export const foldedTable = (table: Table, display: Display): Markup =>
  html`<details class="data"><summary>As a table: ${table.title}</summary>${tableHtml(table, display, [table.title])}</details>`

/** A table in a box of its own, which scrolls where the page is narrower; `headings` stand above it already. */
export function tableHtml(table: Table, display: Display, headings: readonly string[]): Markup {
  const { title, note, columns, rows, more = 0 } = table
  const classOf = ({ kind }: Column, column: number) => {
    if (kind === 'figures') return empty
    const isBrief = rows.every((row) => cellText(row[column], display).length <= brief)
    return html` class="words${isBrief ? ' brief' : ''}"`
  }
  const classes = columns.map(classOf)
  // the head of its column, which a card shows beside each cell
  const isCards = isWide(table, display)
  const labels = columns.map((column) => (isCards ? html` data-head="${column.title}"` : empty))
  const cellHtml = (cell: Cell, column: number) => {
    if (column === 0) return html`<th scope="row"${classes[0]!}>${wordsHtml(cell, display)}</th>`
    if (isToFill(cell)) return html`<td class="words todo"${labels[column]!}>${wordsHtml(cell, display)}</td>`
    return columns[column]!.kind === 'figures'
      ? figuresHtml(cell, display, labels[column]!)
      : html`<td${classes[column]!}${labels[column]!}>${wordsHtml(cell, display)}</td>`
  }
  const look = [
    ...(columns.length > mostInFull ? ['many'] : []),
    ...(columns.length > mostInClose ? ['most'] : []),
    ...(isCards ? ['as-cards'] : []),
  ]
  const heads = columns.map((column, index) => html`<th scope="col"${classes[index]!}>${column.title}</th>`)
  const lines = inLines(rows.filter(saysSomething).map((row) => html`<tr>${row.map(cellHtml)}</tr>`))
  return html`${headings.includes(title) ? '' : html`<h3>${title}</h3>`}${notes([...(note ? [note] : []), ...(more > 0 ? [`${more} more below.`] : [])])}<div class="wide" tabindex="0" role="region" aria-label="${title}"><table${look.length > 0 ? html` class="${look.join(' ')}"` : empty}><caption class="unseen">${title}</caption><thead><tr>${heads}</tr></thead><tbody>
${lines}
</tbody></table></div>`
}

/** The picture stands until a script has drawn the chart, and on paper. */
export function figureHtml({ chart, png, inBase64 = () => base64(png) }: Picture): Markup {
  const source = markup(`data:image/png;base64,${inBase64()}`)
  const subtitle = [chart.config.options?.plugins?.subtitle?.text ?? []].flat().join(' ')
  return html`<figure data-chart="${chart.name}"><div class="head"><h3>${chart.title}</h3><p class="note">${subtitle}</p></div><div class="box"><img alt="${chart.alt}" src="${source}" width="${chart.width}" height="${chart.height}"></div></figure>`
}
