import { fewest } from './evidence.js'
import { binomialAtMost } from './quantile.js'

/**
 * Whether what happened in so many of these shifts can be left out of account: if it came in a share of shifts that matters, so few
 * would be seen with at most the chance `risk`. It matters where the share times the figure is more than `within`, both of one unit:
 * as if it took a whole shift's worth each time.
 */
export const tooRareToMatter = (
  happened: number,
  shifts: number,
  figure: number,
  within: number,
  risk: number,
): boolean =>
  Math.abs(figure) <= within || binomialAtMost(happened, shifts, within / Math.abs(figure)) <= risk

/** A count of each shift, by its place among the numbers of the shift. */
interface Counted {
  index: number
}

/** A kind of stop that has happened in too few shifts. */
export interface Unseen<Stop extends Counted> {
  stop: Stop
  happened: number
}

/** Counts the shifts in which each kind of stop happened. */
export class StopsSeen<Stop extends Counted> {
  private shifts = 0
  private readonly happened: number[]

  constructor(private readonly stops: readonly Stop[]) {
    this.happened = stops.map(() => 0)
  }

  /** Takes the numbers of the next shift. */
  add(values: ArrayLike<number>): void {
    this.shifts++
    for (const [kind, { index }] of this.stops.entries()) if (values[index]! > 0) this.happened[kind]!++
  }

  /** The rarest kind that has not happened in enough shifts and may matter to the figure; null where all is seen. */
  unseen(figure: number, within: number, risk: number): Unseen<Stop> | null {
    let rarest: Unseen<Stop> | null = null
    for (const [kind, stop] of this.stops.entries()) {
      const happened = this.happened[kind]!
      if (happened >= fewest || (rarest !== null && rarest.happened <= happened)) continue
      if (!tooRareToMatter(happened, this.shifts, figure, within, risk)) rarest = { stop, happened }
    }
    return rarest
  }
}
