/** Where every case of a recorded stretch is at any instant, by the rules by which the line was simulated. */

import type { StateKey } from '../catalogue/states.js'
import { type Movement, pitchOf } from '../kinds/in-pictures.js'
import type { Stretch } from '../shifts/stretch.js'
import { carried } from './carried.js'
import { Drive } from './drive.js'
import { gliding } from './gliding.js'
import type { Layout } from './layout.js'
import {
  add,
  exact,
  fitted,
  lessBy,
  lower,
  type Polyline,
  placeOn,
  reaching,
  simplified,
} from './polyline.js'
import { holdingAt } from './steps.js'
import { type Stay, type Visit, visitsOf } from './visits.js'

/** One case on one piece. */
export interface Move extends Stay {
  /** The piece where it was before, or -1. */
  before: number
  /** Way of its leading edge from the start of the piece, m, at corners in order of time; straight between them. */
  times: Float64Array
  places: Float64Array
}

/** Leading edge from the start of the piece, m, at `time` between `in` and `out` of the move. */
export const placeAt = ({ times, places }: Move, time: number): number => placeOn(times, places, time)

/** The state of a piece at `time`; waiting before anything is known. */
export const stateAt = (states: readonly (readonly [number, StateKey])[], time: number): StateKey =>
  holdingAt(states, time) ?? 'waiting'

/** Speed at which a case is drawn going to its place where no rule says one: this, m/s, or so many times the fastest belt. */
const glide = { least: 1, times: 2 }
/** Room between places of a station, m. */
const betweenPlaces = 0.2

/**
 * All moves, in order of coming. On conveyors and belts a case goes as fast as these were told to carry, no farther than the relation of
 * `AccumulatingConveyor` lets it behind the one ahead, and stands while its tail is held; in
 * stations, diverts and the flap place of a sealer a case goes to its place and stands there. A case that would stand on the
 * tail of one ahead that has not yet cleared the next piece is drawn behind that tail. Every path begins at 0 when the
 * case comes and ends at the end of the piece when it goes on, as recorded. Without the moves that are over before `since`, s.
 */
export const motionOf = (stretch: Stretch, layout: Layout, since = Number.NEGATIVE_INFINITY): Move[] =>
  new Mover(stretch, layout).moves(since)

class Mover {
  private readonly visits: Visit[]
  private readonly drives: readonly Drive[]
  private readonly glide: number
  private readonly longest: number
  /** On conveyors, while their paths are worked out: in a full loop everybody is behind somebody. */
  private readonly inWork = new Set<Visit>()

  constructor(
    private readonly stretch: Stretch,
    private readonly layout: Layout,
  ) {
    const { pieces, drives } = stretch
    this.drives = drives.map((steps) => new Drive(steps))
    this.glide = Math.max(glide.least, ...pieces.map(({ speed }) => glide.times * (speed ?? 0)))
    this.longest = Math.max(...layout.cases.map(({ length }) => length))
    this.visits = visitsOf(stretch)
  }

  moves(since: number): Move[] {
    const at = this.stretch.pieces.map((): Visit[] => [])
    for (const visit of this.visits) at[visit.piece]!.push(visit)
    for (const [piece, { moves, servers }] of this.stretch.pieces.entries())
      if (moves === 'station') this.placeInStation(at[piece]!, servers)
    // of all in their order, though not all are asked for: others lie behind them
    for (const visit of this.visits) this.pathOf(visit)
    const asked = this.visits.filter(({ out }) => out >= since)
    return asked.map((visit) => {
      const { times, places } = simplified(this.pathOf(visit))
      const { item, kind, size, piece, lane, in: from, out, before } = visit
      return {
        ...{ item, kind, size, piece, lane, in: from, out, before },
        ...{ times: Float64Array.from(times), places: Float64Array.from(places) },
      }
    })
  }

  private endOf(visit: Visit): number {
    return Math.min(visit.out, this.stretch.to)
  }

  /** The time for which it is carried. */
  private course(visit: Visit, from: number): { from: number; until: number } {
    return { from, until: this.endOf(visit) }
  }

  private lengthOf({ kind, size }: Stay): number {
    return (size ?? this.layout.cases[kind]!).length
  }

