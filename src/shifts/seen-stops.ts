/** Stops of a simulated shift as the log of a plant would have them: none that it would not show, to its clock, cut off at breaks. */
import { type CauseKey, causeKeys } from '../catalogue/causes.js'
import type { ShiftEvent } from '../line/shift-event.js'
import { jamsOf } from '../scenario/jams.js'
import type { Scenario } from '../scenario/schema.js'

/** Why a piece stood. */
export type StopCause = CauseKey | 'planned-stops'
const stopCauses: readonly StopCause[] = [...causeKeys, 'planned-stops']

/** How a log shows stops. */
export interface LogEyes {
  /** Shorter ones are not in it, s. */
  seenFrom: number
  /** Grain of the clock on which begin and end are read, s; 0: none. */
  grain: number
}

/** What a place of the sums is of: a cause at a piece; of jams one kind, where kinds have names. */
interface SumOf {
  piece: string
  cause: StopCause
  jam: string | null
}

/** The places of the sums in their order. */
export const stopSumsOf = ({ line }: Pick<Scenario, 'line'>): SumOf[] =>
  Object.entries(line).flatMap(([piece, { jams }]) => [
    ...stopCauses.map((cause): SumOf => ({ piece, cause, jam: null })),
    ...jamsOf(jams).flatMap(({ name }): SumOf[] =>
      name === null ? [] : [{ piece, cause: 'jams', jam: name }],
    ),
  ])

const keyOf = ({ piece, cause, jam }: SumOf): string => JSON.stringify([piece, cause, jam])

/** A stop that lasts. */
interface Open extends SumOf {
  begins: number
}

/** Takes the events of one shift; `sums` are two for each of `stopSumsOf`: stops, and how long they were, s. */
export class SeenStops {
  readonly sums: Float64Array
  private readonly places: ReadonlyMap<string, number>
  private readonly breaks: Scenario['shift']['breaks']
  private readonly open = new Map<string, Open>()

  constructor(
    { line, shift }: Scenario,
    private readonly eyes: LogEyes,
  ) {
    const all = stopSumsOf({ line })
    this.places = new Map(all.map((each, index) => [keyOf(each), index]))
    this.sums = new Float64Array(2 * all.length)
    this.breaks = shift.breaks
  }

  take({ event, at, time, cause, jam, state }: ShiftEvent): void {
    if (event === 'stops') this.begin({ piece: at, cause: cause!, jam: jam ?? null, begins: time })
    // planned work is a planned stop too; beside a stop that lasts the log has that one
    else if (event === 'planned-stop' || (event === 'planned-work' && !this.open.has(at)))
      this.begin({ piece: at, cause: 'planned-stops', jam: null, begins: time })
    else if (event === 'work-done') this.end(at, time)
    // nobody is called to a planned stop: it is over when the piece does something else, and a break only holds it up
    else if (event === 'state' && state !== 'planned-stop' && state !== 'on-break') this.endPlanned(at, time)
  }

  /** The shift is over: what still stands is cut off there. */
  close(time: number): Float64Array {
    for (const piece of [...this.open.keys()]) this.end(piece, time)
    return this.sums
  }

  private begin(stop: Open): void {
    this.end(stop.piece, stop.begins)
    this.open.set(stop.piece, stop)
  }

  private endPlanned(piece: string, time: number): void {
    if (this.open.get(piece)?.cause === 'planned-stops') this.end(piece, time)
  }

  private end(piece: string, ends: number): void {
    const stop = this.open.get(piece)
    if (!stop) return
    this.open.delete(piece)
    const { begins } = stop
    if (ends - begins < this.eyes.seenFrom || this.isInBreak(begins)) return
    const border = this.breaks.find(({ at }) => at > begins)?.at ?? Infinity
    const place = 2 * this.places.get(keyOf(stop))!
    this.sums[place]!++
    this.sums[place + 1]! += this.read(Math.min(ends, border)) - this.read(begins)
  }

  /** What the clock of the log shows. */
  private read(time: number): number {
    const { grain } = this.eyes
    return grain > 0 ? Math.floor(time / grain) * grain : time
  }

  private isInBreak(time: number): boolean {
    return this.breaks.some((pause) => time >= pause.at && time < pause.at + pause.for)
  }
}
