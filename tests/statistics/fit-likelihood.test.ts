/** Likelihoods of what is known of times, worked by hand, and that the chances of all that may be read add up. */
import { describe, expect, it } from 'vitest'
import { distributionOf, type FittedLaw } from '../../src/statistics/fitting/law.js'
import { logLikelihood } from '../../src/statistics/fitting/likelihood.js'
import type { Seen } from '../../src/statistics/fitting/sample.js'

const exponential = (mean: number) => distributionOf({ family: 'exponential', mean })
const logOf = (seen: Seen, law = exponential(1), from = 0) =>
  logLikelihood({ seen: [seen], counts: [1], from }, law)

describe('by hand, exponential of mean 1', () => {
  it('exact 2: exp(-2); over 2: exp(-2); between 1 and 2: exp(-1) - exp(-2)', () => {
    expect(logOf({ at: 2 })).toBeCloseTo(-2, 14)
    expect(logOf({ over: 2 })).toBeCloseTo(-2, 14)
    expect(logOf({ between: [1, 2] })).toBeCloseTo(Math.log(Math.exp(-1) - Math.exp(-2)), 14)
    expect(logOf({ between: [2, Number.POSITIVE_INFINITY] })).toBeCloseTo(-2, 14)
  })

  it('given that it is over 1, all of them as of one shorter by 1: it has no memory', () => {
    const later = (seen: Seen) => logOf(seen, exponential(1), 1)
    expect(later({ at: 2 })).toBeCloseTo(-1, 14)
    expect(later({ over: 2 })).toBeCloseTo(-1, 14)
    expect(later({ over: 0.5 })).toBeCloseTo(0, 14)
    expect(later({ between: [0, 2] })).toBeCloseTo(Math.log(1 - Math.exp(-1)), 14)
    expect(later({ at: 0.5 })).toBe(Number.NEGATIVE_INFINITY)
    expect(later({ between: [0, 0.5] })).toBe(Number.NEGATIVE_INFINITY)
  })

  it('read as 0 on a clock of grain 1: 1/e; as 1: (1 - 1/e)^2; as k: that by exp(1 - k)', () => {
    const part = 2 * Math.log(1 - Math.exp(-1))
    expect(logOf({ clocked: 0, grain: 1 })).toBeCloseTo(-1, 12)
    expect(logOf({ clocked: 1, grain: 1 })).toBeCloseTo(part, 12)
    // also where the share that is so long has no digits, or is below the smallest number
    for (const read of [2, 5, 20, 100, 700, 3000])
      expect(logOf({ clocked: read, grain: 1 })).toBeCloseTo(part + 1 - read, 8)
  })

  it('many alike count as often as they stand', () => {
    const sample = { seen: [{ at: 2 }, { over: 3 }], counts: [5, 2], from: 1 }
    expect(logLikelihood(sample, exponential(1))).toBeCloseTo(-5 * 1 - 2 * 2, 12)
  })

  it('a grain that is fine is as good as none: the density by the grain', () => {
    for (const grain of [1e-3, 1e-6, 1e-9])
      expect(logOf({ clocked: 2, grain }) - Math.log(grain)).toBeCloseTo(-2, 6)
    expect(logOf({ between: [2, 2 + 1e-9] }) - Math.log(1e-9)).toBeCloseTo(-2, 6)
  })
})

const laws: FittedLaw[] = [
  { family: 'weibull', shape: 0.7, scale: 80 },
  { family: 'weibull', shape: 6, scale: 300 },
  { family: 'gamma', shape: 0.6, scale: 100 },
  { family: 'gamma', shape: 30, scale: 8 },
  { family: 'lognormal', location: 4, spread: 1.2 },
  { family: 'lognormal', location: 5.5, spread: 0.1 },
  {
    family: 'mixture',
    share: 0.7,
    first: { family: 'lognormal', location: 3, spread: 0.5 },
    second: { family: 'lognormal', location: 6, spread: 0.3 },
  },
]

describe.each(laws)('$family', (law) => {
  const asked = distributionOf(law)

  it.each([0, 45, 130])(
    'the chances of all readings of minutes add up, none shorter than %s s being seen',
    (from) => {
      let sum = 0
      for (let read = 0; read <= 60 * 3000; read += 60) {
        const chance = logOf({ clocked: read, grain: 60 }, asked, from)
        if (Number.isFinite(chance)) sum += Math.exp(chance)
      }
      // so fast does the longest tail here end
      expect(sum).toBeCloseTo(1, 7)
    },
  )

  it('a reading has the chance that a fine sum over what it may have been gives', () => {
    const [read, grain, from, pieces] = [120, 60, 45, 40000]
    let sum = 0
    for (let index = 0; index < pieces; index++) {
      const x = read - grain + (2 * grain * (index + 0.5)) / pieces
      if (x > from) sum += Math.exp(asked.logDensity(x)) * (1 - Math.abs(x - read) / grain)
    }
    const chance = (sum * 2 * grain) / pieces / asked.above(from)
    expect(Math.exp(logOf({ clocked: read, grain }, asked, from)) / chance).toBeCloseTo(1, 5)
  })
})
