/** What is known of a value, in one interval: against published values. */
import { describe, expect, it } from 'vitest'
import { halfWidth, whatIsKnown } from '../../src/inputs/what-is-known.js'
import { loadScenario } from '../../src/scenario/load.js'

const line = `cases:
  a: {length: 400 mm, width: 300 mm, height: 250 mm}
arrivals:
  p: {time-between: 5 s}
line:
  sealer:
    type: sealer
    jams: {chance: 1 per 1000 cases, clear: 60 s}
    breakdowns: {after: 40 h, repair: 10 min}
shift: {length: 8 h}
`
const known = (set: string, values: readonly string[] = []) => {
  const { scenario, evidence } = loadScenario(line, { sets: [set], readColumn: () => [...values] })
  return whatIsKnown(scenario, evidence[0]!)
}
const chance = (count: string) => known(`line.sealer.jams.chance=${count}`)
const every = (count: string) => known(`line.sealer.breakdowns.after=${count}`)
const clear = (law: string, values?: readonly string[]) => known(`line.sealer.jams.clear=${law}`, values)

describe('what is known of a count', () => {
  // Clopper & Pearson: binom.test of R; 682 of 925 is of Conover, Practical Nonparametric Statistics, p. 97 (from memory)
  it.each([
    ['682 in 925 cases', 0.7372973, 0.7076683, 0.7654066],
    ['3 in 4000 cases', 0.00075, 1.546947e-4, 2.190239e-3],
    ['0 in 4000 cases', 0, 0, 9.217947e-4],
  ])('%s', (count, value, low, high) => {
    const found = chance(count)
    expect(found.value).toBeCloseTo(value, 7)
    expect(found.low).toBeCloseTo(low, 7)
    expect(found.high).toBeCloseTo(high, 7)
    expect(found.confidence).toBe(0.95)
  })

  // Garwood: poisson.test of R
  it('122 in 200 h: a mean time between the turned limits of the rate', () => {
    const { low, high } = every('122 in 200 h')
    expect(3600 / high).toBeCloseTo(0.5065681, 6)
    expect(3600 / low).toBeCloseTo(0.7283408, 6)
  })

  it('122 in 200 s: a rate', () => {
    const { value, low, high } = known('arrivals.p={rate: 122 in 200 s}')
    expect([value, low, high].map((each) => each.toFixed(6))).toEqual(['0.610000', '0.506568', '0.728341'])
  })

  it('none in 640 h: more than 640 h over 3.688879, without an upper limit', () => {
    const found = every('0 in 640 h')
    expect(found.low / 3600).toBeCloseTo(640 / 3.688879, 3)
    expect([found.value, found.high]).toEqual([Infinity, Infinity])
  })
})

describe('what is known of the mean of a law', () => {
  // 46 repair times of von Alven (1964): the interval of Cox is 2.380531 to 5.421545 (Zhou & Gao, Statistics in Medicine 16 (1997), from memory);
  // that of pivots is a little wider on the right, where it is known to cover better: Krishnamoorthy & Mathew (2003)
  it('lognormal: near the interval of Cox', () => {
    const [mu, sigma] = [0.6583924, 1.101791]
    const law = `{lognormal: {mean: ${Math.exp(mu + sigma ** 2 / 2)} s, cv: ${Math.sqrt(Math.expm1(sigma ** 2))}, from: 46}}`
    const { low, high } = clear(law)
    expect(low / 2.380531).toBeGreaterThan(0.95)
    expect(low / 2.380531).toBeLessThan(1.1)
    expect(high / 5.421545).toBeGreaterThan(0.95)
    expect(high / 5.421545).toBeLessThan(1.2)
  })

  it('exponential: 2 n mean over chi-square with 2 n degrees', () => {
    const { low, high } = clear('{exponential: {mean: 100 s, from: 5}}')
    // chi-square with 10 degrees: 2.5 % below 3.246973, 97.5 % below 20.483177 (NIST 1.3.6.7.4); ends of 399 draws are known to some percent
    expect(low / (1000 / 20.483177)).toBeGreaterThan(0.88)
    expect(low / (1000 / 20.483177)).toBeLessThan(1.12)
    expect(high / (1000 / 3.246973)).toBeGreaterThan(0.82)
    expect(high / (1000 / 3.246973)).toBeLessThan(1.18)
  })

  it('observed: Student t, by hand', () => {
    // mean 20, deviation with divisor n - 1 of 10, t(2) = 4.302653
    const { value, low, high } = clear('{observed: {file: f, column: c, unit: s}}', ['10', '20', '30'])
    const half = (4.302653 * 10) / Math.sqrt(3)
    expect([value, low]).toEqual([20, expect.closeTo(Math.max(0, 20 - half), 3) as number])
    expect(high).toBeCloseTo(20 + half, 3)
  })

  it('a guess: its own ends, with 90 %', () =>
    expect(clear('{guess: 90 s, between: [60 s, 150 s]}')).toEqual({
      value: 90,
      low: 60,
      high: 150,
      confidence: 0.9,
    }))

  // relative half-widths t(n - 1) cv / root n, computed with scipy
  it.each([
    [0.8, 10, 0.572],
    [0.8, 20, 0.374],
    [1, 50, 0.284],
    [0.5, 200, 0.07],
  ])('of a coefficient of variation of %f, from %d: to within %f', (cv, n, half) =>
    expect(halfWidth({ law: 'gamma', mean: 7, cv }, n)).toBeCloseTo(half, 3),
  )
})
