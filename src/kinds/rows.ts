/** Which lines are a row that can be worked ahead, and what is worked out of each of their pieces. */
import type { Equipment } from '../line/equipment.js'
import type { Exit } from '../line/exit.js'
import type { Floor } from '../line/floor.js'
import type { Taker } from '../line/handshake.js'
import type { Mechanism } from '../line/mechanism.js'
import type { Source } from '../line/source.js'
import { CarryingStage, GivingStage } from './carrying-stage.js'
import { AccumulatingConveyor } from './conveyor/accumulating-conveyor.js'
import { AccumulatingStage } from './conveyor/accumulating-stage.js'
import { BeltConveyor } from './conveyor/belt-conveyor.js'
import { BeltStage } from './conveyor/belt-stage.js'
import { Feed } from './feed.js'
import { longest, type Member, mostInside, Row } from './row.js'
import { Sealer } from './sealer/model.js'
import { SealerStage } from './sealer/stage.js'
import { before as reach, Spell } from './spell.js'
import type { Stage } from './stage.js'
import { Station } from './station/model.js'
import { StationStage } from './station/stage.js'
import { hair } from './travel.js'

/** Cases for which the pieces up to the last sealer may have room: those that may come behind the one that ends a spell. */
const mostRoom = 400

/** A piece with the one before it; null for the first. */
interface Link {
  unit: Equipment
  before: Equipment | null
}

/**
 * What makes the line a row, when it is first simulated: its rings take room. Null where it is none: where ways part or join, sources
 * feed it at several places, sensors, logs or drives of several speeds come in, or a piece does what its stage does not know. Such a line is left to the events.
 */
export function rowOf(
  floor: Floor,
  sources: readonly Source[],
  equipment: readonly Equipment[],
  exit: Exit,
  /** Slots of the clock from this one on are of others than these. */
  others: number,
): (() => Row) | null {
  const [source] = sources
  if (source === undefined || sources.some(({ next }) => next !== source.next)) return null
  const links = chain(source.next, exit)
  if (links === null || links.length !== equipment.length) return null
  const makers = links.map((link) => stageOf(link))
  if (links.length === 0 || makers.includes(null)) return null
  const first = links[0]!.unit
  if (sources.some(({ whenFull }) => whenFull === 'turn-away') && !isConveyor(first)) return null
  if (first.rightOfWay !== null || (sources.length > 1 && isPartOfBed(first))) return null
  const sealers = links.filter(({ unit }) => unit.mechanism instanceof Sealer)
  const anchor = sealers[0] ?? links[0]!
  const [room, rooms] = [roomUpTo(anchor, links, floor), roomUpTo(links.at(-1)!, links, floor)]
  if (sealers.length > 1 || room > mostRoom) return null
  return () => {
    const spell = new Spell(reach + Math.min(mostInside, rooms) + longest + room)
    const members = links.map(({ unit }, index): Member => ({ unit, stage: makers[index]!(spell) }))
    for (const [index, { stage }] of members.entries()) {
      const next = members[index + 1]?.stage
      if (stage instanceof GivingStage) stage.next = next instanceof CarryingStage ? next : null
    }
    const feed = new Feed(spell, sources, first, members[0]!.stage)
    const row = new Row(floor, spell, feed, members, members[links.indexOf(anchor)]!.stage, exit, others)
    floor.clock.watched = others
    floor.clock.ahead = row
    return row
  }
}

/** From the first piece to the exit, each with one way; null where ways part or lead back. */
function chain(first: Taker, exit: Exit): Link[] | null {
  const links: Link[] = []
  let before: Equipment | null = null
  for (let at = first; at !== exit; at = before.next) {
    const unit = at as Equipment
    if (unit.ways.length !== 1 || links.some((link) => link.unit === unit)) return null
    links.push({ unit, before })
    before = unit
  }
  return links
}

