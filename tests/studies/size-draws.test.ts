/** How often the limits of the share of draws that keep a promise cover it, where each draw is judged by shifts with luck of their own. */
import normalBelow from '@stdlib/stats-base-dists-normal-cdf'
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { wrongOf } from '../../src/questions/size/drawn.js'
import { type Search, tryOne } from '../../src/questions/size/search.js'
import { keptIn } from '../../src/questions/size/sure.js'
import { shareOfDraws } from '../../src/statistics/kept-draws.js'
import { standardNormal } from '../../src/statistics/quantile.js'
import { brought, condition, shiftOf } from '../questions/searches.js'

const [studies, draws, confidence] = [400, 60, 0.95]
const logit = (share: number) => Math.log(share / (1 - share))

describe('a promise of 90 % of shifts, give or take 2 points', () => {
  const goal = {
    promises: () => [condition(0, { value: 0.9, near: 0.02 })],
    ...{ confidence, most: 2000, isFull: false },
  }

  // shares of shifts are normal on the logit over what the inputs may be: far apart, and mostly near the promise
  it.each([
    [0.95, 1.5],
    [0.9, 0.5],
    [0.85, 0.4],
  ])(
    'kept on average in %f of them, spread %f on the logit: covered as often as is said',
    async (middle, spread) => {
      const luck = new Stream('shifts', 'test')
      const above = (share: number) => 1 - normalBelow(logit(share), logit(middle), spread)
      const keeps = above(0.9)
      const covered = { asked: 0, nearly: 0 }
      let [wrong, far, shifts] = [0, 0, 0]
      for (let study = 1; study <= studies; study++) {
        luck.begin(`${middle} ${spread}`, study)
        const kept = await keptIn(0, draws, async () => {
          luck.advance()
          const share = 1 / (1 + Math.exp(-(logit(middle) + spread * standardNormal(luck.value))))
          const come: ReturnType<typeof shiftOf>[] = []
          const more: Search['more'] = async (_, count, isEnough) =>
            brought(come, count, isEnough, () => {
              luck.advance()
              return shiftOf([luck.value < share ? 1 : 0])
            })
          const found = await tryOne(0, { goal, more }, wrongOf(confidence))
          shifts += found.shifts
          if (Math.abs(share - 0.9) > 0.02) {
            far++
            if (found.verdict === (share > 0.9 ? 'refused' : 'accepted')) wrong++
          }
          return found.verdict
        })
        const { low, high } = shareOfDraws(kept, confidence, wrongOf(confidence))
        if (low <= keeps && keeps <= high) covered.asked++
        if (low <= above(0.88) && above(0.92) <= high) covered.nearly++
      }
      console.log(
        `${middle}, ${spread}: ${(keeps * 100).toFixed(1)} % keep; covered ${covered.asked} and ${covered.nearly} of ${studies}; wrong ${wrong} of ${far}; ${Math.round(shifts / studies / draws)} shifts a draw`,
      )
      // what is promised: the share up to what may go either way, with three standard errors of 400 below 95 %
      expect(covered.nearly / studies).toBeGreaterThan(0.917)
      expect(wrong / far).toBeLessThan(0.025)
    },
  )
})
