/** What a run says on the first screen. */

import { bothKinds, drawsText, isOfInputs, measureNext } from '../../answers/inputs-words.js'
import { limitingPiece, limitingText } from '../../answers/summary.js'
import { butCannotWork, cannotWork, suffixCannotWork } from '../../answers/warnings.js'
import { entriesOf, type Figure, wholeOf } from '../../catalogue/figure.js'
import { states } from '../../catalogue/states.js'
import { has } from '../../kinds/traits.js'
import { figureText, grouped, percentText, rateText, sentences, shareOfShifts } from '../../report/format.js'
import type { Summary } from '../../report/report.js'
import type { RunResult } from './document.js'

/** The first screen of a run. */
export function runSummary(result: RunResult): Summary {
  const { made, measures, target, display } = result
  const held = measures['target-held']
  const output = `${figureText(measures.throughput, display)} on average, ${figureText(measures.output, display)} a shift`
  return {
    question: target === null ? 'What is the output of this line?' : 'Does this line reach its target?',
    answer:
      target !== null && held
        ? `The line ${cannotWork(result) ? 'would reach' : 'reaches'} its target of ${rateText(target)} in ${shareOfShifts(held)} of the shifts${butCannotWork(result, 'it')}. Its output ${cannotWork(result) ? 'would be' : 'is'} ${output}.`
        : `The output is ${output}. No target is given, so there is no verdict.`,
    sureness: [
      `${percentText(made.confidence)} confidence, from ${grouped(made.shifts, 0)} simulated ${result.shift.campaign > 1 ? 'campaigns' : 'shifts'}: the value after ± or in brackets is how far off the figure may be because of ${result.drawn ? 'random variation of the simulation and uncertainty of the inputs' : 'random variation of the simulation'}.${average(result)}`,
      ...bothKindsLine(result),
    ],
    limiting: limitingText(result, result.byHand),
    next: nextSteps(result),
  }
}

/** Both kinds apart, of the rate. */
export function bothKindsLine({ measures, display, drawn }: RunResult): string[] {
  const said = bothKinds(measures.throughput, display)
  return drawn && said !== null ? [`Throughput: ${said} (${drawsText(drawn)}).`] : []
}

/** What the interval of the rate says of the target; null where nothing is known of one of them. */
export function onAverage({ target, measures }: RunResult): 'holds' | 'falls short' | 'open' | null {
  const { low, high } = measures.throughput ? wholeOf(measures.throughput) : { low: null, high: null }
  if (target === null || low === null || high === null) return null
  return low >= target ? 'holds' : high < target ? 'falls short' : 'open'
}

/** What a rate lacks of its target, with its plus-minus, cases a second; below 0 where the rate is above the target. */
export const shortfall = (throughput: Figure, target: number): Figure => ({
  ...throughput,
  mean: target - throughput.mean!,
  ...turned(throughput, target),
  ...(throughput.inputs ? { inputs: { ...throughput.inputs, ...turned(throughput.inputs, target) } } : {}),
})

/** Ends of what is left up to the target. */
const turned = ({ low, high }: Pick<Figure, 'low' | 'high'>, target: number) => ({
  low: target - high!,
  high: target - low!,
})

/** What the interval says of the target, in a sentence. */
function average(result: RunResult): string {
  const holds = cannotWork(result)
    ? ` On average it would reach the target${suffixCannotWork(result)}.`
    : ' On average it reaches the target: the whole interval does.'
  const said = {
    holds,
    'falls short': ' On average it misses the target: the whole interval does.',
    open: ' Not shown whether it reaches the target on average: the target lies within the interval.',
  }
  const found = onAverage(result)
  return found ? said[found] : ''
}

/** Against the largest loss of the limiting piece and of the sealers; waiting for cases is none of theirs where all that comes is let in. */
function remedyFor(result: RunResult): string {
  const { equipment, byHand } = result
  const limiting = limitingPiece(result, byHand?.bottleneck)?.[0]
  const keepsUp = (byHand?.shareAdmitted ?? 1) >= 1
  const shares = Object.entries(equipment)
    .filter(([name, piece]) => name === limiting || has(piece, 'tapes'))
    .flatMap(([name, piece]) => {
      const lost = entriesOf(piece.states).flatMap(([key, { mean }]) => {
        const { remedy } = states[key]
        return remedy && !(keepsUp && key === 'waiting') ? [{ remedy, share: mean ?? 0 }] : []
      })
      // states with the same remedy are one loss
      return [...new Set(lost.map(({ remedy }) => remedy))].map((words) => ({
        words,
        name,
        share: lost.reduce((sum, { remedy, share }) => sum + (remedy === words ? share : 0), 0),
      }))
    })
  const [worst] = shares.sort((a, b) => b.share - a.share)
  if (!worst || worst.share < 0.005) return ''
  return `${worst.words(worst.name, percentText(worst.share, 2))} tapeshift compare says what that is worth.`
}

/** What to do next, the most pressing first. */
function nextSteps(result: RunResult): string[] {
  const { target, measures, drawn } = result
  const held = measures['target-held'] ? wholeOf(measures['target-held']).low : null
  return sentences(
    target === null && 'Give a target in the scenario, and the report says how often it is reached.',
    moreShifts(result),
    ...measureNext(
      drawn?.contributions.find(({ measure }) => measure === 'throughput'),
      measures.throughput,
    ),
    held !== null && held >= 0.95 && !cannotWork(result)
      ? 'The target is reached in 95 % of the shifts or more: tapeshift size says whether a cheaper line does that too.'
      : remedyFor(result),
  )
}

/** Where the interval holds the target: how many shifts would tell, by the square root of their number. */
function moreShifts(result: RunResult): string {
  // where the inputs leave it open more shifts show nothing
  if (onAverage(result) !== 'open' || isOfInputs(result.measures.throughput)) return ''
  const { mean, low, high } = result.measures.throughput as { mean: number; low: number; high: number }
  const needed = result.made.shifts * ((high - low) / 2 / Math.abs(mean - result.target!)) ** 2
  const about =
    Number.isFinite(needed) && needed < 100_000
      ? ` About ${grouped(Number(needed.toPrecision(2)), 0)} would show it.`
      : ''
  return `Simulate more shifts: these do not show whether the target is reached on average.${about}`
}
