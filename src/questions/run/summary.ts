/** What a run says of its target, and what to do next. */

import { limitingPiece } from '../../answers/first-screen.js'
import { bothKinds, drawsText, isOfInputs, measureNext } from '../../answers/inputs-words.js'
import { cannotWork } from '../../answers/warnings.js'
import { entriesOf, type Figure, wholeOf } from '../../catalogue/figure.js'
import { states } from '../../catalogue/states.js'
import { has } from '../../kinds/traits.js'
import { grouped, percentText, sentences } from '../../report/format.js'
import type { RunResult } from './document.js'
import { holdUpText } from './hold-up.js'

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
  const of = percentText(worst.share, 2)
  const isHeldUp = worst.words === states.blocked.remedy
  const words = (isHeldUp && holdUpText(worst.name, of, result)) || worst.words(worst.name, of)
  return `${words} tapeshift compare says what that is worth.`
}

/** What to do next, the most pressing first. */
export function nextOfRun(result: RunResult): string[] {
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
