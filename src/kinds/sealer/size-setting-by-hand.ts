/** Changes of size by hand: how many there are, and what they add to the time of setting, on average over those that come. */
import { meanOf, varianceOf } from '../../scenario/law.js'
import { sideOf, varies } from '../../scenario/outside.js'
import { meanDifference } from '../../scenario/size-law.js'
import type { Change, Coming } from '../by-hand.js'
import type { SizeSettingKeys } from './keys.js'
import { perMetre } from './size-setting.js'

/** Kinds up to which each change is weighed by itself where cases are drawn; above, those that come most often stand for all. */
const most = 100

/** The changes that come from kind to kind: those of the arrivals, or of cases drawn from the mix one after the other. */
function betweenKinds({ mix, following }: Coming): readonly Change[] {
  if (following) return following
  const common = [...mix.keys()].sort((a, b) => mix[b]! - mix[a]!).slice(0, most)
  return common.flatMap((from) =>
    common.filter((to) => to !== from).map((to) => ({ from, to, perCase: mix[from]! * mix[to]! })),
  )
}

/** The changes from one case to the next of a kind that varies in height or width: all that do not follow one of another kind. */
function withinKinds({ scenario, mix, following }: Coming): readonly Change[] {
  return Object.values(scenario.cases).flatMap((kind, index) => {
    const share = mix[index]!
    if (share === 0 || !varies(kind, ['height', 'width'])) return []
    const others = following
      ? following.reduce((sum, { to, perCase }) => sum + (to === index ? perCase : 0), 0)
      : share * (1 - share)
    return [{ from: index, to: index, perCase: share - others }]
  })
}

/** Settings a case. */
export const settingsPerCase = (coming: Coming): number =>
  withinKinds(coming).reduce((sum, { perCase }) => sum + perCase, coming.changes)

/** Added to the time of a setting, s, and its variance, s2; how much sizes that vary within a kind spread is left out of that. Derived. */
export function addedBySize(keys: SizeSettingKeys, coming: Coming): { mean: number; variance: number } {
  if (!keys['per-mm'] && !keys.between) return { mean: 0, variance: 0 }
  const kinds = Object.entries(coming.scenario.cases)
  const differ = (side: 'height' | 'width', from: number, to: number) => {
    const per = perMetre(keys, side)
    const [one, other] = [sideOf(kinds[from]![1], side), sideOf(kinds[to]![1], side)]
    return typeof one === 'number' && typeof other === 'number'
      ? Math.abs(per * one - per * other)
      : per * meanDifference(one, other)
  }
  let [weight, mean, square] = [0, 0, 0]
  for (const { from, to, perCase } of [...betweenKinds(coming), ...withinKinds(coming)]) {
    const law = keys.between?.[kinds[from]![0]]?.[kinds[to]![0]]
    const time = differ('height', from, to) + differ('width', from, to) + (law ? meanOf(law) : 0)
    weight += perCase
    mean += perCase * time
    square += perCase * (time * time + (law ? varianceOf(law) : 0))
  }
  if (weight === 0) return { mean: 0, variance: 0 }
  return { mean: mean / weight, variance: Math.max(0, square / weight - (mean / weight) ** 2) }
}
