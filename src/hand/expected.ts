/** Expected output by hand: what stops, and the room between machines, leave of the arrivals. */
import type { Scenario } from '../scenario/schema.js'
import { profileOf } from './arriving.js'
import type { BufferHand } from './buffers.js'
import { type LineHand, sum } from './line.js'
import type { FeltStop } from './paced.js'
import { type Stage, seriesOf } from './series.js'
import { fromFloor, fromPackers, type Through } from './through.js'

/** Where the arrivals go, in good cases a second. Arrivals less all of it is `throughput`. */
export interface ExpectedOutput {
  /** Good cases out over the working time, cases/s. */
  throughput: number
  /** The piece that sets the pace; null where the arrivals do. */
  pace: string | null
  /** Spoilt in jams, rejected or left open. */
  spoilt: number
  /** The piece that sets the pace is slower than what comes. */
  slower: number
  /** Packers wait until the place where cases enter is clear. */
  entry: number
  /** The most costly first. */
  stops: FeltStop[]
  /** Still in the line, or on the floor, at the end of the shift. */
  left: number
  /** The pieces in the order in which cases pass them. */
  order: string[]
}

/** Room that is not there: places more before the piece `before`. */
interface MoreRoom {
  before: string
  places: number
}

/** Worked out, or in words why not. */
export type Expected = { output: ExpectedOutput; trouble: null } | { output: null; trouble: string }

/**
 * Works a line in series out. The slowest while it runs sets the pace, the arrivals among them. Stops of what follows hold it up as far as they
 * outlast the room between (`trade/outlast`), passed on from machine to machine; stops of what comes before leave it without cases likewise. Only
 * what runs fails, so that stops do not overlap (Buzacott 1967). Derived; its error is measured, see `usual-error`.
 */
export function expectedOutput(
  scenario: Scenario,
  line: LineHand,
  buffers: readonly BufferHand[],
  more?: MoreRoom,
): Expected {
  const series = seriesOf(scenario, line, buffers)
  if (series.trouble !== null) return { output: null, trouble: series.trouble }
  const stages = more ? roomier(series.stages, more) : series.stages
  const hours = profileOf(scenario, line)
  const isQueue = line.sources.every(({ whenFull }) => whenFull === 'queue')
  const through = isQueue ? fromFloor(line, stages, hours) : fromPackers(scenario, stages, hours)
  const left = leftInLine(scenario, line, stages, through)
  const good = line.goodShare
  return {
    trouble: null,
    output: {
      throughput: (through.rate - left) * good,
      pace: through.pace,
      spoilt: line.arriving * (1 - good),
      slower: through.slower * good,
      entry: through.entry * good,
      stops: through.stops
        .map((each) => ({ ...each, lost: each.lost * good }))
        .sort((one, other) => other.lost - one.lost),
      left: left * good,
      order: stages.map(({ name }) => name),
    },
  }
}

const roomier = (stages: readonly Stage[], { before, places }: MoreRoom): Stage[] =>
  stages.map((stage, index) => {
    if (stages[index + 1]?.name === before)
      return { ...stage, holds: stage.holds + places, handsOn: stage.handsOn + places }
    return index === 0 && stage.name === before ? { ...stage, takesIn: stage.takesIn + places } : stage
  })

/** Cases still in the line or on the floor when a shift that started empty ends, over the working time, cases/s. */
function leftInLine(
  { shift }: Scenario,
  { working }: LineHand,
  stages: readonly Stage[],
  { rate, held, floor }: Through,
): number {
  if (shift.start !== 'empty') return 0
  const riding = rate * sum(stages.map(({ stay }) => stay))
  const slowest = Math.min(...stages.map((stage) => stage.rate))
  return Math.min(rate * working, Math.max(0, riding + held + floor - shift['run-out'] * slowest)) / working
}
