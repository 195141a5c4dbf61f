/** The stops of a shift as the plant logged them, to be simulated in place of those that laws bring. */
import { stopPathOf } from '../../record/meanings.js'
import { stopsByShift } from '../../record/minutes.js'
import type { CleanRecord, LoggedStop, Meaning, Span } from '../../record/record.js'
import { lengthOf } from '../../record/spans.js'
import type { LoggedKind, RecordedStops, RecordedStopsOfLine } from '../../scenario/recorded-stops.js'
import type { Scenario } from '../../scenario/schema.js'
import type { Stopped } from './causes.js'

/** A stop of a piece, since the start of the shift, s. */
interface Standing extends Span {
  kind: LoggedKind
}

/** Puts the stops of a record into scenarios: those that `means` gives a piece of the line. */
export class OwnStops {
  private readonly instead = new Map<string, LoggedKind[]>()
  private readonly stops: readonly (readonly LoggedStop[])[]

  constructor(
    private readonly record: CleanRecord,
    { line }: Pick<Scenario, 'line'>,
  ) {
    this.stops = stopsByShift(record)
    for (const meaning of record.meanings) {
      const place = stopPathOf(meaning)
      if (place && Object.hasOwn(line, place.piece))
        this.instead.set(place.piece, [...(this.instead.get(place.piece) ?? []), place.kind])
    }
  }

  /** Whether all stops of that meaning are put in. */
  has(meaning: Meaning | null): boolean {
    const place = meaning === null ? null : stopPathOf(meaning)
    return place !== null && (this.instead.get(place.piece)?.includes(place.kind) ?? false)
  }

  /** No stop of the record can be put in. */
  get isEmpty(): boolean {
    return this.instead.size === 0
  }

  /** A scenario with the stops of that shift. */
  in(scenario: Scenario, number: number): Scenario {
    const { begins: start } = this.record.shifts[number]!
    const rests = this.record.rests.filter(({ shift }) => shift === number)
    const byPiece = new Map<string, Standing[]>([...this.instead.keys()].map((piece) => [piece, []]))
    for (const { means, begins, ends } of [...this.stops[number]!, ...rests]) {
      if (!this.has(means)) continue
      const { piece, kind } = stopPathOf(means!)!
      byPiece.get(piece)!.push({ kind, begins: begins - start, ends: ends - start })
    }
    const recordedStops: RecordedStopsOfLine = Object.fromEntries(
      [...byPiece].map(([piece, standings]): [string, RecordedStops] => {
        const alone = oneAtATime(standings)
        return [
          piece,
          {
            instead: this.instead.get(piece)!,
            begins: alone.map(({ begins }) => begins),
            ends: alone.map(({ ends }) => ends),
            kinds: alone.map(({ kind }) => kind),
          },
        ]
      }),
    )
    return { ...scenario, line: withoutPlanned(scenario.line, recordedStops), recordedStops }
  }

  /** The stops of so many shifts: put in, and left out for nothing says where in the line they were. */
  counted(numbers: readonly number[]): { put: Stopped; left: Stopped } {
    const sums = { put: { stops: 0, seconds: 0 }, left: { stops: 0, seconds: 0 } }
    for (const stop of numbers.flatMap((number) => this.stops[number]!)) {
      // that the line had no cases, or no room after it, comes of the rest
      if (stop.means === 'starved' || stop.means === 'blocked') continue
      const sum = sums[this.has(stop.means) ? 'put' : 'left']
      sum.stops++
      sum.seconds += lengthOf(stop)
    }
    return sums
  }
}

/** A piece stands for one reason at a time: the one that it stood for first. */
function oneAtATime(standings: readonly Standing[]): Standing[] {
  const alone: Standing[] = []
  let until = -Infinity
  for (const { kind, begins, ends } of [...standings].sort((a, b) => a.begins - b.begins)) {
    const from = Math.max(begins, until)
    if (ends <= from) continue
    alone.push({ kind, begins: from, ends })
    until = ends
  }
  return alone
}

/** The pieces whose planned stops are those of the log make none of their own. */
function withoutPlanned(line: Scenario['line'], recorded: RecordedStopsOfLine): Scenario['line'] {
  return Object.fromEntries(
    Object.entries(line).map(([name, keys]) => {
      if (!recorded[name]?.instead.includes('every') || !('every' in keys)) return [name, keys]
      const { every: _, ...others } = keys
      return [name, others as typeof keys]
    }),
  )
}
