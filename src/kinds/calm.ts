/** Which lines are rows of pieces that can be worked ahead while nothing disturbs them. */
import { Calm } from '../line/calm/calm.js'
import type { CalmPiece } from '../line/calm/calm-piece.js'
import { CalmSource } from '../line/calm/calm-source.js'
import { Row } from '../line/calm/row.js'
import type { Equipment } from '../line/equipment.js'
import type { Exit } from '../line/exit.js'
import type { Floor } from '../line/floor.js'
import type { Source } from '../line/source.js'
import { AccumulatingConveyor } from './conveyor/accumulating-conveyor.js'
import { BeltConveyor } from './conveyor/belt-conveyor.js'
import { CalmAccumulating } from './conveyor/calm-accumulating.js'
import { CalmBelt } from './conveyor/calm-belt.js'
import { CalmSealer } from './sealer/calm-sealer.js'
import { Sealer } from './sealer/model.js'
import { CalmStation } from './station/calm-station.js'
import { Station } from './station/model.js'

export function calmOf(floor: Floor, sources: readonly Source[], equipment: readonly Equipment[], exit: Exit): Calm | null {
  if (sources.length !== 1 || sources[0]!.pace.mayBeLate) return null
  const row = new Row(2048)
  const pieces: CalmPiece[] = []
  const inRow: Equipment[] = []
  let at: any = sources[0]!.next
  let before: Equipment | null = null
  while (at !== exit) {
    const piece: Equipment = at
    if (inRow.includes(piece) || piece.ways.length !== 1) return null
    const made = calmPieceOf(row, piece, before)
    if (made === null) return null
    inRow.push(piece)
    pieces.push(made)
    before = piece
    at = piece.next
  }
  if (inRow.length !== equipment.length || inRow.length === 0) return null
  if (pieces.filter((each) => each instanceof CalmSealer).length > 1) return null
  for (const [index, piece] of pieces.entries())
    if (piece instanceof CalmSealer) {
      const next = pieces[index + 1]
      piece.isBeforePlace = inRow[index]!.next.takesWhole
      if (next instanceof CalmBelt || (next instanceof CalmAccumulating && !next.waitsForRoom)) piece.follower = next
    }
  if (sources[0]!.whenFull === 'turn-away' && !inRow[0]!.carries) return null
  if (pieces[0] instanceof CalmSealer && sources[0]!.whenFull === 'turn-away') return null
  const calm = new Calm(floor, row, new CalmSource(row, sources[0]!, pieces[0]!), inRow, pieces, exit)
  calm.anchor = pieces.find((each) => each instanceof CalmSealer) ?? pieces[0]!
  calm.others = Math.max(sources[0]!.slot, ...inRow.map((each) => each.slot)) + 1
  floor.clock.watched = sources[0]!.slot
  floor.clock.ahead = calm
  return calm
}

function calmPieceOf(row: Row, unit: Equipment, before: Equipment | null): CalmPiece | null {
  const { mechanism } = unit
  if (unit.logged !== null || unit.sensing !== null || unit.slowStart !== null || unit.watchers.length > 0) return null
  if (mechanism instanceof AccumulatingConveyor || mechanism instanceof BeltConveyor) {
    const { keys } = mechanism
    if (mechanism.jams || !unit.next.takesWhole || keys.acceleration !== undefined) return null
    if (before && before.carries && !(before.mechanism instanceof Sealer)) return null
    if (before && before.mechanism instanceof Sealer && keys.speed < before.mechanism.keys['belt-speed']) return null
    if (mechanism instanceof BeltConveyor) return new CalmBelt(row, unit, mechanism)
    return keys['start-delay'] > 0 ? null : new CalmAccumulating(row, unit, mechanism, before !== null && before.carries)
  }
  if (mechanism instanceof Sealer) {
    if (mechanism.dwell !== null || mechanism.changesWhenIdle || mechanism.keys.acceleration !== undefined) return null
    return new CalmSealer(row, unit, mechanism)
  }
  if (mechanism instanceof Station) {
    if (mechanism.jams || mechanism.servers !== 1 || mechanism.paces.length > 0) return null
    return new CalmStation(row, unit, mechanism)
  }
  return null
}
