/** Measures of pieces that stand side by side, taken together shift by shift: what one asks of "the sealer" when there are two. */
import type { Alike } from '../scenario/alike.js'
import type { Measure } from './measure.js'

/**
 * What adds up is added, of a ratio both its parts; a share of time is the mean over the pieces. Null where numbers of a shift do not tell it: how
 * many cases two places held at most together, or the mean wait of all, is in no number of each.
 */
export function wayTogether({ kind, unit, addsUp }: Measure): 'sum' | 'mean' | null {
  if (addsUp || kind === 'total' || kind === 'count' || kind === 'ratio') return 'sum'
  return kind === 'mean' && unit === 'share' ? 'mean' : null
}

/** Measures of all pieces of each name side by side, in the order of those of its first piece. */
export const measuresTogether = (alike: Alike | undefined, measures: readonly Measure[]): Measure[] =>
  Object.entries(alike?.line ?? {}).flatMap(([name, { pieces }]) => {
    const [first, ...others] = pieces.map((piece) =>
      measures.filter(({ path: [room, owner] }) => room === 'equipment' && owner === piece),
    )
    return first!.flatMap((measure) => {
      const rest = measure.path.slice(2).join('.')
      const each = [
        measure,
        ...others.flatMap((of) => of.find(({ path }) => path.slice(2).join('.') === rest) ?? []),
      ]
      return each.length === pieces.length ? together(name, each) : []
    })
  })

/** One measure of the pieces of a name. */
function together(name: string, each: readonly Measure[]): Measure[] {
  const { isLongStop: _, ...row } = each[0]!
  const [, piece, ...rest] = row.path
  const way = wayTogether(row)
  // key figures of ISO 22400-2 are of one unit
  if (way === null || rest[0] === 'effectiveness') return []
  const sum = (of: (measure: Measure) => number) => each.reduce((total, measure) => total + of(measure), 0)
  const restsOn = each.flatMap((measure) => measure.restsOn ?? [])
  const upsetBy = each.flatMap((measure) => measure.upsetBy ?? [])
  return [
    {
      ...row,
      path: ['equipment', name, ...rest],
      label: row.label.replace(piece!, nameTogether(name, each.length, way)),
      value: () => sum(({ value }) => value()) / (way === 'mean' ? each.length : 1),
      ...(row.over ? { over: () => sum(({ over }) => over!()) } : {}),
      ...(restsOn.length > 0 ? { restsOn } : {}),
      ...(upsetBy.length > 0 ? { upsetBy } : {}),
      isFixed: each.every(({ isFixed }) => isFixed),
      isTogether: true,
    },
  ]
}

/** `sealer (all 2)`, of shares of time `sealer (mean of 2)`. */
export const nameTogether = (name: string, count: number, way: 'sum' | 'mean'): string =>
  `${name} (${way === 'sum' ? 'all' : 'mean of'} ${count})`
