/** Chart of the output: how many good cases the shifts put out, against the target. */
import type { ChartConfiguration, Chart as DrawnChart, Plugin } from 'chart.js'
import { quantile } from 'simple-statistics'
import type { RunResult } from '../../study/result.js'
import { grouped, printFigure } from '../format.js'
import { axisTitle, type Chart, chartWidth, counted, fontOf, foot, frame, palette, written } from './chart.js'

/** A bin holds the whole numbers of cases from `from` to `to`, both ends closed. */
export interface Bin {
  from: number
  to: number
  shifts: number
}

/** The target of a shift: as it is asked for, and the least whole number of cases that reaches it. */
export interface ShiftTarget {
  cases: number
  least: number
}

/** Bars must stay wide enough to be seen: no bin is narrower than this part of the axis. */
const mostBins = 60

/** Target rate times working time, the length of the shift less its breaks; null where no target is given. */
export function shiftTarget({ target, shift }: RunResult): ShiftTarget | null {
  if (target === null) return null
  const working = shift.length - shift.breaks.reduce((sum, pause) => sum + pause.for, 0)
  // divided as the line divides, so that a shift at the very edge falls on the same side here and there
  let least = Math.max(0, Math.floor(target * working) - 1)
  while (least / working < target) least++
  return { cases: target * working, least }
}

/**
 * Bins of one width in whole cases that cover `outputs`, one of which begins at `edge`. The width is near that of
 * Freedman & Diaconis (1981), twice the interquartile range over the cube root of the number of shifts, but wide
 * enough that an axis of `span` cases has no more than 60 of them.
 */
export function histogram(outputs: readonly number[], edge = 0, span = 0): Bin[] {
  const [low, high] = [Math.min(...outputs), Math.max(...outputs)]
  const spread = quantile([...outputs], 0.75) - quantile([...outputs], 0.25)
  const usual = (2 * spread) / Math.cbrt(outputs.length)
  const width = roundWidth(Math.max(usual, (high - low) / 40, Math.max(span, high - low) / mostBins, 1))
  const first = Math.floor((low - edge) / width)
  const last = Math.floor((high - edge) / width)
  const bins = Array.from({ length: last - first + 1 }, (_, index): Bin => {
    const from = edge + (first + index) * width
    return { from, to: from + width - 1, shifts: 0 }
  })
  for (const output of outputs) bins[Math.floor((output - edge) / width) - first]!.shifts++
  return bins
}

/** The least of 1, 2, 5, 10, 20, ... that is not below `width`. */
function roundWidth(width: number): number {
  const power = 10 ** Math.floor(Math.log10(width) + 1e-9)
  return [1, 2, 5, 10].map((step) => step * power).find((step) => step >= width - 1e-9)!
}

/** Histogram of the good cases a shift; null where there is no shift. */
export function outputChart(result: RunResult): Chart | null {
  const { outputs } = result
  if (outputs.length === 0) return null
  const target = shiftTarget(result)
  const reach = target ? [...outputs, target.cases] : outputs
  const bins = histogram(outputs, target?.least, Math.max(...reach) - Math.min(...reach))
  const width = bins[0]!.to - bins[0]!.from + 1
  const most = Math.max(...bins.map(({ shifts }) => shifts))
  const top = most + Math.max(1, Math.ceil(most * 0.15))
  const [title, subtitle] = [titleOf(result, target), subtitleOf(result, target)]
  // an empty bin at each end: the width of the bars is taken from the distance between neighbours
  const empty = (from: number): Bin => ({ from, to: from + width - 1, shifts: 0 })
  const padded = [empty(bins[0]!.from - width), ...bins, empty(bins.at(-1)!.to + 1)]
  const isReached = ({ from }: Bin) => !target || from >= target.least
  const margin = Math.max(width, (Math.max(...reach) - Math.min(...reach)) * 0.06)
  const options = frame(title, subtitle)
  const config: ChartConfiguration<'bar' | 'line'> = {
    type: 'bar',
    data: {
      datasets: [
        {
          type: 'bar',
          label: 'shifts',
          data: padded.map((bin) => ({ x: (bin.from + bin.to) / 2, y: bin.shifts })),
          backgroundColor: padded.map((bin) => (isReached(bin) ? palette.main : palette.short)),
          borderColor: palette.paper,
          borderWidth: { left: 0.5, right: 0.5 },
          barPercentage: 1,
          categoryPercentage: 1,
          order: 1,
        },
        ...(target ? [targetLine(target, top)] : []),
      ],
    },
    options: {
      ...options,
      scales: {
        x: {
          type: 'linear',
          offset: false,
          min: Math.min(bins[0]!.from - 0.5, target?.cases ?? Number.POSITIVE_INFINITY) - margin,
          max: Math.max(bins.at(-1)!.to + 0.5, target?.cases ?? 0) + margin,
          title: axisTitle('good cases a shift'),
          ticks: {
            color: palette.quietInk,
            includeBounds: false,
            precision: 0,
            maxTicksLimit: 11,
            maxRotation: 0,
            callback: (value) => (Number.isInteger(Number(value)) ? grouped(Number(value), 0) : ''),
          },
          grid: { display: false },
          border: { color: palette.frame },
        },
        y: {
          type: 'linear',
          min: 0,
          max: top,
          title: axisTitle(width === 1 ? 'shifts' : `shifts per ${grouped(width, 0)} cases`),
          ticks: { color: palette.quietInk, precision: 0, maxTicksLimit: 7, includeBounds: false, callback: (value) => grouped(Number(value), 0) },
          grid: { color: palette.grid },
          border: { color: palette.frame },
        },
      },
    },
    plugins: [...(target ? [targetName(target)] : []), foot(result)],
  }
  return { name: 'output', title, alt: altOf(result, target), width: chartWidth, height: 380, config: config as ChartConfiguration }
}

