/** Chart of the output: how many good cases the shifts put out, against the target. */

import { max, mean, min, quantile } from 'simple-statistics'
import type { ShiftTarget } from '../../answers/shift-target.js'
import { casesText, shiftTarget } from '../../answers/shift-target.js'
import { suffixCannotWork } from '../../answers/warnings.js'
import { counted, grouped, percentText, printFigure } from '../../report/format.js'
import { numbers, roundStep, spanAxis, spanOf } from '../../report/marks/axis.js'
import { type Chart, chartOf } from '../../report/marks/chart.js'
import { palette } from '../../report/marks/inks.js'
import { targetLine } from '../../report/marks/line.js'
import type { Bars } from '../../report/marks/mark.js'
import { nameBeside } from '../../report/marks/rule.js'
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
  const margin = Math.max(width, span * 0.06)
  // a bin may begin below no case at all, the axis does not
  const from = Math.max(-0.5, Math.min(bins[0]!.from - 0.5, min(reach)) - margin)
  const to = Math.max(bins.at(-1)!.to + 0.5, max(reach)) + margin
  return chartOf(result, {
    name: 'output',
    section: 'figures',
    title: titleOf(result, target),
    subtitle: subtitleOf(result, target),
    alt: altOf(result, target),
    mayNarrow: true,
    gap: 14,
    height: { all: 380 },
    type: 'bar',
    axes: {
      // ticks no closer than the bins: a bar is never drawn wider than two ticks are apart
      x: spanAxis({ ...spanOf(from, to, mostTicks, width), decimals: 0 }, 'good cases a shift', {
        isPlain: true,
        more: { offset: false },
      }),
      y: numbers({
        title: width === 1 ? 'shifts' : `shifts per ${grouped(width, 0)} cases`,
        min: 0,
        max: top,
        most: 7,
        isInside: true,
        decimals: 0,
        moreOfTicks: { precision: 0 },
      }),
    },
    marks: [
      binBars(bins, width, target),
      target && targetLine(target.cases, top, { type: 'line', borderWidth: 2, order: 0 }),
      target && nameBeside(target.cases, `target ${casesText(target.cases)}`, 12),
    ],
  })
}

/** A bar for each bin, of its own colour where its shifts reach the target. */
function binBars(bins: readonly Bin[], width: number, target: ShiftTarget | null): Bars {
  // an empty bin at each end: the width of the bars is taken from the distance between neighbours
  const empty = (from: number): Bin => ({ from, to: from + width - 1, shifts: 0 })
  const padded = [empty(bins[0]!.from - width), ...bins, empty(bins.at(-1)!.to + 1)]
  const isReached = ({ from }: Bin) => !target || from >= target.least
  return {
    type: 'bar',
    label: 'shifts',
    data: padded.map((bin) => ({ x: (bin.from + bin.to) / 2, y: bin.shifts })),
    backgroundColor: padded.map((bin) => (isReached(bin) ? palette.main : palette.short)),
    borderColor: palette.paper,
    borderWidth: { left: 0.5, right: 0.5 },
    barPercentage: 1,
    categoryPercentage: 1,
    order: 1,
  }
}

function titleOf(result: RunResult, target: ShiftTarget | null): string {
  const { outputs } = result
  if (!target) return `Good cases a shift in ${counted(outputs.length, 'shift')}`
  return `Good cases a shift: ${reachInWords(outputs, target)} the target${suffixCannotWork(result)}`
}

/** `all 200 shifts reach`, `43 of 200 shifts reach`, `none of 200 shifts reaches`. */
function reachInWords(outputs: readonly number[], target: ShiftTarget): string {
  const all = outputs.length
  const reached = outputs.filter((output) => output >= target.least).length
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
  return `${asked} Share of shifts that reach it: ${value} % ${interval}, ${percentText(made.confidence)} confidence.`
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
