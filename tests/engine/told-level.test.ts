/** A level that is told its changes when all are known has the tallies of one that is told each as it happens. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { Level } from '../../src/engine/tally.js'

const end = 100
const mask = 127

/** Up at each of the times, and down again after its stay, first in, first out. */
const visits = fc.array(
  fc.record({ after: fc.integer({ min: 0, max: 6 }), stays: fc.integer({ min: 0, max: 9 }) }),
  { minLength: 1, maxLength: 60 },
)

it('mean, quantiles, largest, time at 0 and samples', () => {
  fc.assert(
    fc.property(visits, fc.integer({ min: 1, max: end }), (given, until) => {
      const ups = new Float64Array(mask + 1)
      const downs = new Float64Array(mask + 1)
      let [up, down] = [0, 0]
      for (const [index, { after, stays }] of given.entries()) {
        up += after
        down = Math.max(down, up + stays)
        ups[index] = up
        downs[index] = down
      }
      const clock = { now: 0 }
      const [each, told] = [new Level(clock, 7), new Level(clock, 7)]
      for (const level of [each, told]) level.reset(0, end)
      // in the order of time, down before up
      const changes = given.flatMap((_, index) => [
        { at: ups[index]!, by: 1 as const },
        { at: downs[index]!, by: -1 as const },
      ])
      for (const { at, by } of ordered(changes).filter(({ at }) => at < until)) {
        clock.now = at
        each.change(by)
      }
      told.tell(ups, downs, mask, given.length, until)
      clock.now = until
      for (const level of [each, told]) level.settle()
      for (const of of [0.05, 0.5, 0.95]) expect(told.quantile(of)).toBe(each.quantile(of))
      expect(told.mean()).toBeCloseTo(each.mean(), 12)
      expect([told.value, told.timeEmpty]).toEqual([each.value, each.timeEmpty])
      expect(told.samples).toEqual(each.samples)
      expect(told.largest).toBe(each.largest)
    }),
    { numRuns: 500, seed: 3 },
  )
})

/** A case that comes and goes at one instant comes before it goes; else at one instant down is first. */
function ordered(changes: { at: number; by: 1 | -1 }[]) {
  const ups = changes.filter(({ by }) => by > 0)
  const downs = changes.filter(({ by }) => by < 0)
  const found: { at: number; by: 1 | -1 }[] = []
  let [up, down] = [0, 0]
  while (down < downs.length) {
    const goes = down < up ? downs[down]!.at : Infinity
    const comes = ups[up]?.at ?? Infinity
    found.push(goes <= comes ? downs[down++]! : ups[up++]!)
  }
  return found
}