const reachedIn = (outputs: readonly number[], target: ShiftTarget) => outputs.filter((output) => output >= target.least).length

function titleOf({ outputs }: RunResult, target: ShiftTarget | null): string {
  if (!target) return `Good cases a shift in ${counted(outputs.length, 'shift')}`
  return `Good cases a shift: ${reachedIn(outputs, target)} of ${counted(outputs.length, 'shift')} reach the target`
}

function subtitleOf({ measures, made, display }: RunResult, target: ShiftTarget | null): string {
  if (!target) return 'The scenario gives no target.'
  const held = measures['target-held']
  if (!held || held.low === null || held.high === null) return `Target: ${grouped(target.cases, 0)} good cases a shift.`
  const share = printFigure(held, display)
  const sureness = Number((made.confidence * 100).toPrecision(4))
  return `In the long run ${share.value} % of shifts ${share.interval} at ${sureness} % confidence.`
}

function altOf({ outputs, measures }: RunResult, target: ShiftTarget | null): string {
  const mean = measures['output']?.mean ?? outputs.reduce((sum, output) => sum + output, 0) / outputs.length
  const [low, high] = [Math.min(...outputs), Math.max(...outputs)]
  const range = low === high ? `all ${grouped(low, 0)}` : `from ${grouped(low, 0)} to ${grouped(high, 0)}, on average ${grouped(mean, 0)}`
  const verdict = target
    ? `; ${reachedIn(outputs, target)} of them reach the target of ${grouped(target.cases, 0)}`
    : ''
  return `Good cases of ${counted(outputs.length, 'shift')}: ${range}${verdict}.`
}

function targetLine({ cases }: ShiftTarget, top: number) {
  return {
    type: 'line' as const,
    label: 'target',
    data: [
      { x: cases, y: 0 },
      { x: cases, y: top },
    ],
    borderColor: palette.target,
    borderWidth: 2,
    borderDash: [6, 4],
    pointRadius: 0,
    order: 0,
  }
}

/** Names the line of the target at its head, on the side that has room. */
function targetName({ cases }: ShiftTarget): Plugin {
  const text = `target ${grouped(cases, Number.isInteger(cases) ? 0 : 1)}`
  return {
    id: 'target-name',
    afterDatasetsDraw(chart: DrawnChart) {
      const x = chart.scales['x']!.getPixelForValue(cases)
      chart.ctx.font = fontOf({ size: 12, isBold: true })
      const isRoom = x + 8 + chart.ctx.measureText(text).width <= chart.chartArea.right
      written(chart, text, isRoom ? x + 8 : x - 8, chart.chartArea.top + 12, {
        size: 12,
        colour: palette.target,
        align: isRoom ? 'left' : 'right',
        isBold: true,
      })
    },
  }
}
