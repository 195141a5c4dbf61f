/** Arrivals by hour at random are a Poisson process whose rate changes: counts, independence and the change of time. */
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'
import { expectAround, simulate } from './run.js'

const desk = '{desk: {type: station, time: 1 ms, waiting-room: unlimited}}'
const rates = [60, 240, 0, 120]
const profile = `{cases: [${rates.map((rate) => `${rate} cases/h`).join(', ')}]}`

/** Times of arrival of each of `shifts` shifts of 4 h, s. */
function arrivals(shifts: number): number[][] {
  const { scenario } = loadScenario(
    `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {street: {by-hour: ${profile}, when-full: queue}}
line: ${desk}
shift: {length: 4 h}`,
  )
  const line = new Line(scenario)
  let times: number[] = []
  line.observe(({ event, time }) => {
    if (event === 'arrives') times.push(time)
  })
  return Array.from({ length: shifts }, (_, index) => {
    times = []
    line.simulate('published', index + 1)
    return times
  })
}

/** Integral of the rate over the first `time` seconds. */
const sum = (time: number): number =>
  rates.reduce(
    (cases, rate, hour) => cases + (rate / 3600) * Math.min(3600, Math.max(0, time - hour * 3600)),
    0,
  )

const mean = (values: readonly number[]) => values.reduce((total, value) => total + value, 0) / values.length
const covariance = (a: readonly number[], b: readonly number[]) => {
  const [of, off] = [mean(a), mean(b)]
  return a.reduce((total, value, index) => total + (value - of) * (b[index]! - off), 0) / (a.length - 1)
}

/** Largest distance of the sample from the uniform law on (0, 1), times the root of its size. */
function kolmogorov(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const n = sorted.length
  const distance = sorted.reduce(
    (most, value, index) => Math.max(most, (index + 1) / n - value, value - index / n),
    0,
  )
  return distance * Math.sqrt(n)
}
/** Exceeded once in a thousand samples: Massey, J. Am. Stat. Assoc. 46 (1951) 68-78 (from memory). */
const critical = 1.95

describe('N(t + s) - N(t) is Poisson with mean m(t + s) - m(t)', () => {
  // Ross, Introduction to Probability Models, ch. 5, on nonhomogeneous Poisson processes; Lewis and Shedler, Naval
  // Research Logistics Quarterly 26 (1979) 403-413 (both from memory). So mean and variance are the integral.
  it.each([
    { cases: '[60 cases/h, 240 cases/h, 0 cases/h, 120 cases/h]', length: '4 h', shift: '', total: 420 },
    { cases: '[60 cases/h, 240 cases/h]', length: '3.5 h', shift: '', total: 60 + 2.5 * 240 },
    // nothing comes in the break of 20 min, at 4 a minute
    {
      cases: '[60 cases/h, 240 cases/h]',
      length: '2 h',
      shift: 'breaks: [{at: 80 min, for: 20 min}]',
      total: 60 + 160,
    },
  ])('$total in $length of $cases $shift', async ({ cases, length, shift, total }) => {
    const shifts = 10_000
    const result = await simulate({
      arrivals: `{street: {by-hour: {cases: ${cases}}, when-full: queue}}`,
      line: desk,
      length,
      shift,
      shifts,
    })
    const { arrived } = result.arrivals.street!
    expectAround(arrived, total, 0.003)
    // the standard error of a variance is about sqrt(2 / n) of it
    expect(Math.abs(arrived!.sd! ** 2 / total - 1)).toBeLessThan(4 * Math.sqrt(2 / shifts))
  })

  it('hour by hour, and hours know nothing of one another', () => {
    const shifts = 1500
    const all = arrivals(shifts)
    const counts = rates.map((_, hour) =>
      all.map((times) => times.filter((time) => time > hour * 3600 && time <= (hour + 1) * 3600).length),
    )
    for (const [hour, rate] of rates.entries()) {
      if (rate === 0) {
        expect(Math.max(...counts[hour]!)).toBe(0)
        continue
      }
      expect(Math.abs(mean(counts[hour]!) - rate)).toBeLessThan(4 * Math.sqrt(rate / shifts))
      expect(Math.abs(covariance(counts[hour]!, counts[hour]!) / rate - 1)).toBeLessThan(
        4 * Math.sqrt(2 / shifts),
      )
    }
    for (const [one, other] of [
      [0, 1],
      [1, 3],
      [0, 3],
    ] as const) {
      const correlation = covariance(counts[one]!, counts[other]!) / Math.sqrt(rates[one]! * rates[other]!)
      expect(Math.abs(correlation)).toBeLessThan(4 / Math.sqrt(shifts))
    }
  })
})

describe('the change of time: m(t) of the arrivals is a Poisson process of rate 1', () => {
  // Cinlar, Introduction to Stochastic Processes (1975), ch. 4 (from memory)
  const all = arrivals(100)

  it('from one arrival to the next it grows by an exponential variate of mean 1', () => {
    // the first 300 of each shift: a shift has 420 with a spread of 20, so none is left out for coming late
    const first = 300
    const shares = all.flatMap((times) => {
      expect(times.length).toBeGreaterThan(first)
      return times.slice(0, first).map((time, index) => 1 - Math.exp(sum(times[index - 1] ?? 0) - sum(time)))
    })
    expect(shares).toHaveLength(100 * first)
    expect(kolmogorov(shares)).toBeLessThan(critical)
  })

  it('given their number, arrivals lie on it like that many uniform numbers', () => {
    const places = all.flatMap((times) => times.map((time) => sum(time) / 420))
    expect(kolmogorov(places)).toBeLessThan(critical)
    // the same test sees that they do not lie evenly over the clock
    expect(kolmogorov(all.flat().map((time) => time / 14_400))).toBeGreaterThan(10 * critical)
  })
})
