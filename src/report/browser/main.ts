/** What runs in the page of a report: draws the charts of the document that the page holds, to be pointed at. */
import { chartsOf, type ResultDocument } from '../charts/of-document.js'
import { drawInto } from './drawing.js'
import { startReplay } from './replay.js'

const holder = document.getElementById('result')
const figures = new Map(
  [...document.querySelectorAll<HTMLElement>('figure[data-chart]')].map((figure) => [
    figure.dataset.chart,
    figure,
  ]),
)
const held = holder ? (JSON.parse(holder.textContent ?? '') as ResultDocument) : null
const charts = held ? chartsOf(held) : []

/** One at a time, so that the page can be read and moved meanwhile; pictures stand where no chart is yet. */
function drawNext(): void {
  const chart = charts.shift()
  if (!chart) {
    document.documentElement.dataset.drawn = 'all'
    return
  }
  const figure = figures.get(chart.name)
  if (figure) drawInto(figure, chart)
  setTimeout(drawNext)
}
setTimeout(drawNext)

const replay = document.getElementById('replay')
if (replay && held?.command === 'run' && held.layout && held.stretch)
  startReplay(replay, held.layout, held.stretch)
