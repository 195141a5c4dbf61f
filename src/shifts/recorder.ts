/** Keeps what the events of one shift say of where cases are and what state pieces are in. */
import type { StateKey } from '../catalogue/states.js'
import type { ShiftEvent } from '../line/shift-event.js'
import type { Scenario } from '../scenario/schema.js'

/** A case at a piece; times in s, infinite where it has not come to pass. */
export interface Visit {
  /** Place of the case in `Recorder.cases`. */
  item: number
  piece: number
  in: number
  out: number
  /** When it goes onto the belts of a sealer. */
  belts: number
  /** While its tail is held by the machine behind: begin, end. */
  held: [number, number][]
}

interface RecordedCase {
  id: number
  kind: number
  /** Outside, m, where its kind varies. */
  size: { length: number; width: number } | null
  /** Source and time. */
  came: [number, number]
  /** When it leaves the line in whatever way. */
  gone: number
  isLost: boolean
  path: Visit[]
}

export class Recorder {
  /** In order of arrival: case 1 comes first. */
  readonly cases: RecordedCase[] = []
  /** Of each piece: time, state. */
  readonly states: [number, StateKey][][]
  /** Of each piece: time, speed at which it carries, m/s; nothing of one that does not. */
  readonly drives: [number, number][][]
  /** Cases in the line from each of these instants on. */
  readonly held: [number, number][] = [[0, 0]]
  private readonly pieceOf: ReadonlyMap<string, number>
  private readonly sourceOf: ReadonlyMap<string, number>
  private readonly kindOf: ReadonlyMap<string, number>

  constructor({ line, arrivals, cases }: Scenario) {
    const places = (map: object) => new Map(Object.keys(map).map((name, index) => [name, index]))
    this.pieceOf = places(line)
    this.sourceOf = places(arrivals)
    this.kindOf = places(cases)
    this.states = Object.keys(line).map(() => [])
    this.drives = Object.keys(line).map(() => [])
  }

  take({ event, time, at, case: number, kind, length, width, state, speed }: ShiftEvent): void {
    if (event === 'state') this.states[this.pieceOf.get(at)!]!.push([time, state!])
    if (event === 'carries-at') this.drives[this.pieceOf.get(at)!]!.push([time, speed!])
    if (number === undefined) return
    const item = number - 1
    if (event === 'arrives') {
      this.cases[item] = {
        id: number,
        kind: this.kindOf.get(kind!)!,
        size: length === undefined ? null : { length, width: width! },
        came: [this.sourceOf.get(at)!, time],
        gone: Infinity,
        isLost: false,
        path: [],
      }
      this.count(time, 1)
      return
    }
    const { path } = this.cases[item]!
    if (event === 'taken') {
      if (path.length > 0) path.at(-1)!.out = time
      path.push({ item, piece: this.pieceOf.get(at)!, in: time, out: Infinity, belts: Infinity, held: [] })
    } else if (event === 'on-belts') path.at(-1)!.belts = time
    else if (event === 'tail-held') path.at(-1)!.held.push([time, Infinity])
    else if (event === 'tail-let-go') path.at(-1)!.held.at(-1)![1] = time
    else if (event === 'leaves' || event === 'spoilt' || event === 'turned-away')
      this.goes(item, time, event === 'spoilt')
  }

  private goes(item: number, time: number, isLost: boolean): void {
    const each = this.cases[item]!
    if (each.path.length > 0) each.path.at(-1)!.out = time
    each.gone = time
    each.isLost = isLost
    this.count(time, -1)
  }

  private count(time: number, by: number): void {
    const last = this.held.at(-1)!
    if (last[0] === time) last[1] += by
    else this.held.push([time, last[1] + by])
  }

  /** The first instant, outside `breaks` if any lies there, from which most cases are in the line. */
  longestQueue(breaks: readonly [number, number][]): { time: number; count: number } {
    const outside = this.held.filter(([time]) => !breaks.some(([begin, end]) => time >= begin && time < end))
    let [best] = this.held as [[number, number]]
    for (const each of outside.length > 0 ? outside : this.held) if (each[1] > best[1]) best = each
    return { time: best[0], count: best[1] }
  }
}
