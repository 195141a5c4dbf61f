/** The same shift worked ahead of the clock and by events alone, and where the two differ. */
import { StuckClock } from '../../src/engine/clock.js'
import { Line, type ShiftResult } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'
import type { Row } from './rows.js'

/** Sums of some thousand times, in another order. */
const rounding = 1e-9

/** What differs by more than a rounding, with both figures. */
export function differences(line: Line, ahead: ShiftResult, events: ShiftResult): string[] {
  const names = {
    values: (index: number) => line.columns[index]!.measure.path.join('.'),
    held: (index: number) => `held ${index}`,
    outputs: (index: number) => `output ${index}`,
    controls: (index: number) => `control ${index}`,
  }
  return (['values', 'held', 'outputs', 'controls'] as const).flatMap((key) =>
    [...ahead[key]].flatMap((value, index) => {
      const other = events[key][index]!
      // a share below a thousandth may be nothing but what is left of a sum
      const most = rounding * Math.max(Math.abs(value), Math.abs(other), 1e-3)
      if (Object.is(value, other) || Math.abs(value - other) <= most) return []
      return [`${names[key](index)}: ${value} ahead, ${other} by events`]
    }),
  )
}

export interface Compared {
  /** Cases that came, and those of them that were worked ahead; 0 where the line is left to the events. */
  arrived: number
  ahead: number
  apart: string[]
}

/** One shift of a row by both. */
export function comparedOf({ text, uncounted }: Row, shift: number): Compared {
  const { scenario } = loadScenario(text)
  const ahead = new Line(scenario)
  const events = new Line(scenario, 'events')
  const from = uncounted * (scenario.shift.length + scenario.shift['run-out'])
  for (const line of [ahead, events]) if (from > 0) line.countFrom = from
  const [one, other] = [simulated(ahead, shift), simulated(events, shift)]
  const { counts } = ahead
  if (typeof one !== 'string' && typeof other !== 'string')
    return { ...counts, apart: differences(ahead, one, other) }
  // where events cannot go on, neither can those behind what is worked ahead
  return { ...counts, apart: one === other ? [] : [`${one} ahead, ${other} by events`] }
}

function simulated(line: Line, shift: number): ShiftResult | string {
  try {
    return line.simulate('rows', shift)
  } catch (error) {
    if (error instanceof StuckClock) return 'stuck'
    throw error
  }
}
