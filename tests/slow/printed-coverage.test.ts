/**
 * Every plus-minus that a study prints, of 50, 100 and 200 shifts: of two demos, and of two lines with known answers. Shifts
 * of a demo are drawn, with replacement, from many that stand for the long run: so the truth is known to the last digit.
 */
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import {
  controlsOf,
  estimate,
  measureName,
  type StudyMeasure,
  studyMeasures,
} from '../../src/answers/figures.js'
import { Stream } from '../../src/engine/stream.js'
import { Line, type ShiftResult } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'
import { expected } from './markov.js'
import { inQueue, isServing, queueChain, queueScenario, serviceRate, shiftLength } from './queue.js'
import { confidence, measureOf, scenarioOf, seedOf } from './studies.js'
import { held, isWorking, room, shiftLength as stationsLength, twoStations } from './two-stations.js'

const sizes = [50, 100, 200]
const [least, most] = [0.92, 0.98]

/** Of so many studies a share of 95 % has a standard error of 0.34 %. */
const studies = 4000
const population = 12_000

/** How the intervals of one measure did. */
interface Done {
  measure: StudyMeasure
  truth: number
  /** Studies with an interval, and of these those with exact limits of a count. */
  printed: number
  exact: number
  covers: number
}

/** The long run: shifts, and the mean of their controls, which luck moved a little off 0, taken off them. */
function longRun(line: Line): ShiftResult[] {
  const shifts = Array.from({ length: population }, (_, index) => line.simulate(seedOf(0), index + 1))
  const means = [0, 1].map(
    (control) => shifts.reduce((sum, each) => sum + each.controls[control]!, 0) / population,
  )
  return shifts.map((each) => ({
    ...each,
    controls: each.controls.map((value, control) => value - means[control]!),
  }))
}

function truthOf({ kind, index, below }: StudyMeasure, shifts: readonly ShiftResult[]): number {
  const values = shifts.map((shift) => shift.values[index]!)
  const sum = (list: readonly number[]) => list.reduce((total, value) => total + value, 0)
  if (kind === 'quantile') return Float64Array.from(values).sort()[Math.floor(below! * population)]!
  return kind === 'ratio'
    ? sum(values) / sum(shifts.map((shift) => shift.values[index + 1]!))
    : sum(values) / population
}

describe.each(['soap-works', 'refill-hall'])('each measure of %s', (demo) => {
  const file = fileURLToPath(new URL(`../../scenarios/${demo}.yaml`, import.meta.url))
  const { scenario } = loadScenario(readFileSync(file, 'utf8'))
  const line = new Line(scenario)
  const shifts = longRun(line)
  const measures = studyMeasures(line.columns, 1)
  const stream = new Stream('tests', 'draw a study')

  const drawn = (): ShiftResult => {
    stream.advance()
    return shifts[Math.floor(stream.value * population)]!
  }

  it.each(sizes)('of %i shifts covers in 92 to 98 % or has no plus-minus', (size) => {
    stream.begin(seedOf(0), size)
    const done = measures.map(
      (measure): Done => ({ measure, truth: truthOf(measure, shifts), printed: 0, exact: 0, covers: 0 }),
    )
    for (let study = 0; study < studies; study++) {
      const of = Array.from({ length: size }, drawn)
      const controls = controlsOf(of, { isPlain: false })
      for (const each of done) {
        const { low, high, few } = estimate(each.measure, of, { confidence, exposure: 1 }, controls)
        // what is the same in all shifts has no plus-minus, and proves nothing
        if (!(high > low)) continue
        each.printed++
        if (few) each.exact++
        if (low <= each.truth && each.truth <= high) each.covers++
      }
    }
    // those that few studies print rest on about 30 events, and who prints them saw more than there are on average: they
    // are held to the share of all studies that print what is wrong
    const told = done.filter(({ printed }) => printed >= studies / 2)
    expect(told.length).toBeGreaterThan(40)
    const outside = done.filter(({ measure, printed, exact, covers }) => {
      // exact limits and those from order statistics hold at least as often as they say
      const isAtLeast = exact > 0 || measure.kind === 'quantile'
      if (printed < studies / 2) return (printed - covers) / studies > 1 - least
      return covers / printed < least || (!isAtLeast && covers / printed > most)
    })
    const words = ({ measure, printed, covers }: Done) =>
      `${measureName(measure)} ${((100 * covers) / printed).toFixed(1)} % of ${printed}`
    console.log(`${demo}, ${size} shifts: ${told.map(words).join('; ')}`)
    expect(outside.map(words)).toEqual([])
  })
})

describe('lines with known answers', () => {
  /** Of so many studies a share of 95 % has a standard error of 0.8 %. */
  const ofEach = 750

  const covered = (name: string, line: Line, figures: { name: string; truth: number }[]) =>
    it(name, () => {
      const done = sizes.flatMap((size) =>
        figures.map(({ name: of, truth }) => ({ size, of, truth, measure: measureOf(line, of), covers: 0 })),
      )
      for (let study = 1; study <= ofEach; study++) {
        // the first shifts of a study are a study too
        const all = Array.from({ length: Math.max(...sizes) }, (_, shift) =>
          line.simulate(seedOf(study), shift + 1),
        )
        for (const each of done) {
          const of = all.slice(0, each.size)
          const { low, high } = estimate(
            each.measure,
            of,
            { confidence, exposure: 1 },
            controlsOf(of, { isPlain: false }),
          )
          if (low <= each.truth && each.truth <= high) each.covers++
        }
      }
      for (const { size, of, covers } of done) {
        const told = `${of}, ${size} shifts: ${((100 * covers) / ofEach).toFixed(1)} %`
        console.log(told)
        expect(covers / ofEach, told).toBeGreaterThanOrEqual(least)
        expect(covers / ofEach, told).toBeLessThanOrEqual(most)
      }
    })
  const busy = expected(queueChain, 0, isServing, shiftLength).integral
  covered('a queue from empty', new Line(queueScenario(shiftLength)), [
    {
      name: 'equipment.desk.held',
      truth: expected(queueChain, 0, inQueue, shiftLength).integral / shiftLength,
    },
    { name: 'throughput', truth: (serviceRate * busy) / shiftLength },
    { name: 'equipment.desk.states.working', truth: busy / shiftLength },
  ])
  const chain = twoStations(room)
  const mean = (reward: (state: number) => number) =>
    expected(chain, 0, reward, stationsLength).integral / stationsLength
  const time = '{exponential: {mean: 1 s}}'
  const stations = scenarioOf(
    `{packers: {time-between: ${time}, when-full: wait}}`,
    `{second: {type: station, time: ${time}, waiting-room: ${room}}}`,
    `${stationsLength} s`,
  )
  covered('two stations', new Line(stations), [
    { name: 'throughput', truth: mean(isWorking) },
    { name: 'equipment.second.held', truth: mean(held) },
    { name: 'arrivals.packers.blocked', truth: mean((past) => (past === room + 2 ? 1 : 0)) },
  ])
})
