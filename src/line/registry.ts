/** Which class models which kind of equipment: one row a kind. */
import type { Scenario } from '../scenario/schema.js'
import { AccumulatingConveyor } from './accumulating-conveyor.js'
import { BeltConveyor } from './belt-conveyor.js'
import { Divert } from './divert.js'
import { Equipment } from './equipment.js'
import type { Floor } from './floor.js'
import { Inspect } from './inspect.js'
import type { Mechanism } from './mechanism.js'
import { Sealer } from './sealer.js'
import { Station } from './station.js'

type Keys = Scenario['line'][string]
type Makers = {
  [Kind in Keys['type']]: (floor: Floor, name: string, keys: Extract<Keys, { type: Kind }>) => Mechanism
}

const makers: Makers = {
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
export function makeEquipment(floor: Floor, name: string, keys: Keys): Equipment {
  const make = makers[keys.type] as (floor: Floor, name: string, keys: Keys) => Mechanism
  const isManual = 'run-by' in keys && keys['run-by'] === 'people'
  return new Equipment(floor, make(floor, name, keys), keys.breakdowns, isManual)
}
