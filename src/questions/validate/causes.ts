/** Stops by cause, of the plant and of the model: the causes that the record names, and all others together. */
import { stopPathOf } from '../../record/meanings.js'
import type { CleanRecord, LoggedStop } from '../../record/record.js'
import { lengthOf } from '../../record/spans.js'
import type { LoggedKind } from '../../scenario/recorded-stops.js'
import type { Scenario } from '../../scenario/schema.js'
import { type StopCause, stopSumsOf } from '../../shifts/seen-stops.js'

/** A cause as both sides know it. */
export interface Cause {
  /** Such as `line.sealer.jams`; null: what the record gives no such path, and what else stops the model. */
  path: string | null
  words: string
}

/** How often, and how long, s. */
export interface Stopped {
  stops: number
  seconds: number
}

/** What so many days or runs come to, in the mean. */
export const meanStopped = ({ stops, seconds }: Stopped, count: number): Stopped => ({
  stops: stops / count,
  seconds: seconds / count,
})

const causeOf: Readonly<Record<LoggedKind, StopCause>> = {
  jams: 'jams',
  breakdowns: 'breakdowns',
  'roll-change': 'roll-changes',
  'size-setting': 'size-settings',
  'tape-breaks': 'tape-breaks',
  blade: 'blade-services',
  every: 'planned-stops',
}

export class Causes {
  readonly all: readonly Cause[]
  private readonly placeOf: ReadonlyMap<string, number>
  /** Place of the cause of each sum of a simulated shift. */
  private readonly ofSums: readonly number[]

  constructor({ meanings }: Pick<CleanRecord, 'meanings'>, scenario: Scenario) {
    const named = meanings.flatMap((path) => {
      const stop = stopPathOf(path)
      return stop ? [{ path, ...stop }] : []
    })
    this.all = [
      ...named.map(({ path, keys, piece }) => ({ path, words: `${keys.words} of ${piece}` })),
      { path: null, words: 'stops of other causes' },
    ]
    this.placeOf = new Map(named.map(({ path }, place) => [path, place]))
    const sumsOf = new Map(
      named.map(({ piece, kind, jam }, place) => [JSON.stringify([piece, causeOf[kind], jam]), place]),
    )
    this.ofSums = stopSumsOf(scenario).map(
      // a kind of jam that the record does not tell from the others is one of all
      ({ piece, cause, jam }) =>
        sumsOf.get(JSON.stringify([piece, cause, jam])) ??
        sumsOf.get(JSON.stringify([piece, cause, null])) ??
        named.length,
    )
  }

  none(): Stopped[] {
    return this.all.map(() => ({ stops: 0, seconds: 0 }))
  }

  /** Adds a stop of the log; that the line had no cases, or no room after it, is no stop of a piece. */
  addLogged(to: readonly Stopped[], stop: LoggedStop): void {
    if (stop.means === 'starved' || stop.means === 'blocked') return
    const sum = to[this.placeOf.get(stop.means ?? '') ?? this.all.length - 1]!
    sum.stops++
    sum.seconds += lengthOf(stop)
  }

  /** Adds the stops of a simulated shift. */
  addSimulated(to: readonly Stopped[], sums: Float64Array): void {
    for (const [index, place] of this.ofSums.entries()) {
      to[place]!.stops += sums[2 * index]!
      to[place]!.seconds += sums[2 * index + 1]!
    }
  }
}
