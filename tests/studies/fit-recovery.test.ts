/**
 * Fits recover the law that logs were drawn from: how often intervals at 95 % hold the truth. Of so many logs a coverage of 95 % is seen with
 * a standard error of 0.7 %; asked are 92 to 98 %.
 */
import { describe, expect, it } from 'vitest'
import { fit as fitOf } from '../../src/statistics/fitting/fit.js'
import { expectCovered, recover, truthOf, truths } from '../slow/logs.js'

describe('complete logs', () => {
  const clock = { missing: 0, grain: 0 }

  it.each(truths.flatMap((law) => [20, 50, 200].map((n) => [law.family, n, law] as const)))(
    '%s, %d stops: parameters and mean',
    (family, n, law) => {
      const found = recover(law, truthOf(law), { logs: 1000, n, clock }, (sample) => fitOf(sample, family))
      expect(found.unfitted).toBe(0)
      expectCovered(found)
    },
  )
})
