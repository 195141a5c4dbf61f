/** One whole shift of a scenario text, and its measures by path. */
import { Line, type ShiftResult } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'

/** Simulates one shift; returns how to read its measures. */
export function simulate(text: string, shift = 1, seed = 'test'): (path: string) => number {
  const line = new Line(loadScenario(text).scenario)
  return reader(line, line.simulate(seed, shift))
}

/** The value of a measure by its path; the numerator of a ratio. */
export function reader(line: Line, result: ShiftResult): (path: string) => number {
  return (path) => {
    const index = line.columns.findIndex(
      ({ measure, part }) => part === 'value' && measure.path.join('.') === path,
    )
    if (index < 0) throw new Error(`no measure ${path}`)
    return result.values[index]!
  }
}