/** What makes the stage of a piece; null where it has none. */
function stageOf(link: Link): ((spell: Spell) => Stage) | null {
  const { unit } = link
  const { mechanism } = unit
  if (unit.isLogged || unit.sensing !== null || unit.slowStart !== null || unit.watchers.length > 0)
    return null
  if (mechanism instanceof BeltConveyor)
    return isPlain(link, mechanism) ? (spell) => new BeltStage(spell, unit, mechanism) : null
  if (mechanism instanceof AccumulatingConveyor) {
    const waitsForRoom = link.before?.carries !== true || mechanism.hasZones
    if (!isPlain(link, mechanism)) return null
    return (spell) => new AccumulatingStage(spell, unit, mechanism, waitsForRoom)
  }
  if (mechanism instanceof Sealer)
    return mechanism.isPlain ? (spell) => new SealerStage(spell, unit, mechanism) : null
  if (mechanism instanceof Station)
    return mechanism.isPlain ? (spell) => new StationStage(spell, unit, mechanism) : null
  return null
}

const isConveyor = ({ mechanism }: Equipment): boolean =>
  mechanism instanceof BeltConveyor || mechanism instanceof AccumulatingConveyor

/** Cases close up across its end: of those who are told no, for there is not room on all of it, each would have a time of its own at which it asks again. */
const isPartOfBed = ({ mechanism, next }: Equipment): boolean =>
  mechanism instanceof AccumulatingConveyor && (next as Equipment).mechanism instanceof AccumulatingConveyor

/** Nothing jams on it, its drive needs no run-up, and with a start delay it lies between places. */
function isPlain({ unit, before }: Link, conveyor: BeltConveyor | AccumulatingConveyor): boolean {
  const { keys, jams } = conveyor
  if (jams !== null || keys.acceleration !== undefined) return false
  const isBetweenPlaces = unit.next.takesWhole && !(before?.carries ?? false)
  if (keys['start-delay'] > 0)
    return isBetweenPlaces && conveyor instanceof AccumulatingConveyor && conveyor.mask < reach
  if (before?.mechanism instanceof Sealer) {
    const { keys: machine, gap } = before.mechanism
    if (!keepsUp(keys.speed, machine['belt-speed'], gap, conveyor)) return false
  }
  return unit.next.takesWhole || goesOn(conveyor, (unit.next as Equipment).mechanism, before)
}

/** Cases may go on to what follows before they have left this. */
function goesOn(
  conveyor: BeltConveyor | AccumulatingConveyor,
  next: Mechanism,
  before: Equipment | null,
): boolean {
  if (!(next instanceof BeltConveyor || next instanceof AccumulatingConveyor)) return false
  const { keys } = conveyor
  if (conveyor instanceof BeltConveyor) return keepsUp(next.keys.speed, keys.speed, keys.spacing, next)
  // zones hand over all at one instant, and so may what comes
  if (conveyor.hasZones || (next instanceof AccumulatingConveyor && next.hasZones)) return false
  if (next.keys.speed > keys.speed) return false
  if (next.floor.cases.sizes.longest + keys.spacing > next.keys.length) return false
  if (before?.carries) return before.mechanism instanceof AccumulatingConveyor
  return next instanceof BeltConveyor || next.unit.next.takesWhole
}

/** A case that goes off belts of speed `before` at `speed` is gone before the one that is `gap` behind it can touch it. */
const keepsUp = (speed: number, before: number, gap: number, { floor }: Mechanism): boolean =>
  speed >= before || floor.cases.sizes.longest * (before / speed - 1) < gap - hair

/** Cases that may be inside the pieces up to this one. */
function roomUpTo(last: Link, links: readonly Link[], floor: Floor): number {
  return links.slice(0, links.indexOf(last) + 1).reduce((room, { unit: { mechanism } }) => {
    if (mechanism instanceof Station) return room + mechanism.servers + mechanism.room
    if (mechanism instanceof Sealer) return room + mechanism.mask + 2
    if (mechanism instanceof BeltConveyor || mechanism instanceof AccumulatingConveyor)
      return room + mechanism.keys.length / floor.cases.sizes.shortest + 2
    return room
  }, 0)
}
