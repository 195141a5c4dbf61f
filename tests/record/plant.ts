/** Line 4 as it truly is: simulates the shifts of `truth.yaml` and tells what happened in them, to the last digit. */
import { readFileSync } from 'node:fs'
import { Line } from '../../src/line/line.js'
import type { EventName, ShiftEvent } from '../../src/line/shift-event.js'
import { loadScenario } from '../../src/scenario/load.js'

export const { scenario: truth } = loadScenario(readFileSync(new URL('truth.yaml', import.meta.url), 'utf8'))

/** Why a piece stood: the cause as the catalogue names it, or a planned stop. */
export type WhyStood = NonNullable<ShiftEvent['cause']> | 'planned-stops'

/** A stop, times in s since the start of its shift. */
export interface TrueStop {
  piece: string
  why: WhyStood
  begins: number
  /** When the piece was put right, or the shift was over. */
  ends: number
  /** It lasted when the shift was over. */
  isOpen: boolean
}

/** What happened in a shift, times in s since its start. */
export interface TrueShift {
  /** Good cases out. */
  good: number
  /** Cases that came, in order. */
  cases: { at: number; kind: string }[]
  /** In the order in which they began. */
  stops: TrueStop[]
  /** Strips of tape laid, and tape drawn for them, m. */
  strips: number
  tape: number
  /** Running time of each piece, s: its time in state working. */
  working: Map<string, number>
}

/** Puts the events of a shift together. */
class Watch {
  readonly shift: TrueShift = { good: 0, cases: [], stops: [], strips: 0, tape: 0, working: new Map() }
  private readonly open = new Map<string, TrueStop>()
  private readonly workingSince = new Map<string, number>()

  /** What is told of; how cases ride and who comes is in no log. */
  private readonly tellers: Partial<Record<EventName, (event: ShiftEvent) => void>> = {
    arrives: ({ time, kind }) => this.shift.cases.push({ at: time, kind: kind! }),
    leaves: ({ as }) => {
      if (as === 'good') this.shift.good++
    },
    'strip-laid': ({ tape }) => {
      this.shift.strips++
      this.shift.tape += tape!
    },
    stops: (event) => this.begin(event, event.cause!),
    'planned-stop': (event) => this.begin(event, 'planned-stops'),
    'work-done': (event) => this.end(event),
    state: (event) => this.turn(event),
  }

  see(event: ShiftEvent): void {
    this.tellers[event.event]?.(event)
  }

  private begin({ at: piece, time }: ShiftEvent, why: WhyStood): void {
    const stop: TrueStop = { piece, why, begins: time, ends: Number.NaN, isOpen: false }
    this.open.set(piece, stop)
    this.shift.stops.push(stop)
  }

  private end({ at: piece, time }: Pick<ShiftEvent, 'at' | 'time'>, isOpen = false): void {
    Object.assign(this.open.get(piece)!, { ends: time, isOpen })
    this.open.delete(piece)
  }

  private turn({ at: piece, time, state }: ShiftEvent): void {
    this.book(piece, time)
    if (state === 'working') this.workingSince.set(piece, time)
    // nobody is called to a planned stop: it is over when the piece does something else, and a break only holds it up
    const lasts = state === 'planned-stop' || state === 'on-break'
    if (this.open.get(piece)?.why === 'planned-stops' && !lasts) this.end({ at: piece, time })
  }

  private book(piece: string, time: number): void {
    const since = this.workingSince.get(piece)
    if (since === undefined) return
    this.shift.working.set(piece, (this.shift.working.get(piece) ?? 0) + time - since)
    this.workingSince.delete(piece)
  }

  close(time: number): TrueShift {
    for (const piece of [...this.open.keys()]) this.end({ at: piece, time }, true)
    for (const piece of [...this.workingSince.keys()]) this.book(piece, time)
    return this.shift
  }
}

/** What happened in the first shifts, by chance as `seed` has it; of another plant than line 4 where `of` is given. */
export function trueShifts(count: number, seed: string, of = truth): TrueShift[] {
  const line = new Line(of)
  return Array.from({ length: count }, (_, index) => {
    const watch = new Watch()
    line.observe((event) => watch.see(event))
    line.simulate(seed, index + 1)
    return watch.close(line.end)
  })
}
