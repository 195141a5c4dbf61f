/** Time to set a sealer for another size: a law of its own, by how far the sizes differ, and by which follows which. */
import type { Draw } from '../../engine/draw.js'
import { unset } from '../../engine/unset.js'
import type { CaseIndex, Cases } from '../../line/cases.js'
import type { Floor } from '../../line/floor.js'
import { outsideSize, varies } from '../../scenario/outside.js'
import type { SizeSettingKeys } from './keys.js'

/** Time that a metre of difference in a side adds, s. */
export const perMetre = ({ 'per-mm': perMm }: SizeSettingKeys, side: 'height' | 'width'): number =>
  1000 * (perMm?.[side] ?? 0)

export class SizeSetting {
  /** What was drawn, s. */
  value = unset
  private readonly time: Draw
  private readonly cases: Cases
  /** What each kind adds as it differs from another in height and width: its size times the time a metre, s. */
  private readonly heights: Float64Array
  private readonly widths: Float64Array
  /** Of kinds that vary in height or width: every case is another size; null where none does. */
  private readonly isEachOther: readonly boolean[] | null
  /** The same of the case that the machine is set for, where cases vary, s. */
  private height = unset
  private width = unset
  private readonly perHeight: number
  private readonly perWidth: number
  /** By kind before and kind after; null where it is all the same which follows which. */
  private readonly between: readonly (Draw | null)[] | null

  constructor(floor: Floor, owner: string, keys: SizeSettingKeys) {
    this.time = floor.draws(owner, 'size setting', keys.time)
    this.cases = floor.cases
    const kinds = Object.entries(floor.scenario.cases)
    this.perHeight = perMetre(keys, 'height')
    this.perWidth = perMetre(keys, 'width')
    this.heights = Float64Array.from(kinds, ([, kind]) => this.perHeight * outsideSize(kind).height)
    this.widths = Float64Array.from(kinds, ([, kind]) => this.perWidth * outsideSize(kind).width)
    const isEachOther = kinds.map(([, kind]) => varies(kind, ['height', 'width']))
    this.isEachOther = isEachOther.includes(true) ? isEachOther : null
    const { between } = keys
    this.between = between
      ? kinds.flatMap(([from]) =>
          kinds.map(([to]) => {
            const law = between[from]?.[to]
            return law ? floor.draws(owner, `size setting ${from} to ${to}`, law) : null
          }),
        )
      : null
  }

  /** Whether a case of kind `to` is of another size than one of kind `from`. */
  isForOther(from: number, to: number): boolean {
    return from !== to || (this.isEachOther !== null && this.isEachOther[to]!)
  }

  /** The machine is set for this case. */
  isFor(item: CaseIndex): void {
    if (this.isEachOther === null) return
    this.height = this.perHeight * this.cases.height[item]!
    this.width = this.perWidth * this.cases.width[item]!
  }

  /** From the case that it was set for, of kind `from`, to `item`. */
  next(from: number, item: CaseIndex): void {
    const { cases, heights, widths } = this
    const to = cases.kind[item]!
    this.time.next()
    this.value =
      this.isEachOther === null
        ? this.time.value + Math.abs(heights[from]! - heights[to]!) + Math.abs(widths[from]! - widths[to]!)
        : this.time.value +
          Math.abs(this.height - this.perHeight * cases.height[item]!) +
          Math.abs(this.width - this.perWidth * cases.width[item]!)
    const more = this.between?.[from * heights.length + to]
    if (!more) return
    more.next()
    this.value += more.value
  }
}
