/** The expected output of a check: against the target in a sentence, and what takes the rest of the arrivals. */

import { type Words, wordsFor } from '../../catalogue/printed-units.js'
import { type Cell, figures, words as ofWords } from '../../report/cell.js'
import type { Table } from '../../report/report.js'
import type { CheckResult } from './document.js'
import { rangeText } from './may-be.js'

type Hand = NonNullable<CheckResult['hand']>
type Loss = Hand['expected']['losses'][number]

/** `Expected out by hand: 7.38 cases/min, 3 100 cases a shift; the target is 9 cases/min.` Empty where nothing could be read. */
export function expectedSentence(result: Pick<CheckResult, 'hand' | 'display' | 'likely'>): string {
  const { hand, display } = result
  if (!hand) return ''
  const words = wordsFor(display)
  const { throughput, perShift, why, atMost, usualError } = hand.expected
  const target = hand.target.value === null ? '' : `; the target is ${words.rate(hand.target.value)}`
  if (throughput.value === null)
    return `Expected output: at most ${words.rate(atMost.value ?? 0)}${target}. A closer hand calculation is not possible: ${why}.`
  const range = rangeText(result, 'expected', 'cases/s')
  const mayBe = range === null ? '' : ` (${range} for 5 to 95 % of the draws of the inputs)`
  return `Expected output: ${words.rate(throughput.value)}${mayBe}, ${words.count(perShift.value ?? 0)} good cases a shift${target} (${usualError.words}).`
}

/** From what arrives to the expected output; without rows where it is not worked out. */
export function expectedTable(hand: Hand, words: Words): Table {
  const { throughput, arriving, losses, pace, why } = hand.expected
  const row = (what: string, value: number, how: string): Cell[] => [
    what,
    { value, unit: 'cases/s' },
    { value: arriving.value ? value / arriving.value : 0, unit: 'share' },
    how,
  ]
  return {
    title: 'Expected output',
    note:
      throughput.value === null
        ? `Not calculated: ${why}.`
        : `${pace ? `\`${pace}\` sets` : 'The arrivals set'} the pace. A stop of another piece counts only for the time that the buffer between cannot cover; part of that buffer may still be full from the stop before. Breaks are not working time. A stop that begins in a break and waits for people until its end is not counted.`,
    columns: [...ofWords('what'), ...figures('cases', 'of the arrivals'), ...ofWords('how')],
    rows:
      throughput.value === null
        ? []
        : [
            row('arrives', arriving.value ?? 0, ''),
            ...losses.map((loss) =>
              row(`less: ${lossName(loss)}`, loss.lost.value ?? 0, lossHow(loss, words)),
            ),
            row('expected output', throughput.value, ''),
          ],
  }
}

const lossName = ({ piece, stop, words }: Loss): string =>
  stop === null ? (piece ? `${piece}: ${words}` : words) : `${words} of ${piece}`

/** Which of the stops are felt, for how long, and the part of the loss until somebody is there. */
function lossHow({ what, stop, felt, rest, lost, waitingForCrew }: Loss, words: Words): string {
  if (stop === null || felt.value === null || rest.value === null) return ''
  const share = felt.value > 0.995 ? 'all' : words.share(felt.value)
  const effect = {
    own: `each takes ${words.time(rest.value)}`,
    blocks: `${share} block the line before, for ${words.time(rest.value)} beyond the buffer`,
    starves: `${share} starve the line after, for ${words.time(rest.value)} beyond the buffer`,
  }[what as 'own' | 'blocks' | 'starves']
  const waits = (waitingForCrew.value ?? 0) / (lost.value || 1)
  return waits > 0.005 ? `${effect}; ${words.share(waits)} of the stop is waiting for crew` : effect
}
