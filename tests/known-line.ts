/** A line of which all is known in closed form: one station that is never short of cases, and whose time is guessed. */
import { sampleSkewness, sampleStandardDeviation } from 'simple-statistics'
import { expect } from 'vitest'
import { drawInputs } from '../src/inputs/draw.js'
import type { ReadScenario } from '../src/scenario/read.js'
import { standardNormal, studentT } from '../src/statistics/quantile.js'

/** It puts out 60 / time cases/min, but for three cases a shift: the first comes to it after 12 s at most, the last is not done. */
export const oneStation = `title: A station alone
target: 9 cases/min
cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}}
arrivals: {p: {time-between: 2 s, when-full: wait}}
line:
  infeed: {type: conveyor, length: 4 m, speed: 30 m/min}
  end: {type: station, time: {guess: 6 s, between: [5 s, 7.2 s]}}
shift: {length: 30 min}
study: {shifts: 4}
`

/** Deviation of the logarithm of its time: the ends of a guess are 5 % and 95 % of a lognormal law, here about 6 s. */
export const deviation = Math.log(7.2 / 5) / 2 / standardNormal(0.95)

/** What was drawn of the time, s. */
export const timesOf = (loaded: ReadScenario, draws: number): number[] =>
  Array.from(
    { length: draws },
    (_, draw) => drawInputs(loaded, loaded.scenario.study.seed, draw + 1).inputs[0]!,
  )

/** How far the ends lie off of what draws bring that come to these figures, where nothing else varies: t standard deviations, and t^2 skewness / 6 of them both ways. */
export function endsOf(figures: readonly number[], confidence = 0.95): { below: number; above: number } {
  const all = figures as number[]
  const t = studentT((1 + confidence) / 2, figures.length - 1)
  const spread = sampleStandardDeviation(all)
  const shift = (t * t * sampleSkewness(all)) / 6
  expect(Math.abs(shift)).toBeLessThan(t / 2)
  return { below: (t - shift) * spread, above: (t + shift) * spread }
}
