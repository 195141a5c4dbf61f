/** Charts of rows with names on the left and figures on the right: how narrow they may be drawn, and that no name is cut. */
import { type BesideMark, besideId } from '../report/marks/beside.js'
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
  const labels = (config.data.labels ?? []) as (string | string[])[]
  if (labels.length > 0) return labels.flat()
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

/** Letters of a line in which two words stand side by side. */
const mostJoint = 23

/** A line of a name, px. */
const lineHeight = 15

/** What stands beside the rows, line by line of each row; null where nothing does. */
function besideOf({ config }: Chart): string[][] | null {
  const mark = config.plugins?.find((each): each is BesideMark => each.id === besideId)
  if (!mark) return null
  const lines: string[][] = []
  for (const { row, words } of mark.rows) {
    const text = words.map((each) => each.text).filter((each) => each !== '')
    const at = Math.round(row)
    // two figures of a bar that says which of two it is stand in one line, a figure over another in two
    const joint = text.join(': ')
    const own = Number.isInteger(row) || joint.length > mostJoint ? text : [joint]
    lines[at] = [...(lines[at] ?? []), ...own]
  }
  return lines
}

/** Puts what stands beside the rows under their names, where there is no room beside them; how much higher that makes the picture, px. */
function stack(chart: Chart, scales: Record<string, Axis>, y: Axis): number {
  const lines = besideOf(chart)
  if (lines === null) return 0
  const { config } = chart
  config.plugins = config.plugins?.filter(({ id }) => id !== besideId) ?? []
  for (const axis of Object.values(scales))
    if (axis.position === 'right')
      axis.afterFit = (scale) => {
        scale.width = 0
      }
  const withLines = (name: string | string[], row: number) => [name, lines[row] ?? []].flat()
  const labels = (config.data.labels ?? []) as (string | string[])[]
  if (labels.length > 0) config.data.labels = labels.map(withLines)
  else {
    const name = y.ticks?.callback
    if (y.ticks && name) y.ticks.callback = (value) => withLines(name(value), Number(value))
  }
  const most = Math.max(...lines.map((each) => each?.length ?? 0))
  return lines.length * most * lineHeight
}

/** What the rows of a chart ask of its picture: its least width, and how much higher it is than elsewhere; px. */
interface Rows {
  least: number
  more: number
}

/** Makes room for the names of the rows in a page that has `room` px; null where the chart has none. */
export function rowsOf(chart: Chart, room: number): Rows | null {
  const scales = (chart.config.options?.scales ?? {}) as Record<string, Axis>
  const { y } = scales
  if (!y || linesOf(chart, y).length === 0) return null
  const widest = () =>
    Math.max(...linesOf(chart, y).map(({ length }) => length)) * pageLetterWidth.plain + gap
  const beside = widest() + picture + roomAtRight(scales)
  const more = beside > room ? stack(chart, scales, y) : 0
  const names = widest()
  y.afterFit = (scale) => {
    scale.width = Math.max(scale.width, names)
  }
  return { least: Math.min(chartWidth, more > 0 ? names + picture : beside), more }
}

/** So narrow a picture has its axis named in several lines, px. */
const narrow = 500

/** Breaks the name of the axis below into lines, where there is little room; the library would squeeze its letters. */
export function nameInLines({ config }: Chart, width: number): void {
  const { title } = (config.options?.scales?.x ?? {}) as Axis
  if (width < narrow && typeof title?.text === 'string') title.text = wordLines(title.text, 12, picture)
}
