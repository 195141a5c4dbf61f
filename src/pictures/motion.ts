/** Where every case of a recorded stretch is at any instant, by the rules by which the line was simulated. */

import type { StateKey } from '../catalogue/states.js'
import { type Movement, pitchOf } from '../kinds/in-pictures.js'
import type { Stretch } from '../shifts/stretch.js'
import type { Layout } from './layout.js'
import { add, lower, type Polyline, placeOn, simplified } from './polyline.js'
import { RunClock } from './run-clock.js'
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
/** Rounding of sums of times and lengths, m. */
const rounding = 1e-6
/** Room between places of a station, m. */
const betweenPlaces = 0.2

/**
 * All moves, in order of coming. On conveyors they follow the relation of `AccumulatingConveyor` or the belt's travel; in
 * stations, diverts and the flap place of a sealer a case goes to its place and stands there. A case that would stand on the
 * tail of one ahead that has not yet cleared the next piece is drawn behind that tail. Every path begins at 0 when the
 * case comes and ends at the end of the piece when it goes on, as recorded.
 */
export function motionOf(stretch: Stretch, layout: Layout): Move[] {
  return new Mover(stretch, layout).moves()
}

class Mover {
  private readonly visits: Visit[]
  private readonly clocks: readonly RunClock[]
  private readonly glide: number
  private readonly longest: number

  constructor(
    private readonly stretch: Stretch,
    private readonly layout: Layout,
  ) {
    const { pieces, states, to } = stretch
    this.clocks = pieces.map(({ moves }, index) => new RunClock(states[index]!, to, moves === 'accumulating'))
    this.glide = Math.max(glide.least, ...pieces.map(({ speed }) => glide.times * (speed ?? 0)))
    this.longest = Math.max(...layout.cases.map(({ length }) => length))
    this.visits = visitsOf(stretch)
  }

  moves(): Move[] {
    for (const [piece, { moves, servers }] of this.stretch.pieces.entries())
      if (moves === 'station') this.placeInStation(piece, servers)
    const before = new Map<Visit, number>()
    for (const visit of this.visits) if (visit.next) before.set(visit.next, visit.piece)
    return this.visits.map((visit) => {
      const { times, places } = simplified(this.pathOf(visit))
      const { item, kind, size, piece, lane, in: from, out } = visit
      return {
        ...{ item, kind, size, piece, lane, in: from, out, before: before.get(visit) ?? -1 },
        ...{ times: Float64Array.from(times), places: Float64Array.from(places) },
      }
    })
  }

  private endOf(visit: Visit): number {
    return Math.min(visit.out, this.stretch.to)
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
    visit.path = exact(path, drawn, visit.out <= this.stretch.to && !visit.isLost ? visit.out : null)
    visit.isBeingMade = false
    return visit.path
  }

  /** The path of `visit` no farther than the tail of `leader`, whose piece begins `offset` metres on. */
  private behind(path: Polyline, visit: Visit, leader: Visit, offset: number): Polyline {
    // in a full loop everybody is behind somebody
    if (leader.isBeingMade) return path
    const { times, places } = this.pathOf(leader)
    const back = offset - this.lengthOf(leader)
    // whoever has come into a station is inside, even where more are there than are drawn
    const least = this.stretch.pieces[visit.piece]!.moves === 'station' ? this.inside(visit) : 0
    return lower(path, { times, places: places.map((place) => Math.max(least, place + back)) })
  }

  /** The first place at which a case lies wholly on its piece, or the end of a shorter one. */
  private inside(visit: Visit): number {
    return Math.min(this.layout.pieces[visit.piece]!.length, this.lengthOf(visit))
  }

  private byRule(visit: Visit): Polyline {
    const piece = this.stretch.pieces[visit.piece]!
    const drawn = this.layout.pieces[visit.piece]!.length
    switch (piece.moves) {
      case 'accumulating': {
        const { times, places } = this.accumulating(visit, piece)
        // zones leave a rest that holds no case
        return this.inTime(visit, {
          times,
          places: places.map((place) => (place * drawn) / piece.length),
        })
      }
      case 'belt':
        return this.onBelts(visit, visit.in, 0, drawn, piece.speed!)
      case 'sealer':
        return this.inSealer(visit, drawn, piece)
      case 'place':
        return this.gliding([[visit.in, drawn]], visit)
      case 'station':
        return visit.free!
    }
  }

  // --- conveyors ---

