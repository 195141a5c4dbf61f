/** What differences tell shift by shift: the boundary by published formulas, and allowances worked by hand. */
import { describe, expect, it } from 'vitest'
import { allowance, boundary, fewest, firstStage, nextLook, spreadOf } from '../../src/statistics/evidence.js'

describe('the boundary', () => {
  // Kim & Nelson, ACM TOMACS 11 (2001) 251-273, for c = 1; values computed apart from this project by the formula
  it.each([
    { confidence: 0.95, designs: 2, n: 10, eta: 0.3340503, hSquared: 6.012905 },
    { confidence: 0.95, designs: 5, n: 10, eta: 0.6349673, hSquared: 11.42941 },
    { confidence: 0.95, designs: 20, n: 10, eta: 1.104574, hSquared: 19.88233 },
    { confidence: 0.95, designs: 3, n: 20, eta: 0.1853628, hSquared: 7.043787 },
    { confidence: 0.95, designs: 10, n: 24, eta: 0.239442, hSquared: 11.01433 },
    { confidence: 0.9, designs: 5, n: 24, eta: 0.1487884, hSquared: 6.844264 },
  ])('$designs designs, $n shifts, $confidence', ({ confidence, designs, n, eta, hSquared }) => {
    const found = boundary((1 - confidence) / (designs - 1), n - 1)
    expect(found / (2 * (n - 1))).toBeCloseTo(eta, 6)
    expect(found / hSquared).toBeCloseTo(1, 6)
  })

  it('solves the equation that the paper sets for c = 1: (1 + 2 eta)^(-(n0 - 1) / 2) / 2 = alpha / (k - 1)', () => {
    for (const risk of [0.05, 0.05 / 6, 0.05 / 39])
      for (const degrees of [1, 9, 23.5]) {
        const eta = boundary(risk, degrees) / (2 * degrees)
        expect((1 + 2 * eta) ** (-degrees / 2) / 2).toBeCloseTo(risk, 12)
      }
  })

  it('of many degrees of freedom is -2 ln(2 alpha), as Kim & Nelson 2006 have it with a variance that is known', () => {
    expect(boundary(0.05, 1e7)).toBeCloseTo(-2 * Math.log(0.1), 5)
  })
})

it('looks at each shift at first, and whenever there are a twentieth more', () => {
  expect([6, 19, 20, 21, 100, 1000].map(nextLook)).toEqual([7, 20, 21, 23, 105, 1050])
})

it('a first stage sees what comes in one shift of ten, but for one stage of 190', () => {
  expect(1 / 0.9 ** firstStage).toBeCloseTo(194, 0)
})

/** `count` times the figures in turn. */
const turns = (count: number, ...figures: number[]) =>
  Array.from({ length: count }, (_, index) => figures[index % figures.length]!)

describe('spreads by hand', () => {
  it('3 and 1 by turns: deviations of one size know the variance as well as there are', () => {
    expect(spreadOf(turns(6, 3, 1), 1)).toEqual({ sum: 12, variance: 6 / 5, slope: 0, effective: 6 })
  })

  it('eight of 2 and four of -1: deviations 1 and -2, sums 24, -24 and 72 of their powers', () => {
    expect(spreadOf(turns(12, 2, 2, -1), 1)).toEqual({ sum: 12, variance: 24 / 11, slope: -1, effective: 8 })
  })

  it('one loss of 6 in six shifts is worth 1.4 of one size', () => {
    // deviations 1 (five) and -5: 30^2 / (5 + 625)
    const { effective } = spreadOf([-6, 0, 0, 0, 0, 0], 1)
    expect(effective).toBeCloseTo(900 / 630, 12)
    expect(effective).toBeLessThan(fewest)
  })

  it('what is rounding of the amount that matters is neither a sum nor a spread', () => {
    expect(spreadOf(turns(10, 1e-12, -2e-12, 3e-12), 1)).toEqual({
      sum: 0,
      variance: 0,
      slope: 0,
      effective: 10,
    })
  })
})

/** A risk of 1/64: 2 risk = 2^-5, so that of 5 degrees of freedom h^2 = 5 (2^2 - 1) = 15, of 10 it is 10 (2 - 1) = 10. */
const risk = 1 / 64
const allowed = (differences: number[], within = 1) =>
  allowance(spreadOf(differences, within), differences.length, within, risk)

describe('allowances by hand', () => {
  it('3 and 1 by turns, six of them: 15 x 1.2 / 2 - 6 / 2 = 6', () => {
    expect(allowed(turns(6, 3, 1))).toBeCloseTo(6, 12)
    // twice the amount: 15 x 1.2 / 4 - 6 is below nothing
    expect(allowed(turns(6, 3, 1), 2)).toBe(0)
  })

  it('eleven, ten of 1 and -1 by turns: 10 x 1 / 2 - 11 / 2 is below nothing', () => {
    expect(allowed([...turns(10, 1, -1), 0])).toBe(0)
    // a variance of 1.44 leaves 7.2 - 5.5
    expect(allowed([...turns(10, 1.2, -1.2), 0])).toBeCloseTo(1.7, 12)
  })

  it('rare losses widen it for the one that has them, not for the other', () => {
    // mean 1, and half matters: the one ruled out is -1/2, where the variance is 24 / 11 + 1.5. Eleven degrees: 11 (2^(10/11) - 1)
    const hSquared = 11 * (2 ** (10 / 11) - 1)
    const losses = turns(12, 2, 2, -1)
    expect(allowed(losses, 0.5)).toBeCloseTo(hSquared * (24 / 11 + 1.5) - 3, 10)
    expect(
      allowed(
        losses.map((each) => -each),
        0.5,
      ),
    ).toBeCloseTo(allowed(losses, 0.5), 12)
    // rare gains make the variance smaller there: it stays as it was seen
    expect(allowed(turns(12, 0, 0, 3))).toBeCloseTo((hSquared * 24) / 11 / 2 - 6, 10)
  })

  it('of eight in forty the variance has fewer degrees than shifts', () => {
    // deviations 0.2 (32 times) and -0.8: 6.4^2 / (0.0512 + 3.2768) = 12.3; 2 / (1 / 12.3 - 1 / 40) = 35.6
    const few = turns(40, 1, 1, 1, 1, 0)
    const effective = 6.4 ** 2 / 3.328
    const degrees = 2 / (1 / effective - 1 / 40)
    expect(degrees).toBeLessThan(39)
    const variance = 6.4 / 39
    // third powers: 32 x 0.008 - 8 x 0.512 = -3.84, over 6.4 = -0.6. The mean is 0.8, and from -0.1 luck does not lead there:
    // u^2 = 0.164 + 0.6 x 3 u / sqrt(40) has u = 0.572, a variance of 0.327 and not of 0.164 + 0.6 x 0.9
    const u = 0.57165
    expect(variance + (1.8 * u) / Math.sqrt(40)).toBeCloseTo(u * u, 4)
    expect(allowed(few, 0.1)).toBeCloseTo((boundary(risk, degrees) * u * u) / 0.2 - 2, 2)
  })

  it('too few to know: without end', () => {
    expect(allowed([-6, 0, 0, 0, 0, 0])).toBe(Infinity)
    expect(allowed([Number.NaN, 1, 2, 3, 4, 5])).toBe(Infinity)
  })

  it('no spread: nothing', () => {
    expect(allowed([2, 2, 2, 2, 2, 2])).toBe(0)
    expect(allowed([0, 0, 0, 0, 0, 0])).toBe(0)
  })
})
