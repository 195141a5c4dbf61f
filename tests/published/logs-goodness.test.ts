/** Goodness of fit with estimated parameters, against published statistics and p-values by bootstrap. */
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { choose } from '../../src/statistics/fitting/choose.js'
import { fitComplete } from '../../src/statistics/fitting/complete.js'
import { fit as fitOf } from '../../src/statistics/fitting/fit.js'
import { goodness } from '../../src/statistics/fitting/goodness.js'
import { type Family, families } from '../../src/statistics/fitting/law.js'
import { fitMixture } from '../../src/statistics/fitting/mixture.js'
import type { Sample } from '../../src/statistics/fitting/sample.js'
import { groundBeef } from './data/ground-beef.js'
import { airConditioning, transceiverRepairs } from './data/repairs.js'
import { complete } from './data/samples.js'
import { waiting } from './data/waiting.js'

const random = (): Stream => {
  const stream = new Stream('published', 'goodness')
  stream.begin('published', 0)
  return stream
}

const bootstraps = 999

/** Asserts that two p-values by bootstrap are one: within four standard errors of their difference. */
function expectP(found: number, published: number, error: number): void {
  const own = Math.sqrt((published * (1 - published)) / bootstraps)
  // the seen one is one of the logs: p is a step of 1 / 1000 too high at most
  expect(Math.abs(found - published), `${found} for ${published}`).toBeLessThan(
    4 * Math.hypot(own, error) + 1 / bootstraps,
  )
}

// statistics by R 4.2.2 and scipy 1.17.1; p-values and their standard errors by 20,000 bootstraps in numpy. Method: Stute, Gonzalez Manteiga & Presedo
// Quindimil, Metrika 40 (1993) (from memory)
const times = { repairs: transceiverRepairs, 'air conditioning': airConditioning }
const rows: [keyof typeof times, Family, [number, number, number], [number, number, number]][] = [
  ['repairs', 'weibull', [0.1204379, 0.0816, 0.0019], [0.8878227, 0.0221, 0.001]],
  ['repairs', 'gamma', [0.1454197, 0.024, 0.0011], [1.103921, 0.0089, 0.0007]],
  ['repairs', 'lognormal', [0.09450031, 0.3767, 0.0034], [0.3395119, 0.5063, 0.0035]],
  ['repairs', 'exponential', [0.1597375, 0.0466, 0.0015], [1.262888, 0.0577, 0.0016]],
  ['air conditioning', 'weibull', [0.1831164, 0.3202, 0.0033], [0.3335528, 0.5307, 0.0035]],
  ['air conditioning', 'gamma', [0.1677012, 0.5253, 0.0035], [0.3248531, 0.5689, 0.0035]],
  ['air conditioning', 'lognormal', [0.2393263, 0.0604, 0.0017], [0.5081499, 0.1935, 0.0028]],
  ['air conditioning', 'exponential', [0.1872878, 0.5334, 0.0035], [0.7173203, 0.2507, 0.0031]],
]

describe('times between failures and repair times', () => {
  it.each(rows)('%s, %s', (of, family, [d, pOfD, errorOfD], [a2, pOfA2, errorOfA2]) => {
    const law = fitComplete(family, Float64Array.from(times[of]))!
    const { largestGap, weightedGap } = goodness(complete(times[of]), law, random(), {
      most: bootstraps,
      enough: bootstraps,
    })!
    expect(largestGap.statistic).toBeCloseTo(d, 6)
    expect(weightedGap.statistic).toBeCloseTo(a2, 5)
    expectP(largestGap.pValue, pOfD, errorOfD)
    // of repairs, Weibull, it lies between the 2.5 and 1 % points of Stephens's table; of exponential between 10 and 5 %
    expectP(weightedGap.pValue, pOfA2, errorOfA2)
  })
})

it('servings of ground beef are refused by all families as if they were exact: they are rounded to 5 and 10 g', () => {
  for (const family of families) {
    const law = fitComplete(family, Float64Array.from(groundBeef))!
    expect(goodness(complete(groundBeef), law, random())!.weightedGap.pValue, family).toBe(1 / 200)
  }
})

it('waits for a geyser, read to the minute: no single law fits, two lognormal parts do', () => {
  // Azzalini & Bowman (1990) and all who took them up see two parts
  const sample: Sample = {
    seen: waiting.map((minutes) => ({ between: [minutes - 0.5, minutes + 0.5] })),
    counts: waiting.map(() => 1),
    from: 0,
  }
  const stream = random()
  const candidates = [...families.map((family) => fitOf(sample, family)), fitMixture(sample)].map((each) => {
    if ('why' in each) throw new Error(each.why)
    return { fit: each, goodness: goodness(sample, each.law, stream) }
  })
  expect(candidates.map(({ goodness }) => goodness!.weightedGap.pValue <= 0.05)).toEqual([
    true,
    true,
    true,
    true,
    false,
  ])
  const { chosen, reason, alike } = choose(candidates)
  expect([chosen!.fit.law.family, reason, alike]).toEqual(['mixture', 'lowest-bic', []])
})