  /** In the running time of the conveyor: the later of free flow and the path of the one ahead, shifted. */
  private accumulating(visit: Visit, movement: Movement): Polyline {
    const { length, speed, startDelay } = movement
    if (visit.free) return visit.free
    const clock = this.clocks[visit.piece]!
    const [begin, end] = [clock.runAt(visit.in), clock.runAt(this.endOf(visit))]
    const there = Math.min(end, begin + length / speed!)
    let path: Polyline = {
      times: [begin, there, Math.max(there, end)],
      places: [0, Math.min(length, (there - begin) * speed!), Math.min(length, (there - begin) * speed!)],
    }
    const { ahead } = visit
    if (ahead) {
      const { times, places } = this.accumulating(ahead, this.stretch.pieces[visit.piece]!)
      const pitch = pitchOf(movement, ahead)
      const bound = {
        times: times.map((time) => time + startDelay),
        places: places.map((place) => place - pitch),
      }
      if (ahead.out <= this.stretch.to) {
        // one that has left goes on at the same speed as far as others on here may follow it
        const last = bound.times.at(-1)!
        bound.times.push(last + (length + pitch) / speed!)
        bound.places.push(2 * length)
        bound.places[bound.places.length - 2] = length - pitch
      }
      path = lower(path, bound)
    }
    visit.free = simplified(path)
    return visit.free
  }

  /** A path in running time as one in time. */
  private inTime(visit: Visit, { times, places }: Polyline): Polyline {
    const clock = this.clocks[visit.piece]!
    const end = this.endOf(visit)
    const inner = times.map((run) => clock.whenRun(run)).filter((time) => time > visit.in && time < end)
    const corners = [visit.in, ...inner, ...clock.turns(visit.in, end), end].sort((a, b) => a - b)
    const made: Polyline = { times: [], places: [] }
    for (const time of corners) add(made, time, placeOn(times, places, clock.runAt(time)))
    return made
  }

  /** Carried by belts from `start` at `time` to the end of the piece. */
  private onBelts(visit: Visit, time: number, start: number, drawn: number, speed: number): Polyline {
    const clock = this.clocks[visit.piece]!
    const end = this.endOf(visit)
    const run = clock.runAt(time)
    const made: Polyline = { times: [time], places: [start] }
    for (const corner of [...clock.turns(time, end), end])
      add(made, corner, Math.min(drawn, start + speed * (clock.runAt(corner) - run)))
    return made
  }

  /** Into the flap place, and from there past the heads. */
  private inSealer(visit: Visit, drawn: number, { length, speed }: Movement): Polyline {
    const flapPlace = Math.max(0, drawn - length)
    const end = Math.min(visit.belts, this.endOf(visit))
    const made = this.gliding([[visit.in, flapPlace]], { ...visit, out: visit.belts }, end)
    if (visit.belts > this.endOf(visit)) return made
    const carried = this.onBelts(visit, visit.belts, flapPlace, drawn, speed!)
    for (const [index, time] of carried.times.entries()) add(made, time, carried.places[index]!)
    return made
  }

  // --- stations ---

  /** Who is at which place of a station, and where those stand who wait: in the order in which they came. */
  private placeInStation(piece: number, servers: number): void {
    const drawn = this.layout.pieces[piece]!.length
    const room = this.longest + betweenPlaces
    const freeFrom: number[] = Array.from({ length: servers }, () => -Infinity)
    const begins: number[] = []
    for (const visit of this.visits.filter((each) => each.piece === piece)) {
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
      visit.free = this.gliding(targets, visit)
      begins.push(begin)
    }
  }

  /** Goes to each target from its time on, to the last one in time for its leaving. */
  private gliding(
    targets: readonly [time: number, place: number][],
    visit: Visit,
    end = this.endOf(visit),
  ): Polyline {
    const made: Polyline = { times: [visit.in], places: [0] }
    for (const [index, [from, target]] of targets.entries()) {
      const isLast = index === targets.length - 1
      const until = Math.min(end, targets[index + 1]?.[0] ?? end)
      if (until < from) break
      const place = made.places.at(-1)!
      add(made, from, place)
      const needed = (target - place) / this.glide
      const taken = isLast && visit.out <= end ? Math.min(needed, until - from) : needed
      if (from + taken <= until) {
        add(made, from + taken, target)
        add(made, until, target)
      } else add(made, until, place + this.glide * (until - from))
    }
    if (made.times.at(-1)! < end) add(made, end, made.places.at(-1)!)
    return made
  }
}

/** The path as it begins at 0 and keeps within the piece; with a time, it is at the end then, by rounding or by a jump. */
function exact({ times, places }: Polyline, end: number, leaves: number | null): Polyline {
  const made = { times: [...times], places: places.map((place) => Math.min(place, end)) }
  if (places[0]! < rounding) made.places[0] = 0
  if (leaves === null) return made
  if (end - made.places.at(-1)! < rounding) made.places[places.length - 1] = end
  else add(made, leaves, end)
  return made
}
