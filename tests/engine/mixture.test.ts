/** A mixture of laws: which part a number falls into, what remains of it, and the law that comes of both. */
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { drawsOf, type Law } from '../../src/engine/variates.js'
import { type Distribution, meanOf, varianceOf } from '../../src/scenario/law.js'
import { inverse } from './inverse.js'

const of = (...mixture: Extract<Distribution, { law: 'mixture' }>['mixture']): Distribution => ({
  law: 'mixture',
  mixture,
})

describe('a mixture', () => {
  it('of two constants is the first up to its share', () => {
    const value = inverse(
      of(
        { share: 0.75, law: { law: 'constant', value: 2 } },
        { share: 0.25, law: { law: 'constant', value: 10 } },
      ),
    )
    expect([0.001, 0.5, 0.7499, 0.75, 0.999].map(value)).toEqual([2, 2, 2, 10, 10])
  })

  it('gives each part what remains of the number, rescaled', () => {
    const value = inverse(
      of(
        { share: 0.75, law: { law: 'uniform', low: 0, high: 3 } },
        { share: 0.25, law: { law: 'uniform', low: 10, high: 14 } },
      ),
    )
    // halves of both parts: 0.75 / 2 and 0.75 + 0.25 / 2
    expect(value(0.375)).toBeCloseTo(1.5, 12)
    expect(value(0.875)).toBeCloseTo(12, 12)
    expect(value(0.25)).toBeCloseTo(1, 12)
  })

  it('of exponential laws by hand: the median of the second part is its mean times ln 2', () => {
    const value = inverse(
      of(
        { share: 0.6, law: { law: 'exponential', mean: 30 } },
        { share: 0.3, law: { law: 'exponential', mean: 600 } },
        { share: 0.1, law: { law: 'observed', file: '', column: '', unit: 's', values: [1, 2, 4] } },
      ),
    )
    expect(value(0.3)).toBeCloseTo(30 * Math.LN2, 9)
    expect(value(0.75)).toBeCloseTo(600 * Math.LN2, 9)
    expect([0.91, 0.95, 0.99].map(value)).toEqual([1, 2, 4])
  })

  it.each<[string, Law]>([
    ['exponential', { law: 'exponential', mean: 5 }],
    ['weibull', { law: 'weibull', shape: 0.05, scale: 5 }],
    ['lognormal', { law: 'lognormal', mean: 5, cv: 100 }],
    ['gamma', { law: 'gamma', mean: 5, cv: 5 }],
    ['normal', { law: 'normal', mean: 5, sd: 2, atLeast: 0 }],
  ])('with parts of %s is finite where two parts meet, and at both ends', (_, law) => {
    const shares = [0.5, 0.25, 0.1, 0.15]
    const value = inverse(of(...shares.map((share) => ({ share, law: law as never }))))
    for (const u of [2 ** -33, 0.5 - 2 ** -33, 0.5, 0.75, 0.75 + 2 ** -33, 0.85, 1 - 2 ** -33])
      expect(value(u)).toSatisfy((each: number) => each >= 0 && each < Infinity)
  })

  it('draws one number each, whatever its parts', () => {
    let numbers = 0
    const given = { value: 0.9, advance: () => void numbers++ }
    const draws = drawsOf(
      of(
        { share: 0.5, law: { law: 'constant', value: 1 } },
        { share: 0.5, law: { law: 'gamma', mean: 2, cv: 0.5 } },
      ),
      () => given,
    )
    for (let draw = 0; draw < 7; draw++) draws.next()
    expect(numbers).toBe(7)
  })

  it('has the distribution function, the mean and the variance of its parts by their shares', () => {
    const [first, second] = [0.7, 0.3]
    const law = of(
      { share: first, law: { law: 'exponential', mean: 40 } },
      { share: second, law: { law: 'weibull', shape: 2, scale: 300 } },
    )
    // closed forms
    const below = (x: number) => first * (1 - Math.exp(-x / 40)) + second * (1 - Math.exp(-((x / 300) ** 2)))
    const weibullMean = (300 * Math.sqrt(Math.PI)) / 2
    const mean = first * 40 + second * weibullMean
    const square = first * 2 * 40 ** 2 + second * 300 ** 2
    // as exact as the gamma function of the library
    expect(meanOf(law)).toBeCloseTo(mean, 5)
    expect(varianceOf(law)).toBeCloseTo(square - mean * mean, 2)
    const stream = new Stream('mixture', 'test')
    stream.begin('any', 1)
    const draws = drawsOf(law, () => stream)
    const n = 20_000
    const values = Array.from({ length: n }, () => draws.draw())
    for (const x of [5, 20, 40, 80, 150, 250, 350, 500]) {
      const share = values.filter((value) => value <= x).length / n
      // four standard errors of a share
      expect(Math.abs(share - below(x))).toBeLessThan(4 * Math.sqrt((below(x) * (1 - below(x))) / n))
    }
  })
})
