/** The finding on the expected output: stops, and the room between machines, against the target. */

import type { Words } from '../../catalogue/printed-units.js'
import type { BufferHand } from '../buffers.js'
import { type ExpectedOutput, expectedOutput } from '../expected.js'
import type { Looked, Rule } from '../finding.js'
import type { FeltStop } from '../paced.js'
import { usualError, usualErrorText } from '../usual-error.js'

/** Room that is tried as a mend, cases. */
const roomsTried = [5, 10, 20, 40, 80]

const basis = `finite dam after Moran, two machines after Gershwin (1994), stops that do not overlap after Buzacott (1967): ${usualErrorText}`

export const expectedFindings: Rule = (looked, tell) => {
  const { scenario, hand, words } = looked
  const { target } = scenario
  const good = hand.line.arriving * hand.line.goodShare
  // a target above what arrives is told already, and an error
  if (target === undefined || target > good || !hand.expected.output) return
  const { output } = hand.expected
  const short = 1 - output.throughput / target
  if (short < -usualError.within) return
  const rates = `By hand calculation the output is ${words.rate(output.throughput)} of good cases`
  if (short <= usualError.within)
    tell.note(
      'target-near-expected',
      ['target'],
      `${rates}, and the target is ${words.rate(target)}: ${words.share(Math.abs(short))} ${short > 0 ? 'less' : 'more'}, too close for a hand calculation.`,
      basis,
      'simulate with `tapeshift run`',
    )
  else
    tell.warning(
      'target-above-expected',
      ['target'],
      `${rates}, ${words.share(short)} below the target of ${words.rate(target)}. ${causeText(looked, output)}`,
      basis,
      fixText(looked, output, target),
    )
}

/** What costs most, and the room that it outlasts. */
function causeText({ hand, words }: Looked, output: ExpectedOutput): string {
  const { stops, slower, entry, pace } = output
  const good = hand.line.arriving * hand.line.goodShare
  const [worst] = stops
  const cost = (lost: number) => `${words.rate(lost)}, ${words.share(lost / good)} of the arrivals`
  if (slower > Math.max(entry, worst?.lost ?? 0))
    return `The largest loss: \`${pace}\` is slower than the arrivals: ${cost(slower)}.`
  if (entry > (worst?.lost ?? 0))
    return `The largest loss: packers wait until the entrance of \`${output.order[0]}\` is clear for the next case: ${cost(entry)}.`
  if (!worst) return 'The difference is the cases still in the line at the end of the shift.'
  return `The largest loss is the ${worst.stop.words} of \`${worst.stop.piece}\`: ${cost(worst.lost)}. ${feltText(worst, output, hand.buffers, words)}`
}

/** How a stop comes to cost output: the room that it outlasts. */
function feltText(
  { stop, effect, share, rest }: FeltStop,
  { pace, order }: ExpectedOutput,
  buffers: readonly BufferHand[],
  words: Words,
): string {
  const mean = `A stop takes ${words.time(stop.mean)} on average`
  if (effect === 'own') return `${mean}, and nothing makes up for them.`
  const places = order.map((name) => buffers.find((each) => each.name === name))
  const [at, paced] = [order.indexOf(stop.piece), pace === null ? -1 : order.indexOf(pace)]
  const between =
    effect === 'blocks' ? places.slice(Math.max(0, paced), at + 1) : places.slice(at + 1, paced + 1)
  const named = between.filter((each) => each !== undefined && each.places - each.riding >= 1) as BufferHand[]
  const free = named.reduce((sum, each) => sum + each.places - each.riding, 0)
  const lasts = named.reduce((sum, each) => sum + each.lasts, 0)
  const room =
    named.length > 0
      ? `the room between (${named.map(({ name }) => `\`${name}\``).join(', ')}: about ${words.count(Math.floor(free))} free places) lasts ${words.time(lasts)}`
      : 'there is no room between'
  const whom = pace === null ? 'the packers' : `\`${pace}\``
  const all = share > 0.995 ? 'all' : words.share(share)
  return `${mean}, and ${room}: ${all} of them ${effect === 'blocks' ? 'hold up' : 'leave without cases'} ${whom}, for ${words.time(rest)}.`
}

/** Room that would do, if any would; else the stop itself. */
function fixText({ scenario, hand, words }: Looked, output: ExpectedOutput, target: number): string {
  const { stops, slower, entry, pace, order } = output
  const [worst] = stops
  if (slower > Math.max(entry, worst?.lost ?? 0)) return `make \`${pace}\` faster`
  if (!worst || entry > worst.lost) return `make \`${order[0]}\` faster, or let cases arrive more evenly`
  const fewer = `have fewer or shorter ${worst.stop.words} of \`${worst.stop.piece}\``
  if (worst.effect === 'own') return fewer
  const before = worst.effect === 'blocks' ? worst.stop.piece : order[order.indexOf(worst.stop.piece) + 1]!
  const outputWith = (places: number) =>
    expectedOutput(scenario, hand.line, hand.buffers, { before, places }).output?.throughput ?? 0
  const enough = roomsTried.find((places) => outputWith(places) >= target)
  if (enough !== undefined)
    return `add ${enough} free places before \`${before}\` (by the same calculation); or ${fewer}`
  const most = roomsTried.at(-1)!
  return `${fewer}; ${most} more free places before \`${before}\` would give ${words.rate(outputWith(most))}`
}
