/** Draws a chart in place of its picture: as wide as there is room, with its title in the page and its figures under the pointer. */
import {
  BarController,
  BarElement,
  CategoryScale,
  Chart as Drawn,
  Filler,
  Legend,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
  ScatterController,
  Tooltip,
} from 'chart.js'
import { type Chart, chartWidth, moreForLegend } from '../report/marks/chart.js'
import { footId } from '../report/marks/foot.js'
import { followNight, night } from './night.js'
import { nameInLines, rowsOf } from './rows.js'
import { tooltipOf } from './tooltip.js'

// all that charts are made of
Drawn.register(
  ...[BarController, BarElement, CategoryScale, Filler, Legend, LinearScale, LineController],
  ...[LineElement, PointElement, ScatterController, Tooltip],
)

/** Narrower than this names beside a curve would run into it, px: the box scrolls. */
const leastWidth = 560
/** Charts without figures beside them shrink to the width of a telephone. */
const leastOfPlain = 300

/** Puts a canvas into the figure; where that fails the picture stays. What comes back takes the drawing away again. */
export function drawInto(figure: HTMLElement, chart: Chart): () => void {
  const box = figure.querySelector<HTMLElement>('.box')
  if (!box) return () => {}
  const canvas = document.createElement('canvas')
  canvas.setAttribute('role', 'img')
  canvas.setAttribute('aria-label', chart.alt)
  const options = chart.config.options!
  const plugins = options.plugins!
  const head = headOf(chart)
  const { padding } = options.layout as { padding: { top: number; bottom: number } }
  const rows = rowsOf(chart, roomIn(box))
  const least = chart.mayNarrow ? leastOfPlain : (rows?.least ?? leastWidth)
  // the page says title and subtitle; what charts write between these and the picture keeps its room
  const gap = (plugins.subtitle?.padding as { bottom?: number } | undefined)?.bottom ?? 0
  options.layout = { ...options.layout, padding: { ...padding, top: padding.top + gap, bottom: 6 } }
  // the page says at its end what made it
  chart.config.plugins = chart.config.plugins?.filter(({ id }) => id !== footId) ?? []
  const ticks = (options.scales?.x as { ticks?: object } | undefined)?.ticks
  if (ticks) Object.assign(ticks, { autoSkip: true, autoSkipPadding: 10, maxRotation: 0 })
  options.plugins = {
    ...plugins,
    title: { display: false },
    subtitle: { display: false },
    tooltip: tooltipOf(chart),
  }
  options.interaction = { mode: 'nearest', intersect: false, axis: options.indexAxis === 'y' ? 'y' : 'xy' }
  options.devicePixelRatio = Math.max(2, window.devicePixelRatio)
  const most = isFirst(figure) && rows === null ? firstHeight : Number.POSITIVE_INFINITY
  const sizeOf = () => {
    const room = roomIn(box)
    const width = Math.max(least, Math.min(chartWidth, room))
    const height =
      chart.height - head + gap - padding.bottom + 6 + moreForLegend(chart, width) + (rows?.more ?? 0)
    return { width, height: Math.min(height, most) }
  }
  const first = sizeOf()
  if (rows) nameInLines(chart, first.width)
  canvas.width = first.width
  canvas.height = first.height
  box.append(canvas)
  const dark = night()
  try {
    const context = canvas.getContext('2d')
    if (context) followNight(context, () => dark.matches)
    const drawn = new Drawn(canvas, chart.config)
    drawn.resize(first.width, first.height)
    figure.classList.add('drawn')
    return follow(drawn, { box, sizeOf, width: first.width, dark })
  } catch (error) {
    canvas.remove()
    console.error(error)
    return () => {}
  }
}

interface Followed {
  box: HTMLElement
  sizeOf: () => { width: number; height: number }
  /** As it is drawn at first, px. */
  width: number
  dark: MediaQueryList
}

/** Draws it anew where its room or the light changes, until it is taken away. */
function follow(drawn: Drawn, { box, sizeOf, width: last, dark }: Followed): () => void {
  const { canvas } = drawn
  const redraw = () => drawn.draw()
  dark.addEventListener('change', redraw)
  const resized = new ResizeObserver(() => {
    const { width, height } = sizeOf()
    // on paper the canvas is hidden, and its box may have another width
    if (width === last || !canvas.offsetParent) return
    last = width
    drawn.resize(width, height)
  })
  resized.observe(box)
  return () => {
    resized.disconnect()
    dark.removeEventListener('change', redraw)
    drawn.destroy()
    canvas.remove()
  }
}

/** The picture of the first screen leaves room for what stands beside and below it, px; rows need theirs. */
const firstHeight = 400
const isFirst = (figure: HTMLElement): boolean => figure.closest('.answer') !== null

/** Edge of a box and what it keeps free, px. */
const edges = 18

/** Width that a chart may take; of a box that is folded away that of the page, where the browser lays out nothing that is folded. */
function roomIn(box: HTMLElement): number {
  const width = box.clientWidth || (box.closest('main')?.clientWidth ?? chartWidth)
  return width - edges
}

const linesOf = (text: unknown): number => (Array.isArray(text) ? text.length : 1)

/** Height of title and subtitle in the picture, as chart.js sets them, px. */
function headOf({ config }: Chart): number {
  const { title, subtitle } = config.options!.plugins!
  return linesOf(title?.text) * 19.2 + 8 + linesOf(subtitle?.text) * 14.4
}
