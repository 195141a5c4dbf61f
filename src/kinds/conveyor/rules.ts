/** Rules between the keys of a conveyor: cases and zones fit on it. */
import { millimetres, type PieceRules, tooLong } from '../../scenario/piece-rules.js'
import { wholeZones, zonesFor } from '../../trade/zones.js'
import type { ConveyorKeys } from './keys.js'

/** Keys of a drive that gravity does not have. */
const ofDrives = ['speeds', 'acceleration'] as const

export const conveyorRules: PieceRules<ConveyorKeys> = {
  check({ length, zone, carries, breakdowns, ...keys }, { path, longest }, report) {
    for (const key of ofDrives)
      if (keys[key] !== undefined && carries === 'gravity')
        report(
          [...path, key],
          'conflict',
          'a gravity conveyor has no drive that could run otherwise',
          'remove it, or set `carries: accumulating`',
          true,
        )
    if (longest && longest.length > length)
      report([...path, 'length'], 'conflict', ...tooLong(longest, length, 'this conveyor'))
    else if (zone !== undefined && longest && zonesFor(longest.length, zone) > wholeZones(length, zone))
      report(
        [...path, 'zone'],
        'conflict',
        `the case \`${longest.name}\` takes ${zonesFor(longest.length, zone)} zones, and ${wholeZones(length, zone)} fit on this conveyor`,
        `a length of at least ${millimetres(zonesFor(longest.length, zone) * zone)}, or other zones`,
      )
    if (zone !== undefined && carries !== 'accumulating')
      report(
        [...path, 'zone'],
        'conflict',
        'only an accumulating conveyor has zones',
        'remove it, or set `carries: accumulating`',
        true,
      )
    if (breakdowns && carries === 'gravity')
      report(
        [...path, 'breakdowns'],
        'conflict',
        'a gravity conveyor has no drive that could fail',
        'remove it',
        true,
      )
  },
}