  /** Path as it is drawn: by the rule of the piece, behind the tail of whoever is ahead, and ending where it was recorded to. */
  private pathOf(visit: Visit): Polyline {
    if (visit.path) return visit.path
    visit.isBeingMade = true
    const drawn = this.layout.pieces[visit.piece]!.length
    let path = this.byRule(visit)
    const { ahead } = visit
    const isInOrder = this.stretch.pieces[visit.piece]!.servers === 1
    if (ahead && isInOrder && ahead.out > visit.in) path = this.behind(path, visit, ahead, 0)
    // cases that part at the end of the piece do not stand in each other's way there
    const onward = ahead?.next
    if (onward && isInOrder && onward.out > visit.in)
      if (visit.next === null || visit.next.piece === onward.piece)
        path = this.behind(path, visit, onward, drawn)
    // behind a tail that the line takes to have crossed
    if (this.isConveyor(visit) && visit.out <= this.stretch.to && !visit.isLost)
      path = reaching(path, { at: visit.out, least: drawn, speed: this.glide })
    visit.path = exact(path, drawn, visit.out <= this.stretch.to && !visit.isLost ? visit.out : null)
    visit.isBeingMade = false
    return visit.path
  }

  /** The path of `visit` no farther than the tail of `leader`, whose piece begins `offset` metres on; not with every corner of all ahead. */
  private behind(path: Polyline, visit: Visit, leader: Visit, offset: number): Polyline {
    // in a full loop everybody is behind somebody
    if (leader.isBeingMade) return path
    const { times, places } = this.pathOf(leader)
    const back = offset - this.lengthOf(leader)
    // whoever has come into a station is inside, even where more are there than are drawn
    const least = this.stretch.pieces[visit.piece]!.moves === 'station' ? this.inside(visit) : 0
    return simplified(lower(path, { times, places: places.map((place) => Math.max(least, place + back)) }))
  }

  /** The first place at which a case lies wholly on its piece, or the end of a shorter one. */
  private inside(visit: Visit): number {
    return Math.min(this.layout.pieces[visit.piece]!.length, this.lengthOf(visit))
  }

  private glideOf(visit: Visit): Parameters<typeof gliding>[1] {
    return { in: visit.in, out: visit.out, end: this.endOf(visit), speed: this.glide }
  }

  private byRule(visit: Visit): Polyline {
    const piece = this.stretch.pieces[visit.piece]!
    const drawn = this.layout.pieces[visit.piece]!.length
    switch (piece.moves) {
      case 'accumulating':
      case 'belt': {
        const { times, places } = this.onConveyor(visit)
        // zones leave a rest that holds no case
        return { times, places: places.map((place) => (place * drawn) / piece.length) }
      }
      case 'sealer':
        return this.inSealer(visit, drawn, piece)
      case 'place':
        return gliding([[visit.in, drawn]], this.glideOf(visit))
      case 'station':
        return visit.free!
    }
  }

  // --- conveyors ---

  /** Carried on a conveyor, with its own length and in its own time. */
  private onConveyor(visit: Visit): Polyline {
    if (visit.free) return visit.free
    this.inWork.add(visit)
    const { length } = this.stretch.pieces[visit.piece]!
    const drive = this.drives[visit.piece]!
    const keeping = { bounds: this.bounds(visit), held: visit.held }
    const path = carried(drive, { ...this.course(visit, visit.in), start: 0, end: length }, keeping)
    visit.free = fitted(simplified(this.asTold(path, visit)))
    this.inWork.delete(visit)
    return visit.free
  }

  /**
   * The path as it agrees with what was recorded: at the end when the case goes on, and clear of the entrance when the next one comes. The
   * line lets a case that stood behind a tail go on when that has crossed, even where its own conveyor stood meanwhile or is slower.
   */
  private asTold(path: Polyline, visit: Visit): Polyline {
    const { piece, in: from, out, isLost, behind } = visit
    const end = Math.min(out, this.stretch.to)
    const { length } = this.stretch.pieces[piece]!
    const told: [at: number, least: number][] = []
    if (behind && behind.in > from && behind.in < end)
      told.push([behind.in, Math.min(length, this.lengthOf(visit))])
    if (out === end && !isLost) told.push([out, length])
    return told.reduce((made, [at, least]) => reaching(made, { at, least, speed: this.glide }), path)
  }

