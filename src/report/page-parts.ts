/** Parts of the page: text made safe, lists, tables, pictures. */
import type { Chart } from './charts/chart.js'
import type { Table } from './content.js'
import { escaped } from './markup.js'
import { isOfWords } from './plain-text.js'

/** A figure with its plus-minus: no line may end within it. */
const figures = /\d[\d.\u2009]*(?: ± [\d.\u2009]+)?(?: %)?/g

/** A sentence, made safe, with its figures in one piece. */
export const prose = (text: string): string =>
  escaped(text).replace(figures, (figure) =>
    /[\u2009 ]/.test(figure) ? `<span class="n">${figure}</span>` : figure,
  )

/** A list of sentences. */
export const list = (lines: readonly string[], tag: 'ul' | 'ol' = 'ul'): string =>
  lines.length === 0
    ? ''
    : `<${tag} class="plain">${lines.map((line) => `<li>${prose(line)}</li>`).join('')}</${tag}>`

export const paragraphs = (lines: readonly string[], kind = ''): string =>
  lines.map((line) => `<p${kind === '' ? '' : ` class="${kind}"`}>${prose(line)}</p>`).join('')

/** What only the reader can fill in is marked by words, and by colour too. */
const mark = 'To fill in'

/** More columns than this are wider than paper: then words are broken anywhere. */
const mostOnPaper = 8

/** A dotted path may be broken after its dots. */
const breakable = (text: string) =>
  /^[A-Za-z][\w-]*(\.[\w -]+)+$/.test(text) ? escaped(text).replaceAll('.', '.<wbr>') : escaped(text)

/** A table in a box of its own, which scrolls where the page is narrower; `heading` says what the section is called already. */
export function tableHtml(table: Table, heading = ''): string {
  const kinds = table.columns.map((_, column) => (isOfWords(table, column) ? ' class="words"' : ''))
  const head = table.columns.map((text, column) => `<th scope="col"${kinds[column]}>${escaped(text)}</th>`)
  const cell = (text: string, column: number) => {
    const safe = breakable(text)
    if (column === 0) return `<th scope="row"${kinds[column]}>${safe}</th>`
    return text.startsWith(mark) ? `<td class="words todo">${safe}</td>` : `<td${kinds[column]}>${safe}</td>`
  }
  const rows = table.rows
    .filter((row) => row.slice(1).some((text) => text !== ''))
    .map((row) => `<tr>${row.map(cell).join('')}</tr>`)
  const title = escaped(table.title)
  const shown = heading === table.title ? '' : `<h3>${title}</h3>`
  const note = table.note ? `<p class="note">${prose(table.note)}</p>` : ''
  return `${shown}${note}<div class="wide" tabindex="0" role="region" aria-label="${title}"><table${table.columns.length > mostOnPaper ? ' class="many"' : ''}><caption class="unseen">${title}</caption><thead><tr>${head.join('')}</tr></thead><tbody>\n${rows.join('\n')}\n</tbody></table></div>`
}

/** A chart with its picture. */
export interface Picture {
  chart: Chart
  png: Uint8Array
}

/** The picture stands until a script has drawn the chart, and on paper. */
export function figureHtml({ chart, png }: Picture): string {
  const source = `data:image/png;base64,${Buffer.from(png).toString('base64')}`
  const subtitle = [chart.config.options?.plugins?.subtitle?.text ?? []].flat().join(' ')
  const head = `<div class="head"><h3>${escaped(chart.title)}</h3><p class="note">${escaped(subtitle)}</p></div>`
  return `<figure data-chart="${escaped(chart.name)}">${head}<div class="box"><img alt="${escaped(chart.alt)}" src="${source}" width="${chart.width}" height="${chart.height}"></div></figure>`
}
