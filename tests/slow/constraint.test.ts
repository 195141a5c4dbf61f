/** How often the tests of a requirement err at the ends of the zone that may go either way, and how long they take. */
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { type ConstraintTest, MeanTest, ShareTest, type Verdict } from '../../src/statistics/constraint.js'
import { standardNormal } from '../../src/statistics/quantile.js'
import { seedOf } from './studies.js'

const runs = 2000

/** What the runs came to. */
interface Measured {
  accepted: number
  refused: number
  /** Mean number of shifts, and the standard error of that mean. */
  shifts: number
  shiftsError: number
}

/** Runs the test on figures made of uniform numbers. */
function measure(make: () => ConstraintTest, figure: (uniform: number) => number): Measured {
  const stream = new Stream('shifts', 'luck')
  const counts = { accepted: 0, refused: 0 }
  let [sum, squares] = [0, 0]
  for (let run = 1; run <= runs; run++) {
    stream.begin(seedOf(run), 1)
    const test = make()
    let verdict: Verdict | null = null
    let shifts = 0
    while (verdict === null) {
      verdict = test.add(figure(stream.next()))
      shifts++
    }
    counts[verdict]++
    sum += shifts
    squares += shifts * shifts
  }
  const mean = sum / runs
  return {
    accepted: counts.accepted / runs,
    refused: counts.refused / runs,
    shifts: mean,
    shiftsError: Math.sqrt((squares / runs - mean * mean) / (runs - 1)),
  }
}

const percent = (share: number) => `${(100 * share).toFixed(2)} %`

/** Asserts that of these runs no more went wrong than the risk and four standard errors of it. */
function expectWithin(risk: number, wrong: number, shifts: number, name: string): void {
  const told = `${name}: wrong in ${percent(wrong)} at a risk of ${percent(risk)}, ${shifts.toFixed(1)} shifts`
  console.log(told)
  expect(wrong, told).toBeLessThanOrEqual(risk + 4 * Math.sqrt((risk * (1 - risk)) / runs))
}

describe(`${runs} tests of a share at the ends of the zone`, () => {
  it.each([
    { least: 0.5, near: 0.1, wrongly: 0.05, refused: 0.05 },
    { least: 0.9, near: 0.05, wrongly: 0.05, refused: 0.05 },
    { least: 0.95, near: 0.02, wrongly: 0.025, refused: 0.025 },
    { least: 0.95, near: 0.02, wrongly: 0.005, refused: 0.005 },
    { least: 0.05, near: 0.02, wrongly: 0.05, refused: 0.05 },
    { least: 0.9, near: 0.05, wrongly: 0.01, refused: 0.2 },
    // above 0.99 the zone ends at 0.995: what is promised of 1 holds sooner
    { least: 0.99, near: 0.02, wrongly: 0.05, refused: 0.05 },
  ])('at least $least, near $near, risks $wrongly and $refused', ({ least, near, wrongly, refused }) => {
    const make = () => new ShareTest(least, near, wrongly, refused)
    const shareOf = (share: number) => measure(make, (uniform) => (uniform < share ? 1 : 0))
    const name = `share of at least ${least}, near ${near}`
    const low = shareOf(least - near)
    expectWithin(wrongly, low.accepted, low.shifts, `${name}, in truth ${least - near}`)
    const high = shareOf(Math.min(least + near, 1))
    expectWithin(refused, high.refused, high.shifts, `${name}, in truth ${Math.min(least + near, 1)}`)
    const middle = shareOf(least)
    console.log(`${name}, in truth ${least}: ${middle.shifts.toFixed(1)} shifts`)
    // between the ends it takes longest, with like risks in the middle
    const ends = [low.shifts, high.shifts]
    expect(middle.shifts).toBeGreaterThan(wrongly === refused ? Math.max(...ends) : Math.min(...ends))
  })

  it('0.25 against 0.75 at 5 % is the ruin of a gambler with 3 of 6: 1 / 28 wrong after 39 / 7 shifts', () => {
    // p = 3/4: (1/3)^3 / (1 + (1/3)^3) = 1 / 28; (3 / 0.5) (1 - 2 / 28) = 39 / 7. Feller, An Introduction to
    // Probability Theory, vol. 1, ch. XIV, eq. 2.4 and 3.4 (from memory)
    const four = 4 * Math.sqrt(((1 / 28) * (27 / 28)) / runs)
    for (const share of [0.25, 0.75]) {
      const told = measure(
        () => new ShareTest(0.5, 0.25, 0.05),
        (uniform) => (uniform < share ? 1 : 0),
      )
      const wrong = share < 0.5 ? told.accepted : told.refused
      console.log(`ruin, ${share}: wrong in ${percent(wrong)}, ${told.shifts.toFixed(3)} shifts`)
      expect(Math.abs(wrong - 1 / 28)).toBeLessThanOrEqual(four)
      expect(Math.abs(told.shifts - 39 / 7)).toBeLessThanOrEqual(4 * told.shiftsError)
    }
  })
})

describe(`${runs} tests of a mean of normal figures at the ends of the zone`, () => {
  it.each([
    { deviation: 1, near: 0.2, risk: 0.05, firstStage: 20 },
    { deviation: 1, near: 0.2, risk: 0.005, firstStage: 20 },
    { deviation: 1, near: 0.2, risk: 0.05, firstStage: 5 },
    { deviation: 5, near: 1, risk: 0.1, firstStage: 10 },
    // hardly any spread: all is said in the first stage
    { deviation: 0.1, near: 1, risk: 0.05, firstStage: 20 },
  ])('deviation $deviation, near $near, risk $risk, $firstStage at first', (each) => {
    const { deviation, near, risk, firstStage } = each
    const least = 40
    const meanOf = (mean: number) =>
      measure(
        () => new MeanTest(least, near, risk, firstStage),
        (uniform) => mean + deviation * standardNormal(uniform),
      )
    const name = `mean, deviation ${deviation}, near ${near}, ${firstStage} at first`
    const low = meanOf(least - near)
    expectWithin(risk, low.accepted, low.shifts, `${name}, too low`)
    const high = meanOf(least + near)
    expectWithin(risk, high.refused, high.shifts, `${name}, high enough`)
    const middle = meanOf(least)
    console.log(`${name}, in the middle: ${middle.shifts.toFixed(1)} shifts`)
    // either way is as likely there: four standard errors of a half
    expect(Math.abs(middle.accepted - 0.5)).toBeLessThanOrEqual(4 * Math.sqrt(0.25 / runs))
    expect(low.shifts).toBeGreaterThanOrEqual(firstStage)
  })
})
