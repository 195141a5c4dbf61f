/** Random rows of conveyors, belts and sealers, and a check of what is told of a shift that no case lies on another at any event. */
import fc from 'fast-check'
import { Line } from '../../src/line/line.js'
import type { ShiftEvent } from '../../src/line/shift-event.js'
import { Drive } from '../../src/pictures/drive.js'
import { loadScenario } from '../../src/scenario/load.js'

/** Lengths of the kinds of case, m. */
const kinds = { small: 0.3, middle: 0.5, long: 0.75 }
type KindName = keyof typeof kinds

interface Piece {
  what: 'accumulating' | 'belt' | 'gravity' | 'sealer'
  /** Tenths of a metre, m/min, tenths of a second. */
  length: number
  speed: number
  delay: number
  /** Minutes between breakdowns and seconds of repair; 0: never. */
  fails: number
  repair: number
  /** Cases in a hundred that jam, and of those the ones that are spoilt; of several kinds, the first of them spoils. */
  jams: number
  spoils: number
  isOfKinds: boolean
  /** Minutes between planned work; 0: never. Somebody of the crew has to come for it, or nobody. */
  planned: number
  needs: boolean
}

export interface Row {
  pieces: Piece[]
  hasOneSpeed: boolean
  between: number
  serving: string
  stops: 'everything' | 'arrivals-and-manual-work'
  /** Minutes between pieces of other work of the crew; 0: never. */
  otherWork: number
}

const piece: fc.Arbitrary<Piece> = fc.record({
  what: fc.constantFrom('accumulating', 'belt', 'belt', 'gravity', 'accumulating', 'sealer'),
  length: fc.integer({ min: 8, max: 30 }),
  speed: fc.integer({ min: 10, max: 30 }),
  delay: fc.constantFrom(0, 0, 4),
  fails: fc.constantFrom(0, 0, 1, 4),
  repair: fc.integer({ min: 1, max: 60 }),
  jams: fc.constantFrom(0, 0, 3, 12),
  spoils: fc.constantFrom(0, 50, 100),
  isOfKinds: fc.boolean(),
  planned: fc.constantFrom(0, 0, 2, 3),
  needs: fc.boolean(),
})

export const rows: fc.Arbitrary<Row> = fc.record({
  pieces: fc.array(piece, { minLength: 1, maxLength: 6 }),
  hasOneSpeed: fc.boolean(),
  between: fc.integer({ min: 1, max: 8 }),
  serving: fc.constantFrom('2 s', '9 s', '{exponential: {mean: 4 s}}', '{exponential: {mean: 2 s}}'),
  stops: fc.constantFrom('everything', 'arrivals-and-manual-work'),
  otherWork: fc.constantFrom(0, 0, 2),
})

const speedOf = (row: Row, { speed }: Piece) => (row.hasOneSpeed ? 20 : speed)

function keysOf(row: Row, piece: Piece): string {
  const { what, length, delay, fails, repair } = piece
  const speed = `${speedOf(row, piece)} m/min`
  const down =
    fails > 0 && what !== 'gravity'
      ? `, breakdowns: {after: {exponential: {mean: ${fails} min}}, counted-in: calendar-time, repair: ${repair} s}`
      : ''
  const more = `${down}${jamsOf(piece)}${plannedOf(piece)}`
  return what === 'sealer'
    ? `type: sealer, belt-speed: ${speed}, bed: 1.9 m, heads: {top: {rated-speed: 60 m/min}}${more}`
    : `type: conveyor, carries: ${what}, length: ${length / 10} m, speed: ${speed}, start-delay: ${delay / 10} s${more}`
}

function jamsOf({ jams, spoils, isOfKinds, repair }: Piece): string {
  if (jams === 0) return ''
  const crushed = `{chance: ${jams} %, clear: ${repair} s, case-lost: ${spoils} %}`
  return `, jams: ${isOfKinds ? `{crushed: ${crushed}, flap: {chance: ${jams} %, clear: 7 s, by: fitter, isolate: 2 s}}` : crushed}`
}

function plannedOf({ planned, needs, repair }: Piece): string {
  return planned === 0
    ? ''
    : `, planned: [{does: cleaning, every: ${planned} min, takes: ${repair} s${needs ? ', needs: fitter' : ''}}]`
}

export const textOf = (row: Row): string => `cases:
${Object.entries(kinds)
  .map(([name, length]) => `  ${name}: {length: ${length} m, width: 300 mm, height: 300 mm}`)
  .join('\n')}
arrivals: {p: {time-between: {exponential: {mean: ${row.between} s}}}}
line:
${row.pieces.map((each, index) => `  p${index}: {${keysOf(row, each)}}`).join('\n')}
  table: {type: station, time: ${row.serving}, run-by: people}
crew:
  operators: {walk: 3 s, does: [jams, roll-change, size-setting, blade, breakdowns]${row.otherWork === 0 ? '' : `, other-work: {every: ${row.otherWork} min, takes: 20 s}`}}
  fitter: {walk: 5 s, does: [breakdowns]}
shift: {length: 10 min, breaks-stop: ${row.stops}, breaks: [{at: 3 min, for: 1 min}, {at: 7 min, for: 30 s}]}`

/** A case as it is told: its length, m, and when it came to each piece or, of a sealer, onto its belts. */
interface Told {
  length: number
  at: number
  since: number
}

