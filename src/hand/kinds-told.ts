/** Which of many kinds of cases are told by name: those that come most, and the extremes; the others are told together. */
import { outsideSize } from '../scenario/outside.js'
import type { Scenario } from '../scenario/schema.js'

/** So many are all told. */
const mostTold = 20
/** Of more than that so many that come most. */
const mostCommon = 10

/** The kinds that are not told by name, together: sides in m, least and most. */
export interface OtherKinds {
  count: number
  /** Of what comes. */
  share: number
  length: readonly [number, number]
  width: readonly [number, number]
  height: readonly [number, number]
}

/** Names of the kinds that are told, in the order of the scenario, and the others; `mix`: the share of each in what comes. */
export function kindsTold(
  { cases }: Scenario,
  mix: readonly number[],
): { told: ReadonlySet<string>; others: OtherKinds | null } {
  const kinds = Object.entries(cases).map(([name, kind], index) => ({
    ...{ name, share: mix[index]!, weight: kind.weight ?? 0 },
    ...outsideSize(kind),
  }))
  if (kinds.length <= mostTold) return { told: new Set(kinds.map(({ name }) => name)), others: null }
  const extremes = (['length', 'width', 'height', 'weight'] as const).flatMap((key) => [
    kinds.reduce((most, each) => (each[key] > most[key] ? each : most)),
    kinds.reduce((least, each) => (each[key] < least[key] ? each : least)),
  ])
  const common = [...kinds].sort((a, b) => b.share - a.share).slice(0, mostCommon)
  const chosen = new Set([...common, ...extremes])
  const told = kinds.filter((each) => chosen.has(each))
  const others = kinds.filter((each) => !chosen.has(each))
  const range = (key: 'length' | 'width' | 'height') =>
    others.reduce<readonly [number, number]>(
      ([low, high], each) => [Math.min(low, each[key]), Math.max(high, each[key])],
      [Infinity, -Infinity],
    )
  return {
    told: new Set(told.map(({ name }) => name)),
    others: {
      count: others.length,
      share: others.reduce((sum, { share }) => sum + share, 0),
      ...{ length: range('length'), width: range('width'), height: range('height') },
    },
  }
}
