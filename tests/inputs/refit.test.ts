/** Laws behind observations: closed forms by hand, and how often what is drawn holds the truth. */
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { drawsOf } from '../../src/engine/variates.js'
import { lawBehind } from '../../src/inputs/refit.js'
import { meanOf, type PlainDistribution } from '../../src/scenario/law.js'
import { fitComplete } from '../../src/statistics/fitting/complete.js'
import type { Family } from '../../src/statistics/fitting/law.js'

/** Numbers that are given, one after the other. */
const given = (...numbers: number[]) => {
  let index = -1
  return {
    get value() {
      return numbers[index]!
    },
    advance: () => void index++,
  }
}

const streamOf = (name: string, number: number): Stream => {
  const stream = new Stream(name, 'test')
  stream.begin('coverage', number)
  return stream
}

describe('a law behind observations, by hand', () => {
  // chi-square with 4 degrees of freedom: 5 % below 0.710723, half below 3.356694, 95 % below 9.487729 (NIST 1.3.6.7.4)
  it.each([
    [0.05, 0.710723],
    [0.5, 3.356694],
    [0.95, 9.487729],
  ])('exponential, fitted to 2: the mean times 4 over chi-square, share %f', (u, chiSquare) => {
    const law = lawBehind({ law: 'exponential', mean: 100 }, 2, given(u))
    expect(meanOf(law)).toBeCloseTo((100 * 4) / chiSquare, 3)
  })

  it('Erlang of 2 phases, fitted to 1, is as exponential, fitted to 2', () => {
    const one = lawBehind({ law: 'erlang', mean: 100, phases: 2 }, 1, given(0.3))
    const other = lawBehind({ law: 'exponential', mean: 100 }, 2, given(0.3))
    expect(meanOf(one)).toBeCloseTo(meanOf(other), 9)
  })

  it('normal, fitted to 5: deviation by chi-square with 4 degrees, mean by the normal law', () => {
    const law = lawBehind({ law: 'normal', mean: 50, sd: 4, atLeast: 0 }, 5, given(0.95, 0.975))
    const sd = 4 * Math.sqrt(5 / 9.487729)
    expect(law).toEqual({
      law: 'normal',
      mean: expect.closeTo(50 + (1.959964 * sd) / Math.sqrt(5), 4) as number,
      sd: expect.closeTo(sd, 5) as number,
      atLeast: 0,
    })
  })

  it('lognormal is normal in its logarithm', () => {
    const [mean, cv] = [80, 0.8]
    const law = lawBehind({ law: 'lognormal', mean, cv }, 5, given(0.95, 0.5)) as { mean: number; cv: number }
    const variance = (Math.log1p(cv * cv) * 5) / 9.487729
    expect(law.cv).toBeCloseTo(Math.sqrt(Math.expm1(variance)), 6)
    expect(law.mean).toBeCloseTo(Math.exp(Math.log(mean) - Math.log1p(cv * cv) / 2 + variance / 2), 3)
  })

  it.each<PlainDistribution>([
    { law: 'constant', value: 3 },
    { law: 'triangular', low: 1, mode: 2, high: 4 },
    { law: 'lognormal', mean: 80, cv: 0 },
    { law: 'normal', mean: 80, sd: 0, atLeast: 0 },
  ])('$law without anything to fit stays', (law) => {
    const behind = lawBehind(law, 9, streamOf('stays', 1))
    expect(meanOf(behind)).toBeCloseTo(meanOf(law), 9)
  })

  it.each<PlainDistribution>([
    { law: 'exponential', mean: 100 },
    { law: 'lognormal', mean: 100, cv: 0.8 },
    { law: 'gamma', mean: 100, cv: 0.8 },
    { law: 'weibull', shape: 1.4, scale: 110 },
  ])('$law, fitted to 100000, hardly moves, and takes no longer than fitted to some hundreds', (law) => {
    const means = Array.from({ length: 40 }, (_, index) =>
      meanOf(lawBehind(law, 100_000, streamOf('many', index))),
    )
    const mean = meanOf(law)
    const sd = Math.sqrt(means.reduce((sum, each) => sum + (each / mean - 1) ** 2, 0) / means.length)
    // a coefficient of variation of 0.7 to 1 over the root of 100000 is 0.0022 to 0.0032; of 40 such the deviation is known to 11 %
    expect(sd).toBeGreaterThan(0.0022 * 0.6)
    expect(sd).toBeLessThan(0.0034 * 1.5)
  })
})

describe('what is drawn behind few observations', () => {
  const families: [Family, PlainDistribution][] = [
    ['exponential', { law: 'exponential', mean: 100 }],
    ['lognormal', { law: 'lognormal', mean: 100, cv: 0.8 }],
    ['gamma', { law: 'gamma', mean: 100, cv: 0.6 }],
    ['weibull', { law: 'weibull', shape: 1.4, scale: 100 }],
  ]

  /** The law of the format that a fit says. */
  const written = (family: Family, values: Float64Array): PlainDistribution => {
    const fit = fitComplete(family, values)!
    switch (fit.family) {
      case 'exponential':
        return { law: 'exponential', mean: fit.mean }
      case 'weibull':
        return { law: 'weibull', shape: fit.shape, scale: fit.scale }
      case 'gamma':
        return { law: 'gamma', mean: fit.shape * fit.scale, cv: 1 / Math.sqrt(fit.shape) }
      case 'lognormal': {
        const variance = fit.spread ** 2
        return {
          law: 'lognormal',
          mean: Math.exp(fit.location + variance / 2),
          cv: Math.sqrt(Math.expm1(variance)),
        }
      }
    }
  }

  it.each(families)(
    '%s: 90 % of it holds the true mean of the law in 90 %% of logs of 10',
    (family, truth) => {
      const logs = 500
      const draws = 99
      let held = 0
      for (let log = 0; log < logs; log++) {
        const observed = drawsOf(truth, () => streamOf(`${family} log`, log))
        const law = written(
          family,
          Float64Array.from({ length: 10 }, () => observed.draw()),
        )
        const stream = streamOf(`${family} behind`, log)
        const below = Array.from({ length: draws }, () => meanOf(lawBehind(law, 10, stream))).filter(
          (mean) => mean < meanOf(truth),
        ).length
        // 99 draws part the line into 100: the truth lies in each alike often, and in 90 of them
        if (below >= 5 && below < 95) held++
      }
      // four standard errors of 90 % of 500 are 5.4 %
      expect(held / logs).toBeGreaterThan(0.9 - 0.054)
      expect(held / logs).toBeLessThan(0.9 + 0.054)
    },
  )
})
