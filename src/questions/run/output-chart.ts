/** Chart of the output: how many good cases the shifts put out, against the target. */

import type { ChartConfiguration, Plugin } from 'chart.js'
import { max, mean, min, quantile } from 'simple-statistics'
import type { ShiftTarget } from '../../answers/shift-target.js'
import { casesText, shiftTarget } from '../../answers/shift-target.js'
import { suffixCannotWork } from '../../answers/warnings.js'
import { counted, grouped, printFigure } from '../../report/format.js'
import {
  axisTitle,
  type Chart,
  chartWidth,
  foot,
  frame,
  palette,
  roundStep,
  tickFont,
  widthOf,
  written,
} from '../../report/marks/chart.js'
import type { RunResult } from './document.js'

/** A bin holds the whole numbers of cases from `from` to `to`, both ends closed. */
interface Bin {
  from: number
  to: number
  shifts: number
}

/** Bins that an axis holds at most: bars must stay wide enough to be seen. */
const mostBins = 60
const mostTicks = 10

/**
 * Bins of one width in whole cases that cover `outputs`, one of which begins at `edge`. The width is near
 * that of Freedman & Diaconis (1981), twice the interquartile range over the cube root of the number of
 * shifts, but wide enough that an axis of `span` cases has no more than 60 of them.
 */
export function histogram(outputs: readonly number[], edge = 0, span = 0): Bin[] {
  const [low, high] = [min(outputs), max(outputs)]
  const spread = quantile(outputs, 0.75) - quantile(outputs, 0.25)
  const usual = (2 * spread) / Math.cbrt(outputs.length)
  const width = roundStep(Math.max(usual, Math.max(span, high - low) / mostBins, 1))
  const first = Math.floor((low - edge) / width)
  const last = Math.floor((high - edge) / width)
  const bins = Array.from({ length: last - first + 1 }, (_, index): Bin => {
    const from = edge + (first + index) * width
    return { from, to: from + width - 1, shifts: 0 }
  })
  for (const output of outputs) bins[Math.floor((output - edge) / width) - first]!.shifts++
  return bins
}

/** Histogram of the good cases a shift; null where there is no shift. */
export function outputChart(result: RunResult): Chart | null {
  const { outputs } = result
  if (outputs.length === 0) return null
  const target = shiftTarget(result)
  const reach = target ? [...outputs, target.cases] : outputs
  const span = max(reach) - min(reach)
  const bins = histogram(outputs, target?.least, span)
  const width = bins[0]!.to - bins[0]!.from + 1
  const most = max(bins.map(({ shifts }) => shifts))
  const top = most + Math.max(1, Math.ceil(most * 0.15))
  const [title, subtitle] = [titleOf(result, target), subtitleOf(result, target)]
  // an empty bin at each end: the width of the bars is taken from the distance between neighbours
  const empty = (from: number): Bin => ({ from, to: from + width - 1, shifts: 0 })
  const padded = [empty(bins[0]!.from - width), ...bins, empty(bins.at(-1)!.to + 1)]
  const isReached = ({ from }: Bin) => !target || from >= target.least
  const margin = Math.max(width, span * 0.06)
  // a bin may begin below no case at all, the axis does not
  const axis = {
    min: Math.max(-0.5, Math.min(bins[0]!.from - 0.5, min(reach)) - margin),
    max: Math.max(bins.at(-1)!.to + 0.5, max(reach)) + margin,
  }
  const options = frame(title, subtitle, 14)
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
          ...axis,
          title: axisTitle('good cases a shift'),
          afterBuildTicks: (scale) => {
            scale.ticks = ticksOf(axis, width).map((value) => ({ value }))
          },
          ticks: {
            color: palette.quietInk,
            font: tickFont,
            maxRotation: 0,
            autoSkip: false,
            callback: (value) => grouped(Number(value), 0),
          },
          grid: { display: false },
          border: { color: palette.frame },
        },
        y: {
          type: 'linear',
          min: 0,
          max: top,
          title: axisTitle(width === 1 ? 'shifts' : `shifts per ${grouped(width, 0)} cases`),
          ticks: {
            color: palette.quietInk,
            font: tickFont,
            precision: 0,
            maxTicksLimit: 7,
            includeBounds: false,
            callback: (value) => grouped(Number(value), 0),
          },
          grid: { color: palette.grid },
          border: { color: palette.frame },
        },
      },
    },
    plugins: [...(target ? [targetName(target)] : []), foot(result)],
  }
  return {
    name: 'output',
    title,
    alt: altOf(result, target),
    width: chartWidth,
    height: 380,
    config: config as ChartConfiguration,
  }
}

/** Round numbers on the axis, no closer than the bins: a bar is never drawn wider than two ticks are apart. */
function ticksOf(axis: { min: number; max: number }, width: number): number[] {
  const step = roundStep(Math.max(width, (axis.max - axis.min) / mostTicks))
  const first = Math.ceil(axis.min / step)
  return Array.from({ length: Math.floor(axis.max / step) - first + 1 }, (_, index) => (first + index) * step)
}

const reachedIn = (outputs: readonly number[], target: ShiftTarget) =>
  outputs.filter((output) => output >= target.least).length

function titleOf(result: RunResult, target: ShiftTarget | null): string {
  const { outputs } = result
  if (!target) return `Good cases a shift in ${counted(outputs.length, 'shift')}`
  return `Good cases a shift: ${reachInWords(outputs, target)} the target${suffixCannotWork(result)}`
}

/** `all 200 shifts reach`, `43 of 200 shifts reach`, `none of 200 shifts reaches`. */
function reachInWords(outputs: readonly number[], target: ShiftTarget): string {
  const [reached, all] = [reachedIn(outputs, target), outputs.length]
  if (reached === all && all > 1) return `all ${counted(all, 'shift')} reach`
  const some = reached === 0 ? 'none' : grouped(reached, 0)
  return `${some} of ${counted(all, 'shift')} ${reached > 1 ? 'reach' : 'reaches'}`
}

function subtitleOf({ measures, made, display }: RunResult, target: ShiftTarget | null): string {
  if (!target) return 'The scenario gives no target.'
  const asked = `Target: ${casesText(target.cases)} good cases a shift.`
  const held = measures['target-held']
  if (!held || held.low === null || held.high === null) return asked
  const { value, interval } = printFigure(held, display)
  const sureness = Number((made.confidence * 100).toPrecision(4))
  return `${asked} Share of shifts that reach it: ${value} % ${interval}, ${sureness} % confidence.`
}

function altOf(result: RunResult, target: ShiftTarget | null): string {
  const { outputs, measures } = result
  const average = measures.output?.mean ?? mean(outputs)
  const [low, high] = [min(outputs), max(outputs)]
  const range =
    low === high
      ? `all ${grouped(low, 0)}`
      : `from ${grouped(low, 0)} to ${grouped(high, 0)}, on average ${grouped(average, 0)}`
  const verdict = target
    ? `; ${reachInWords(outputs, target)} the target of ${casesText(target.cases)}${suffixCannotWork(result)}`
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
  const text = `target ${casesText(cases)}`
  return {
    id: 'target-name',
    afterDatasetsDraw({ ctx, chartArea, scales }) {
      const x = scales.x!.getPixelForValue(cases)
      const isRoom = x + 8 + widthOf(ctx, text, { size: 12, isBold: true }) <= chartArea.right
      const align = isRoom ? 'left' : 'right'
      const lettering = { size: 12, colour: palette.target, align, isBold: true } as const
      written(ctx, text, isRoom ? x + 8 : x - 8, chartArea.top + 12, lettering)
    },
  }
}