const hair = 1e-6

/**
 * What is wrong in a shift of `row`, or null. At each event, for each run of pieces without a place in between: cases whose leading
 * edges lie on these, but for the one that came last, lie wholly between the entrance of the first and the exit of
 * the last: their lengths must have room there. So no conveyor holds more than fits, tails counted. None crosses the joint
 * behind another before that has moved its length, or rides a piece faster than its drive. And where all drives are as fast, the places of
 * cases on belts are known from when the belts ran: their distances are not less than their lengths.
 */
export function overlapOf(row: Row, shift: number, text = textOf(row)): string | null {
  const events: ShiftEvent[] = []
  const line = new Line(loadScenario(text).scenario)
  line.observe((event) => events.push(event))
  line.simulate('tails', shift)
  return new Checked(row, events).fault()
}

class Checked {
  private readonly pieces: { name: string; length: number; speed: number; what: Piece['what'] }[]
  private readonly drives: Drive[]
  /** On the row, the first to come first. */
  private readonly cases = new Map<number, Told>()
  private readonly lengths = new Map<number, number>()
  /** The last to cross onto each piece, when, and its length. */
  private readonly crossed: ({ time: number; length: number } | null)[]

  constructor(
    private readonly row: Row,
    private readonly events: readonly ShiftEvent[],
  ) {
    this.pieces = row.pieces.map((each, index) => ({
      name: `p${index}`,
      length: each.what === 'sealer' ? 1.9 : each.length / 10,
      speed: speedOf(row, each) / 60,
      what: each.what,
    }))
    this.crossed = this.pieces.map(() => null)
    this.drives = this.pieces.map(
      ({ name }) =>
        new Drive(
          events.flatMap(({ event, at, time, speed }): [number, number][] =>
            event === 'carries-at' && at === name ? [[time, speed!]] : [],
          ),
        ),
    )
  }

  fault(): string | null {
    for (const [index, event] of this.events.entries()) {
      const fault = this.moved(event)
      if (fault) return fault
      if (this.events[index + 1]?.time === event.time) continue
      const overlap = this.room(event.time) ?? this.onBelts(event.time)
      if (overlap) return overlap
    }
    return null
  }

  private moved({ event, at, time, case: item, kind, length: own }: ShiftEvent): string | null {
    if (event === 'arrives') this.lengths.set(item!, own ?? kinds[kind as KindName])
    const index = this.pieces.findIndex(({ name }) => name === at)
    const isOnto = event === 'on-belts' || (event === 'taken' && this.pieces[index]?.what !== 'sealer')
    if (event === 'spoilt' || (event === 'taken' && !isOnto) || (event === 'taken' && at === 'table'))
      this.cases.delete(item!)
    if (!isOnto || index < 0) return null
    const before = this.crossed[index]
    const { speed } = this.pieces[index]!
    if (before && time < before.time + before.length / speed - hair)
      return `case ${item} crosses onto ${at} at ${time} s, on the one that crossed at ${before.time} s`
    const told = this.cases.get(item!)
    const piece = this.pieces[index - 1]
    if (told && piece && time < told.since + piece.length / piece.speed - hair)
      return `case ${item} rides ${piece.name} in ${time - told.since} s`
    const length = this.lengths.get(item!)!
    this.crossed[index] = { time, length }
    this.cases.delete(item!)
    this.cases.set(item!, { length, at: index, since: time })
    return null
  }

  /** Runs of pieces end where a place is: the flap place of a sealer is before its belts. */
  private room(time: number): string | null {
    const inOrder = [...this.cases.values()].sort((a, b) => b.at - a.at || a.since - b.since)
    for (let from = 0; from < this.pieces.length; from++) {
      let length = 0
      for (let to = from; to < this.pieces.length; to++) {
        if (to > from && this.pieces[to]!.what === 'sealer') break
        length += this.pieces[to]!.length
        const inside = inOrder.filter(({ at }) => at >= from && at <= to)
        const needed = inside.slice(0, -1).reduce((sum, each) => sum + each.length, 0)
        if (needed > length + hair)
          return `${needed} m of cases on the ${length} m of p${from} to p${to} at ${time} s`
      }
    }
    return null
  }

  private onBelts(time: number): string | null {
    if (!this.row.hasOneSpeed || this.pieces.some(({ what }) => what === 'sealer')) return null
    const inOrder = [...this.cases.values()].sort((a, b) => b.at - a.at || a.since - b.since)
    for (const [index, ahead] of inOrder.entries()) {
      const behind = inOrder[index + 1]
      if (!behind || ahead.at - behind.at > 1) continue
      if (this.pieces[ahead.at]!.what !== 'belt' || this.pieces[behind.at]!.what !== 'belt') continue
      const joint = ahead.at === behind.at ? 0 : this.pieces[behind.at]!.length
      const apart = joint + this.placeOf(ahead, time) - this.placeOf(behind, time)
      if (apart < ahead.length - hair)
        return `${apart} m apart on ${this.pieces[behind.at]!.name} at ${time} s`
    }
    return null
  }

  private placeOf({ at, since }: Told, time: number): number {
    const drive = this.drives[at]!
    return drive.wayAt(time) - drive.wayAt(since)
  }
}
