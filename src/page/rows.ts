/** Charts of rows with names on the left and figures on the right: how narrow they may be drawn, and that no name is cut. */
import { wordLines } from '../report/marks/breaking.js'
import { type Chart, chartWidth } from '../report/marks/chart.js'
import { pageLetterWidth } from '../report/marks/letters.js'

/** An axis as its options tell of it, as far as rows need it. */
interface Axis {
  position?: string
  reverse?: boolean
  max?: number
  title?: { text?: string | string[] }
  ticks?: { callback?: (value: number) => string | string[] }
  afterFit?: (scale: { width: number }) => void
}

/** Between names and rows, px, and the picture itself at its narrowest. */
const [gap, picture] = [16, 120]

/** Names of the rows, line by line; none where a chart has no rows. */
function linesOf({ config }: Chart, axis: Axis): string[] {
  const labels = config.data.labels as (string | string[])[] | undefined
  if (labels && labels.length > 0) return labels.flat()
  if (!axis.reverse || axis.max === undefined) return []
  return Array.from(
    { length: Math.round(axis.max + 0.5) },
    (_, row) => axis.ticks?.callback?.(row) ?? '',
  ).flat()
}

/** Room that is kept free right of the picture, px. */
function roomAtRight(scales: Record<string, Axis>): number {
  const axis = Object.values(scales).find(({ position }) => position === 'right')
  const scale = { width: 0 }
  axis?.afterFit?.(scale)
  return scale.width
}

/** Makes room for the names of the rows at any width; null where the chart has none. `least`: its least width, px. */
export function rowsOf(chart: Chart): { least: number } | null {
  const scales = (chart.config.options?.scales ?? {}) as Record<string, Axis>
  const { y } = scales
  const lines = y ? linesOf(chart, y) : []
  if (!y || lines.length === 0) return null
  const names = Math.max(...lines.map(({ length }) => length)) * pageLetterWidth.plain + gap
  y.afterFit = (scale) => {
    scale.width = Math.max(scale.width, names)
  }
  return { least: Math.min(chartWidth, names + picture + roomAtRight(scales)) }
}

/** So narrow a picture has its axis named in several lines, px. */
const narrow = 500

/** Breaks the name of the axis below into lines, where there is little room; the library would squeeze its letters. */
export function nameInLines({ config }: Chart, width: number): void {
  const { title } = (config.options?.scales?.x ?? {}) as Axis
  if (width < narrow && typeof title?.text === 'string') title.text = wordLines(title.text, 12, picture)
}
