/** Which class models which kind of equipment: one row a kind. */
import { Equipment } from '../line/equipment.js'
import type { Floor } from '../line/floor.js'
import type { Mechanism } from '../line/mechanism.js'
import { AccumulatingConveyor } from './conveyor/accumulating-conveyor.js'
import { BeltConveyor } from './conveyor/belt-conveyor.js'
import { Divert } from './divert/model.js'
import { Inspect } from './inspect/model.js'
import type { KeysOf, Kind } from './keys.js'
import { Sealer } from './sealer/model.js'
import { Station } from './station/model.js'

type Make<Keys> = (floor: Floor, name: string, keys: Keys) => Mechanism

const models: { [K in Kind]: Make<KeysOf<K>> } = {
  conveyor: (floor, name, keys) =>
    keys.carries === 'belt'
      ? new BeltConveyor(floor, name, keys)
      : new AccumulatingConveyor(floor, name, keys),
  sealer: (floor, name, keys) => new Sealer(floor, name, keys),
  station: (floor, name, keys) => new Station(floor, name, keys),
  divert: (floor, name, keys) => new Divert(floor, name, keys),
  inspect: (floor, name, keys) => new Inspect(floor, name, keys),
}

/** Makes the piece that an entry of the line describes. */
export function makeEquipment(floor: Floor, name: string, keys: KeysOf): Equipment {
  const make = models[keys.type] as Make<KeysOf>
  const isManual = 'run-by' in keys && keys['run-by'] === 'people'
  return new Equipment(floor, make(floor, name, keys), keys.breakdowns, isManual)
}
