/**
 * A mean time per event, such as MTTF, against failures that come at a known rate: its interval holds the truth as often as it says, from
 * the fewest on with which it is printed.
 */
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { estimateOf } from '../../src/statistics/estimate.js'
import { enoughEvents } from '../../src/statistics/events.js'

const studies = 4000
const hours = 6

/** Failures of one shift of so many hours, one in `meanTime` h. */
function failuresIn(stream: Stream, meanTime: number): number {
  let [count, at] = [0, 0]
  for (;;) {
    at -= meanTime * Math.log(stream.next())
    if (at > hours) return count
    count++
  }
}

/** Shares of the studies with enough failures whose interval holds the mean time, lies below it, and above. */
function held(shifts: number, meanTime: number) {
  const stream = new Stream('coverage', 'failures')
  const found = { within: 0, below: 0, above: 0, told: 0 }
  for (let study = 1; study <= studies; study++) {
    stream.begin('time per event', study)
    const failures = Array.from({ length: shifts }, () => failuresIn(stream, meanTime))
    if (failures.reduce((sum, count) => sum + count, 0) < enoughEvents) continue
    const { low, high } = estimateOf(
      {
        kind: 'ratio',
        values: failures.map(() => hours),
        overs: failures.map((count) => count + 1 / shifts),
        isTimeOfEvents: true,
      },
      0.95,
    )
    found.told++
    if (low > meanTime) found.above++
    else if (high < meanTime) found.below++
    else found.within++
  }
  return found
}

describe('mean time per event', () => {
  it.each([
    [50, 5],
    [100, 15],
    [200, 20],
    [200, 6],
    [1000, 120],
  ])('of %i shifts with a failure in %i h', (shifts, meanTime) => {
    const { within, told } = held(shifts, meanTime)
    expect(told).toBeGreaterThan(studies / 2)
    // what is printed with a plus-minus of 95 % holds the truth in 92 to 98 %: the rule of the project
    expect(within / told).toBeGreaterThan(0.92)
    expect(within / told).toBeLessThan(0.98)
  })
})
