/** Differences as CSV, unrounded. */

import type { DifferenceFigure } from '../../answers/difference-figure.js'
import { csvText, yesOrNo } from '../../report/csv.js'
import type { CompareResult } from './document.js'

/** A row per variant and measure: the variant less the base. */
export function differencesCsv({ differences, pairs, drawn }: CompareResult): string {
  const both = ({ inputs }: DifferenceFigure) => (drawn ? [inputs?.low ?? '', inputs?.high ?? ''] : [])
  const all = [
    ...Object.entries(differences).map(([of, figures]) => ({ of, against: 'base', figures })),
    ...pairs.map(({ of, against, differences: figures }) => ({ of, against, figures })),
  ]
  const rows = all.flatMap(({ of, against, figures }) =>
    Object.entries(figures).map(([measure, each]) => [
      ...[of, against, measure, each.unit, each.mean, each.low, each.high, each.family ?? ''],
      ...[
        each.alone.low,
        each.alone.high,
        each.p,
        each.isShown ?? '',
        each.n,
        each.varianceRatio,
        ...both(each),
      ],
    ]),
  )
  const head = [
    ...['variant', 'against', 'measure', 'unit', 'difference', 'low', 'high', 'family'],
    ...['low alone', 'high alone', 'p', 'shown', 'pairs', 'variance ratio'],
    ...(drawn ? ['low of both kinds', 'high of both kinds'] : []),
  ]
  return csvText([head, ...rows], yesOrNo)
}
