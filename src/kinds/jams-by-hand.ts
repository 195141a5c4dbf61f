/** Jams by hand: how many of each kind the cases bring, what each takes, and which cases they spoil. */
import { isolation, type JamKeys, type JamsKeys, jamsOf } from '../scenario/jams.js'
import type { Scenario } from '../scenario/schema.js'
import { type Coming, type StopKind, weighed } from './by-hand.js'

/** A piece that may jam. */
export interface MayJam {
  jams?: JamsKeys | undefined
}

/** Chance that a case of each kind of case jams so. */
const chancesOf = ({ cases }: Pick<Scenario, 'cases'>, jam: JamKeys): number[] =>
  Object.values(cases).map((kind) => Math.min(1, jam.chance * jam['tape-factor'] * kind['jam-factor']))

/** Jams of a piece, a stop for each kind of jam. A case that one kind spoils meets none of those that stand after it. */
export function jamStops({ jams }: MayJam, { scenario, mix }: Pick<Coming, 'scenario' | 'mix'>): StopKind[] {
  const kept = mix.map(() => 1)
  return jamsOf(jams).map(({ name, keys }): StopKind => {
    const chances = chancesOf(scenario, keys)
    const perCase = weighed(
      chances.map((chance, kind) => chance * kept[kind]!),
      mix,
    )
    for (const [kind, chance] of chances.entries()) kept[kind]! *= 1 - chance * keys['case-lost']
    return {
      key: 'jams',
      perCase,
      work: keys.clear,
      ...(name === null ? {} : { jam: name }),
      ...(keys.isolate === undefined ? {} : { added: { mean: isolation(keys), variance: 0 } }),
      ...(keys.by === undefined ? {} : { by: keys.by }),
    }
  })
}

/** Share of the cases of each kind of case that no jam of a piece spoils. */
export const keptInJams = ({ jams }: MayJam, scenario: Pick<Scenario, 'cases'>): number[] =>
  jamsOf(jams).reduce<number[]>(
    (kept, { keys }) =>
      chancesOf(scenario, keys).map((chance, kind) => kept[kind]! * (1 - chance * keys['case-lost'])),
    Object.keys(scenario.cases).map(() => 1),
  )
