/** What is told of a sealer besides its states, stops, heads and effectiveness. */
import type { Level } from '../../engine/tally.js'
import type { Measure } from '../../line/measure.js'

/** Cases in it, `level`, and those spoilt in jams, `lost`. */
export function sealerMeasures(name: string, level: Level, lost: () => number): Measure[] {
  const path = (key: string) => ['equipment', name, 'measures', key]
  return [
    {
      path: path('held'),
      label: `Cases in ${name}, mean over time`,
      unit: 'cases',
      kind: 'mean',
      value: () => level.mean(),
    },
    {
      path: path('cases-lost'),
      label: `Cases spoilt in jams a shift, ${name}`,
      unit: 'cases',
      kind: 'count',
      value: lost,
    },
  ]
}
