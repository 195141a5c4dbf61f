/** Common random numbers, measured: how much smaller the variance of a difference is than with numbers of its own. */
import { describe, expect, it } from 'vitest'
import { measureName, studyMeasures } from '../../src/answers/figures.js'
import { pairedDifference } from '../../src/statistics/paired.js'
import { type Design, designsOf, tapeChoice } from '../questions/designs.js'

const shifts = 60
const [base, same] = designsOf(tapeChoice, shifts, ['three-inch']) as [Design, Design]
const [, other] = designsOf(tapeChoice, shifts, ['three-inch'], 'another seed') as [Design, Design]

function throughput({ line, scenario, shifts: of }: Design): number[] {
  const { index } = studyMeasures(line.columns, scenario.shift.campaign).find(
    (measure) => measureName(measure) === 'throughput',
  )!
  return of.map(({ values }) => values[index]!)
}

const paired = pairedDifference(throughput(base), throughput(same), 0.95)
const apart = pairedDifference(throughput(base), throughput(other), 0.95)

describe(`three-inch tape against the base, ${shifts} shifts each`, () => {
  const measured = (apart.sd / paired.sd) ** 2

  it('with a seed of its own the variance of the difference is at least five times as large', () => {
    console.log(
      `throughput: variance with a seed of its own over that with the same: ${measured.toFixed(2)}; told by the pairs: ${paired.varianceRatio.toFixed(2)}`,
    )
    expect(measured).toBeGreaterThan(5)
  })

  it('the factor that the pairs tell is that, as far as 60 shifts tell it', () => {
    // the logarithm of the variance of n normal figures varies with 2 / (n - 1) about its truth (delta method; NIST/
    // SEMATECH e-Handbook sec. 1.3.5.8 has the law of the variance itself). Both factors have the variance of the same
    // pairs below; above one has that of the differences of independent pairs, the other the sum of the two variances,
    // which varies by no more than one of them: of the logarithm of their quotient at most 2 / 59 + 2 / 59, as what both
    // have in common (the base) only brings them nearer. Four of its standard errors
    const four = 4 * Math.sqrt(4 / (shifts - 1))
    expect(Math.abs(Math.log(measured / paired.varianceRatio))).toBeLessThan(four)
  })

  it('pairs of unlike seeds have nothing in common: their own factor is about 1', () => {
    // 1 / factor is 1 less the correlation where variances are alike, nearer 1 where not; that of 60 independent pairs has
    // the standard error 1 / sqrt(60)
    expect(Math.abs(1 - 1 / apart.varianceRatio)).toBeLessThan(4 / Math.sqrt(shifts))
    expect(paired.high - paired.low).toBeLessThan((apart.high - apart.low) / Math.sqrt(5))
  })
})
