/** What is said of the part of a chart that is pointed at. */
import type { ChartConfiguration, TooltipItem, TooltipOptions } from 'chart.js'
import { grouped } from '../report/format.js'
import type { Chart } from '../report/marks/chart.js'

type Item = TooltipItem<'bar' | 'line' | 'scatter'>

/** A number with about four figures, thousands apart. */
function numberText(value: number): string {
  const size = Math.abs(value)
  const decimals = Number.isInteger(value) || size >= 1000 ? 0 : size >= 100 ? 1 : size >= 1 ? 2 : 3
  return grouped(value, decimals)
}

const axisWord = ({ chart }: Item, axis: string): string => {
  const title = (chart.options.scales?.[axis] as { title?: { text?: string | string[] } } | undefined)?.title
    ?.text
  return [title ?? ''].flat().join(' ')
}

/** Is the figure of a point its place along x? */
const isAlong = ({ type, options }: ChartConfiguration) => options?.indexAxis === 'y' || type === 'scatter'

/** Options of the tooltip of a chart. */
export function tooltipOf({ config }: Chart): Partial<TooltipOptions> {
  const along = isAlong(config)
  return {
    enabled: true,
    displayColors: true,
    callbacks: {
      title: (items: Item[]) => (items[0] ? titleOf(items[0], along) : ''),
      label: (item: Item) => labelOf(item, along),
    },
    filter: ({ parsed }: Item) => Number.isFinite(along ? parsed.x : parsed.y),
  } as unknown as Partial<TooltipOptions>
}

/** What the point is of: its row, or its place along x. */
function titleOf(item: Item, along: boolean): string {
  const { labels } = item.chart.data
  if (labels && labels.length > 0) return [labels[item.dataIndex]].flat().join(' ')
  if (along) {
    const ticks = item.chart.scales.y?.options as
      | { ticks?: { callback?: (value: number) => unknown } }
      | undefined
    return [ticks?.ticks?.callback?.(item.parsed.y!) ?? ''].flat().join(' ')
  }
  return `${axisWord(item, 'x')}: ${item.dataset.type === 'bar' ? binText(item) : numberText(item.parsed.x!)}`
}

/** Both ends of a bar that stands for several whole numbers. */
function binText({ dataset, dataIndex, parsed }: Item): string {
  const [first, second] = dataset.data as { x: number }[]
  const width = first && second && dataIndex >= 0 ? second.x - first.x : 1
  const half = (width - 1) / 2
  return half > 0
    ? `${numberText(parsed.x! - half)} to ${numberText(parsed.x! + half)}`
    : numberText(parsed.x!)
}

function labelOf(item: Item, along: boolean): string {
  const value = along ? item.parsed.x! : item.parsed.y!
  const axis = along ? 'x' : ((item.dataset as { yAxisID?: string }).yAxisID ?? 'y')
  const word = axisWord(item, axis)
  const name = item.dataset.label ?? ''
  return `${name}: ${numberText(value)}${word === '' || word === name ? '' : ` (${word})`}`
}
