/** What a change of size adds to the time of setting by hand: on average over the changes that come, and how that varies. */
import { meanOf, varianceOf } from '../../scenario/law.js'
import type { Change, Coming } from '../by-hand.js'
import type { SizeSettingKeys } from './keys.js'
import { bySize } from './size-setting.js'

/** Kinds up to which each change is weighed by itself where cases are drawn; above, those that come most often stand for all. */
const most = 100

/** The changes that come: those of the arrivals, or of cases drawn from the mix one after the other. */
function changesOf({ mix, following }: Coming): readonly Change[] {
  if (following) return following
  const common = [...mix.keys()].sort((a, b) => mix[b]! - mix[a]!).slice(0, most)
  return common.flatMap((from) =>
    common.filter((to) => to !== from).map((to) => ({ from, to, perCase: mix[from]! * mix[to]! })),
  )
}

/** Added to the time of a setting, s, and its variance, s2. Derived. */
export function addedBySize(keys: SizeSettingKeys, coming: Coming): { mean: number; variance: number } {
  if (!keys['per-mm'] && !keys.between) return { mean: 0, variance: 0 }
  const [heights, widths] = bySize(coming.scenario, keys)
  const kinds = Object.keys(coming.scenario.cases)
  let [weight, mean, square] = [0, 0, 0]
  for (const { from, to, perCase } of changesOf(coming)) {
    const law = keys.between?.[kinds[from]!]?.[kinds[to]!]
    const time =
      Math.abs(heights[from]! - heights[to]!) +
      Math.abs(widths[from]! - widths[to]!) +
      (law ? meanOf(law) : 0)
    weight += perCase
    mean += perCase * time
    square += perCase * (time * time + (law ? varianceOf(law) : 0))
  }
  if (weight === 0) return { mean: 0, variance: 0 }
  return { mean: mean / weight, variance: Math.max(0, square / weight - (mean / weight) ** 2) }
}
