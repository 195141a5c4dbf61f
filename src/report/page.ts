/** The report as one page that needs nothing else: pictures and style are inside it. */
import type { Chart } from './charts/chart.js'
import type { Report, Table } from './content.js'
import { isOfWords } from './plain-text.js'

/** Text of a scenario is hostile in a page: nothing of it may be taken for markup. */
export const escaped = (text: string): string =>
  text.replace(
    /[&<>"']/g,
    (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' })[sign]!,
  )

const style = `
:root { color-scheme: light; }
body { font: 16px/1.5 system-ui, "DejaVu Sans", sans-serif; color: #1c2430; background: #fff; max-width: 60rem; margin: 2rem auto; padding: 0 1rem; }
h1 { font-size: 1.7rem; margin: 0; } h2 { font-size: 1.15rem; margin: 2.2rem 0 .4rem; }
.subtitle { color: #55606e; margin: .3rem 0 1.4rem; } .headline { font-size: 1.1rem; } .headline li { margin: .3rem 0; } .certainty { color: #55606e; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; } .wide { overflow-x: auto; }
th, td { text-align: right; padding: .3rem .6rem; border-bottom: 1px solid #e2e6eb; vertical-align: top; } .words { text-align: left; }
th { font-weight: 600; color: #55606e; font-size: .88rem; }
figure { margin: 1.2rem 0; } img { max-width: 100%; height: auto; } figcaption { color: #55606e; font-size: .88rem; }
.cautions { border-left: 4px solid #b3541e; padding: .2rem 1rem; background: #fdf4ee; }
code { background: #f1f3f6; padding: .1rem .3rem; overflow-wrap: anywhere; }
@media print { body { margin: 0; max-width: none; font-size: 11px; } h2 { break-after: avoid; } figure, tr { break-inside: avoid; } }
`

const list = (lines: readonly string[]) =>
  `<ul>${lines.map((line) => `<li>${escaped(line)}</li>`).join('')}</ul>`

function tableHtml(table: Table): string {
  const kinds = table.columns.map((_, column) => (isOfWords(table, column) ? ' class="words"' : ''))
  const head = table.columns.map((text, column) => `<th scope="col"${kinds[column]}>${escaped(text)}</th>`)
  const rows = table.rows.map(
    (row) => `<tr>${row.map((cell, column) => `<td${kinds[column]}>${escaped(cell)}</td>`).join('')}</tr>`,
  )
  const note = table.note ? `<p>${escaped(table.note)}</p>` : ''
  return `<h2>${escaped(table.title)}</h2>${note}<div class="wide"><table><thead><tr>${head.join('')}</tr></thead><tbody>\n${rows.join('\n')}\n</tbody></table></div>`
}

function figureHtml({ chart, png }: Picture): string {
  const source = `data:image/png;base64,${Buffer.from(png).toString('base64')}`
  return `<figure><img alt="${escaped(chart.alt)}" src="${source}" width="${chart.width}"><figcaption>${escaped(chart.alt)}</figcaption></figure>`
}

/** A chart with its picture. */
export interface Picture {
  chart: Chart
  png: Uint8Array
}

/** The page; `result` is the name of the result document beside it. */
export function reportPage(report: Report, pictures: readonly Picture[]): string {
  return `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${escaped(report.title)}</title><style>${style}</style></head>
<body>
<h1>${escaped(report.title)}</h1>
<p class="subtitle">${escaped(report.subtitle)}</p>
<div class="headline">${list(report.headline)}</div>
<div class="certainty">${list(report.certainty)}</div>
${pictures.map(figureHtml).join('\n')}
${report.tables.map(tableHtml).join('\n')}
<h2>Limits</h2>${list(report.limits)}
<div class="cautions"><h2>Safety</h2>${list(report.cautions)}</div>
${report.assumed.rows.length > 0 ? tableHtml(report.assumed) : ''}
<h2>To repeat this</h2><p><code>${escaped(report.repeat)}</code></p>
<p class="subtitle">Made by ${escaped(report.origin)}.</p>
</body>
</html>
`
}
