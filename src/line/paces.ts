/** Which class models which way of arriving. */
import type { Scenario } from '../scenario/schema.js'
import type { Floor } from './floor.js'
import { HourlyPace } from './hourly-pace.js'
import { LoggedPace } from './logged-pace.js'
import { OrderedPace } from './ordered-pace.js'
import type { Pace } from './pace.js'
import { SteadyPace } from './steady-pace.js'

/** The pace that an entry of `arrivals` describes; `owner` names its random streams. */
export function makePace(floor: Floor, owner: string, keys: Scenario['arrivals'][string]): Pace {
  if (keys.log) return new LoggedPace(keys.log)
  if (keys.orders) return new OrderedPace(floor, owner, keys.orders)
  if (keys['by-hour']) return new HourlyPace(floor, owner, keys['by-hour'], keys.batch)
  const law = keys['time-between'] ?? { law: 'constant' as const, value: keys.batch / keys.rate! }
  const perSecond = keys.rate === undefined ? null : keys.rate / keys.batch
  return new SteadyPace(floor, owner, law, keys.batch, perSecond)
}
