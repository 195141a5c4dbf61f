/** What runs in the page of a report: draws the charts of the document that the page holds, to be pointed at. */
import { chartsOf, type ResultDocument } from '../questions/charts-of-document.js'
import { drawInto } from './drawing.js'
import { startFolding } from './folding.js'
import { followCases } from './follow-cases.js'
import { Replay } from './replay.js'

/** So much of a screen ahead of its being seen a chart is drawn. */
const ahead = '50%'

/** When the browser has nothing else to do; soon, where it does not tell. */
const whenIdle = (work: () => void) =>
  'requestIdleCallback' in window ? requestIdleCallback(work, { timeout: 2000 }) : setTimeout(work, 50)

function start(): void {
  startFolding()
  const held = JSON.parse(document.getElementById('result')?.textContent ?? 'null') as ResultDocument | null
  drawAll(held ? chartsOf(held) : [])
  const replay = document.getElementById('replay')
  if (replay && held?.command === 'run' && held.layout && held.stretch)
    new Replay(replay, held.layout, held.stretch)
  followCases(document)
}

/** What is about to be seen at once, the others one at a time when there is nothing else to do; pictures stand where no chart is yet. */
function drawAll(charts: ReturnType<typeof chartsOf>): void {
  const byName = new Map(charts.map((chart) => [chart.name, chart]))
  const figures = new Set(document.querySelectorAll<HTMLElement>('figure[data-chart]'))
  const draw = (figure: HTMLElement) => {
    const chart = byName.get(figure.dataset.chart!)
    seen.unobserve(figure)
    if (figures.delete(figure) && chart) drawInto(figure, chart)
  }
  const seen = new IntersectionObserver(
    (entries) => {
      for (const { isIntersecting, target } of entries) if (isIntersecting) draw(target as HTMLElement)
    },
    { rootMargin: ahead },
  )
  for (const figure of figures) seen.observe(figure)
  const drawNext = () => {
    const [next] = figures
    if (next) {
      draw(next)
      whenIdle(drawNext)
    } else document.documentElement.dataset.drawn = 'all'
  }
  whenIdle(drawNext)
}

// all that it draws into stands above it; what comes later moves what is read
start()
