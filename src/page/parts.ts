/** Parts of the page: text made safe, lists, tables, pictures. */
import type { Picture } from '../report/marks/chart.js'
import { escaped } from '../report/markup.js'
import { isOfWords } from '../report/plain-text.js'
import type { Table } from '../report/report.js'
import { base64 } from './base64.js'

/** A figure with its plus-minus and its unit, and without the unit: no line may end within it. */
const figure = String.raw`\d[\d.\u2009]*(?: ± [\d.\u2009]+)?`
const withUnit = new RegExp(
  `${figure}(?: (?:%|(?:m|ft|cases)/min|mm|cm|m|ft|s|min|h|kg|lb|EUR|USD)(?!\\w))?`,
  'g',
)
const alone = new RegExp(`${figure}(?: %)?`, 'g')

/** What a sentence sets between backticks: a key of the file, a name, a command. */
const literal = /`([^`]+)`/g

/** A sentence, made safe, with its figures in one piece. */
export const prose = (text: string, figures = withUnit): string =>
  escaped(text)
    .replace(figures, (found) => (/[\u2009 ]/.test(found) ? `<span class="n">${found}</span>` : found))
    .replace(literal, '<code>$1</code>')

/** A list of sentences. */
export const list = (lines: readonly string[], tag: 'ul' | 'ol' = 'ul'): string =>
  lines.length === 0
    ? ''
    : `<${tag} class="plain">${lines.map((line) => `<li>${prose(line)}</li>`).join('')}</${tag}>`

export const paragraphs = (lines: readonly string[], kind = ''): string =>
  lines.map((line) => `<p${kind === '' ? '' : ` class="${kind}"`}>${prose(line)}</p>`).join('')

/** What only the reader can fill in is marked by words, and by colour too. */
const mark = 'To fill in'

/** Tables of more columns than this are set closer, to fit a screen; paper breaks their heads anywhere. */
const mostInFull = 6
/** Those of more than this are also set in smaller letters. */
const mostInClose = 10

/** Words of no more letters than this need no room to be broken in. */
const brief = 20

/** A dotted path may be broken after its dots, also within a sentence. */
const breakable = (text: string) =>
  /^[A-Za-z][\w-]*(\.[\w -]+)+$/.test(text)
    ? escaped(text).replaceAll('.', '.<wbr>')
    : prose(text, alone).replace(/(?<=[a-z])\.(?=[a-z])/g, '.<wbr>')

/** What may be parted in a cell of figures: an interval from what it is of, one figure from the next. */
const parting = /(?<=;) | (?=\()/

/** A cell of figures, which is broken only where it may be parted. */
function figureCell(text: string): string {
  const parts = text.split(parting)
  return parts.length === 1
    ? `<td>${escaped(text)}</td>`
    : `<td class="parts">${parts.map((part) => `<span class="n">${escaped(part)}</span>`).join(' ')}</td>`
}

/** A table in a box of its own, which scrolls where the page is narrower; `headings` stand above it already. */
export function tableHtml(table: Table, headings: readonly string[] = []): string {
  const kinds = table.columns.map((_, column) => {
    if (!isOfWords(table, column)) return ''
    const isBrief = table.rows.every((row) => row[column]!.length <= brief)
    return ` class="words${isBrief ? ' brief' : ''}"`
  })
  const head = table.columns.map((text, column) => `<th scope="col"${kinds[column]}>${escaped(text)}</th>`)
  const cell = (text: string, column: number) => {
    const safe = breakable(text)
    if (column === 0) return `<th scope="row"${kinds[column]}>${safe}</th>`
    if (text.startsWith(mark)) return `<td class="words todo">${safe}</td>`
    return kinds[column] === '' ? figureCell(text) : `<td${kinds[column]}>${safe}</td>`
  }
  const rows = table.rows
    .filter((row) => row.slice(1).some((text) => text !== ''))
    .map((row) => `<tr>${row.map(cell).join('')}</tr>`)
  const title = escaped(table.title)
  const shown = headings.includes(table.title) ? '' : `<h3>${title}</h3>`
  const closeness =
    table.columns.length > mostInClose
      ? ' class="many most"'
      : table.columns.length > mostInFull
        ? ' class="many"'
        : ''
  const note = table.note ? `<p class="note">${prose(table.note)}</p>` : ''
  return `${shown}${note}<div class="wide" tabindex="0" role="region" aria-label="${title}"><table${closeness}><caption class="unseen">${title}</caption><thead><tr>${head.join('')}</tr></thead><tbody>\n${rows.join('\n')}\n</tbody></table></div>`
}

/** The picture stands until a script has drawn the chart, and on paper. */
export function figureHtml({ chart, png }: Picture): string {
  const source = `data:image/png;base64,${base64(png)}`
  const subtitle = [chart.config.options?.plugins?.subtitle?.text ?? []].flat().join(' ')
  const head = `<div class="head"><h3>${escaped(chart.title)}</h3><p class="note">${escaped(subtitle)}</p></div>`
  return `<figure data-chart="${escaped(chart.name)}">${head}<div class="box"><img alt="${escaped(chart.alt)}" src="${source}" width="${chart.width}" height="${chart.height}"></div></figure>`
}
