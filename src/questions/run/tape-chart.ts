/** Chart of the tape: what each head lays on cases and what is lost with its rolls, a shift. */
import type { ChartConfiguration, Plugin } from 'chart.js'
import type { Figure } from '../../catalogue/figure.js'
import { figureText, grouped } from '../../report/format.js'
import {
  axisTitle,
  belowHeight,
  type Chart,
  chartWidth,
  fontFamily,
  foot,
  frame,
  headHeight,
  palette,
  tickFont,
  wrapped,
  written,
} from '../../report/marks/chart.js'
import { unitSize } from '../../scenario/quantity.js'
import type { RunResult } from './document.js'

interface HeadTape {
  name: string
  /** Lengths in the unit of the chart. */
  laid: number
  lost: number
  used: Figure
  loss: Figure
}

/** Room right of the bars for their figures, px. */
const figuresWidth = 180

/** Between the subtitle and the legend, px. */
const gap = 2

/** Tape laid and lost by head; null where the line has no sealer. */
export function tapeChart(result: RunResult): Chart | null {
  const { display } = result
  const unit = display === 'us' ? 'ft' : 'm'
  const heads = headTapes(result, unitSize('length', unit))
  if (heads.length === 0) return null
  const title = 'Tape by head, a shift'
  const sureness = Number((result.made.confidence * 100).toPrecision(4))
  const subtitle = `Beside each bar: tape used, and of it lost with the rolls. Plus-minus at ${sureness} % confidence.`
  const options = frame(title, subtitle, gap)
  const bar = {
    barPercentage: 0.75,
    categoryPercentage: 0.9,
    borderColor: palette.paper,
    borderSkipped: false as const,
    borderWidth: 0,
  }
  const config: ChartConfiguration<'bar'> = {
    type: 'bar',
    data: {
      labels: heads.map(({ name }) => wrapped(name, 24)),
      datasets: [
        {
          ...bar,
          label: 'laid on cases',
          data: heads.map(({ laid }) => laid),
          backgroundColor: palette.main,
        },
        {
          ...bar,
          label: 'lost with the rolls',
          data: heads.map(({ lost }) => lost),
          backgroundColor: palette.lost,
        },
      ],
    },
    options: {
      ...options,
      indexAxis: 'y',
      layout: { padding: { ...options.layout.padding, right: figuresWidth } },
      plugins: {
        ...options.plugins,
        legend: {
          display: true,
          position: 'top',
          align: 'start',
          labels: { boxWidth: 14, boxHeight: 12, color: palette.ink, font: { family: fontFamily, size: 12 } },
        },
      },
      scales: {
        x: {
          stacked: true,
          min: 0,
          title: axisTitle(`tape a shift, ${unit}`),
          ticks: {
            color: palette.quietInk,
            font: tickFont,
            maxTicksLimit: 8,
            maxRotation: 0,
            callback: (value) => grouped(Number(value), 0),
          },
          grid: { color: palette.grid },
          border: { color: palette.frame },
        },
        y: {
          stacked: true,
          ticks: { color: palette.ink, autoSkip: false, font: tickFont },
          grid: { display: false },
          border: { color: palette.frame },
        },
      },
    },
    plugins: [figuresBeside(heads, display), foot(result)],
  }
  const words = heads.map(
    ({ name, used, loss }) =>
      `${name}: ${figureText(used, display)}, of it ${figureText(loss, display)} lost`,
  )
  return {
    name: 'tape',
    title,
    alt: `Tape used a shift by head: ${words.join('; ')}.`,
    width: chartWidth,
    height: headHeight(title, subtitle, gap) + 30 + heads.length * 46 + belowHeight,
    config: config as ChartConfiguration,
  }
}

/** Every head of the line, in its order, with lengths in units of `size` metres. */
function headTapes(result: RunResult, size: number): HeadTape[] {
  return Object.entries(result.equipment).flatMap(([machine, { heads }]) =>
    Object.entries(heads ?? {}).map(([head, figures]): HeadTape => {
      const [used, loss] = [figures.tape!, figures.loss!]
      const lost = (loss.mean ?? 0) / size
      return { name: `${machine}, ${head}`, laid: (used.mean ?? 0) / size - lost, lost, used, loss }
    }),
  )
}

/** Writes the figures with their intervals beside each bar: an error bar would be too short to see. */
function figuresBeside(heads: readonly HeadTape[], display: RunResult['display']): Plugin<'bar'> {
  return {
    id: 'figures-beside',
    afterDatasetsDraw(chart) {
      const x = chart.chartArea.right + 14
      for (const [index, { y }] of chart.getDatasetMeta(0).data.entries()) {
        const { used, loss } = heads[index]!
        written(chart.ctx, figureText(used, display), x, y - 2, {
          size: 12,
          colour: palette.ink,
          isBold: true,
        })
        written(chart.ctx, `lost ${figureText(loss, display)}`, x, y + 13, {
          size: 11,
          colour: palette.quietInk,
        })
      }
    },
  }
}
