/** How sure the figures of a run are, in sentences: precision, requirements, narrowed intervals, the warm-up. */

import { figureAt, figuresAt } from '../../answers/figure-at.js'
import { isOfInputs } from '../../answers/inputs-words.js'
import type { PrecisionReached } from '../../answers/made.js'
import { butCannotWork } from '../../answers/warnings.js'
import { type Figure, wholeOf } from '../../catalogue/figure.js'
import { counted, durationText, figureText, grouped, percentText, sentences } from '../../report/format.js'
import { leastForSkewness } from '../../statistics/skewness.js'
import type { RunResult } from './document.js'
import { bothKindsLine } from './summary.js'

/** What the user required, each with what the figures say of it. */
export function requirementLines(result: RunResult): string[] {
  return result.requirements.map((each) => {
    const required = `Required: ${each.require}.`
    if (each.measure === null)
      return `${required} ${each.judgement === 'met' ? `Met${butCannotWork(result)}.` : 'Not met: see "How sure is this".'}`
    const figure = figureAt(result, each.measure)
    const seen = figure ? figureText(figure, result.display) : 'not known'
    if (each.judgement === 'met') return `${required} Met: it is ${seen}${butCannotWork(result)}.`
    if (each.judgement === 'not-met') return `${required} Not met: it is ${seen}.`
    return `${required} Not shown: ${whyNotShown(figure, seen)} ${isOfInputs(figure) ? 'Measure the inputs better.' : 'Simulate more shifts.'}`
  })
}

/** Why an interval does not tell, as the begin of a sentence. */
function whyNotShown(figure: Figure | undefined, seen: string): string {
  if (figure?.low === null) return `it is ${seen}, too few to say how far off the figure may be.`
  if (figure && wholeOf(figure).low === wholeOf(figure).high)
    return `it was ${seen} in each of ${counted(figure.n, 'shift')}, so its variation is not known.`
  return `it is ${seen}, and the requirement lies within this interval.`
}

/** How sure the figures are and what would make them surer. */
export function certaintyLines(result: RunResult): string[] {
  const { precision, made, warmUp } = result
  return sentences(
    ...bothKindsLine(result),
    ...(precision ? precisionLines(precision, made.shifts, result.drawn !== undefined) : [spread(result)]),
    shrinkLine(result),
    made.shifts < leastForSkewness &&
      `With fewer than ${leastForSkewness} shifts the spread is not well known: plus-minus may be too small.`,
    warmUp && warmUpLine(result),
    figuresAt(result).some(([, { few }]) => few) && fewLine,
    bunchLine(result),
  )
}

/** What stands in place of plus-minus. */
const fewLine =
  'A number of events or shifts instead of a plus-minus means: too few to say how far off the figure may be. "In breaks": stops that waited for the end of a break. Such a stop is much longer than others.'

/** Counts that come in bunches, the worst three: fewer of them are independent than were counted. */
function bunchLine(result: RunResult): string | false {
  const worst = figuresAt(result)
    .flatMap(([, { label, bunches }]) => (bunches === undefined ? [] : [{ label, bunches }]))
    .sort((a, b) => b.bunches - a.bunches)
    .slice(0, 3)
    .map(({ label, bunches }) => `${label} (${grouped(bunches, 1)})`)
  return (
    worst.length > 0 &&
    `Some events come in groups, and their plus-minus allows for this. Their variance compared with independent events: ${worst.join('; ')} times.`
  )
}

/** What the number of shifts has to do with it. */
function spread({ made, drawn }: RunResult): string {
  return `${drawn ? 'The part from random variation' : 'Plus-minus'} shrinks with the square root of the number of shifts: ${grouped(made.shifts * 4, 0)} shifts would halve it.`
}

function precisionLines(
  { asked, of, most, isMet }: PrecisionReached,
  shifts: number,
  isDrawn: boolean,
): string[] {
  // no number of shifts tells more of the inputs
  const ofLuck = isDrawn ? ', by random variation of the simulation alone' : ''
  const reached = of
    .map(
      ({ measure, reached: each }) =>
        `${measure} ${each === null ? 'not at all' : `within ${percentText(each, 2)}`}`,
    )
    .join(', ')
  if (isMet)
    return [
      `Required precision: within ${percentText(asked, 2)}. After ${grouped(shifts, 0)} shifts it is known${ofLuck}: ${reached}.`,
    ]
  const worst = Math.max(...of.map((each) => each.reached ?? Infinity))
  const needed = Math.ceil(shifts * (worst / asked) ** 2)
  const hint = Number.isFinite(needed) ? ` That would take about ${roughly(needed)} shifts.` : ''
  return [
    `Required precision: within ${percentText(asked, 2)}. Not reached in ${grouped(most, 0)} shifts, the maximum: it is known${ofLuck} ${reached}.${hint}`,
  ]
}

/** A number with two figures: `4 300`. */
const roughly = (value: number) => grouped(Number(value.toPrecision(2)), 0)

function shrinkLine({ measures, drawn }: RunResult): string | false {
  const shrink = measures.throughput?.shrink
  return (
    shrink !== undefined &&
    `Control variates on the simulated arrivals reduce the random variation: ${drawn ? 'this part of the plus-minus' : 'plus-minus'} of the output is ${percentText(shrink, 2)} of that of plain means (--plain).`
  )
}

function warmUpLine({ warmUp, shift }: RunResult): string {
  const { cut, countFrom, runs, isSettled } = warmUp!
  const found = `MSER-5 over the cases in the line, averaged over ${runs} runs from empty`
  if (shift.start === 'steady')
    return `Counted from ${durationText(countFrom)} on: before that is the warm-up (${found}, cuts at ${durationText(cut)}).`
  if (!isSettled) return `The line does not reach a steady state in a campaign (${found}).`
  return cut === 0
    ? `The line is in steady state from the start (${found}).`
    : `From empty the line takes ${durationText(cut)} to reach a steady state (${found}); the whole campaign is counted.`
}
