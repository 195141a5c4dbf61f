/** Time to set a sealer for another size: a law of its own, by how far the sizes differ, and by which follows which. */
import type { Draw } from '../../engine/draw.js'
import { unset } from '../../engine/unset.js'
import type { Floor } from '../../line/floor.js'
import { outsideSize } from '../../scenario/outside.js'
import type { Scenario } from '../../scenario/schema.js'
import type { SizeSettingKeys } from './keys.js'

/** What each kind adds as it differs from another in height and width: its size times the time a metre, s. */
export function bySize(
  { cases }: Scenario,
  { 'per-mm': perMm }: SizeSettingKeys,
): [Float64Array, Float64Array] {
  const each = (side: 'height' | 'width') => {
    const perMetre = 1000 * (perMm?.[side] ?? 0)
    return Float64Array.from(Object.values(cases), (kind) => perMetre * outsideSize(kind)[side])
  }
  return [each('height'), each('width')]
}

export class SizeSetting {
  /** What was drawn, s. */
  value = unset
  private readonly time: Draw
  private readonly heights: Float64Array
  private readonly widths: Float64Array
  /** By kind before and kind after; null where it is all the same which follows which. */
  private readonly between: readonly (Draw | null)[] | null

  constructor(floor: Floor, owner: string, keys: SizeSettingKeys) {
    this.time = floor.draws(owner, 'size setting', keys.time)
    ;[this.heights, this.widths] = bySize(floor.scenario, keys)
    const kinds = Object.keys(floor.scenario.cases)
    const { between } = keys
    this.between = between
      ? kinds.flatMap((from) =>
          kinds.map((to) => {
            const law = between[from]?.[to]
            return law ? floor.draws(owner, `size setting ${from} to ${to}`, law) : null
          }),
        )
      : null
  }

  /** From one kind of case to the other. */
  next(from: number, to: number): void {
    this.time.next()
    this.value =
      this.time.value +
      Math.abs(this.heights[from]! - this.heights[to]!) +
      Math.abs(this.widths[from]! - this.widths[to]!)
    const more = this.between?.[from * this.heights.length + to]
    if (!more) return
    more.next()
    this.value += more.value
  }
}