  /** What those ahead let a case go on an accumulating conveyor: the path of the one before, and while that lies across the end its tail. */
  private bounds({ piece, ahead }: Visit): Polyline[] {
    const own = this.stretch.pieces[piece]!
    const { moves, length } = own
    if (moves !== 'accumulating' || !ahead || this.inWork.has(ahead)) return []
    const bounds = [lessBy(pitchOf(own, ahead), this.delayed(this.onwards(ahead), piece))]
    let offset = length
    let pitch = pitchOf(own, ahead)
    for (let next = ahead.next; next && this.isConveyor(next) && offset < length + pitch; next = next.next) {
      if (this.inWork.has(next)) break
      // whose entrance is waited for goes in as soon as that is clear: by the room that is kept there
      const there = this.stretch.pieces[next.piece]!
      pitch = Math.min(pitch, there.pitches.length > 0 ? pitchOf(there, ahead) : this.lengthOf(ahead))
      bounds.push(lessBy(pitch - offset, this.onConveyor(next)))
      offset += there.length
    }
    return bounds
  }

  private isConveyor({ piece }: Visit): boolean {
    const { moves } = this.stretch.pieces[piece]!
    return moves === 'accumulating' || moves === 'belt'
  }

  /** The path of a case on its conveyor, and by the drive of that on beyond the end as far as others here may follow it. */
  private onwards(visit: Visit): Polyline {
    const { times, places } = this.onConveyor(visit)
    if (!(visit.out <= this.stretch.to)) return { times, places }
    const movement = this.stretch.pieces[visit.piece]!
    const { length } = movement
    const drive = this.drives[visit.piece]!
    const gone = drive.wayAt(visit.out)
    const end = Math.min(drive.whenGone(gone + pitchOf(movement, visit)), this.stretch.to)
    const corners = [visit.out, ...drive.turns(visit.out, end), end]
    return {
      times: [...times, ...corners],
      places: [...places, ...corners.map((time) => length + drive.wayAt(time) - gone)],
    }
  }

  /** The path later by the start delay, in the running time of the conveyor: while that stands nobody starts. */
  private delayed(path: Polyline, piece: number): Polyline {
    const { startDelay } = this.stretch.pieces[piece]!
    if (startDelay === 0) return path
    const drive = this.drives[piece]!
    const runs = path.times.map((time) => drive.runAt(time) + startDelay)
    const from = drive.whenRun(runs[0]!)
    const to = Math.min(drive.whenRun(runs.at(-1)!), this.stretch.to)
    if (!(from < to)) return { times: [from], places: [path.places[0]!] }
    const inner = runs.map((run) => drive.whenRun(run)).filter((time) => time > from && time < to)
    const times = [from, ...inner, ...drive.turns(from, to), to].sort((a, b) => a - b)
    return { times, places: times.map((time) => placeOn(runs, path.places, drive.runAt(time))) }
  }

  /** Into the flap place, and from there past the heads. */
  private inSealer(visit: Visit, drawn: number, { length }: Movement): Polyline {
    const flapPlace = Math.max(0, drawn - length)
    const end = Math.min(visit.belts, this.endOf(visit))
    const made = gliding([[visit.in, flapPlace]], { ...this.glideOf(visit), out: visit.belts, end })
    if (visit.belts > this.endOf(visit)) return made
    const course = { ...this.course(visit, visit.belts), start: flapPlace, end: drawn }
    const onBelts = carried(this.drives[visit.piece]!, course, { bounds: [], held: [] })
    for (const [index, time] of onBelts.times.entries()) add(made, time, onBelts.places[index]!)
    return made
  }

  // --- stations ---

  /** Who is at which place of a station, and where those stand who wait: in the order in which they came. */
  private placeInStation(visits: readonly Visit[], servers: number): void {
    const room = this.longest + betweenPlaces
    const freeFrom: number[] = Array.from({ length: servers }, () => -Infinity)
    const begins: number[] = []
    for (const visit of visits) {
      const drawn = this.layout.pieces[visit.piece]!.length
      const free = freeFrom.map((time) => Math.max(time, visit.in))
      visit.lane = free.indexOf(Math.min(...free))
      const begin = free[visit.lane]!
      freeFrom[visit.lane] = visit.out
      // it moves up whenever one of those before it goes from waiting into work
      const moves = begins.filter((time) => time > visit.in && time < begin).sort((a, b) => a - b)
      const waiting = begins.filter((time) => time > visit.in).length
      // where more wait than are drawn, they stand on one another
      const placeOf = (ahead: number) => Math.max(this.inside(visit), drawn - ahead * room)
      const targets: [number, number][] = []
      if (begin > visit.in) {
        targets.push([visit.in, placeOf(waiting + 1)])
        for (const [index, time] of moves.entries()) targets.push([time, placeOf(waiting - index)])
      }
      if (begin <= this.stretch.to) targets.push([begin, drawn])
      visit.free = fitted(gliding(targets, this.glideOf(visit)))
      begins.push(begin)
    }
  }
}
