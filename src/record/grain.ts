/** The grain of a clock, found from what it showed: logs are often rounded more coarsely than they are written. */

const candidates = [3600, 1800, 900, 600, 300, 60, 30, 15, 10, 5, 1] as const

/** So many times that are all whole in a grain are no chance: at the next finer one that would be less than 2^-20. */
const enough = 20

/** Which grains all times so far are whole in. */
export class Divisors {
  private readonly whole = candidates.map((grain) => ({ grain, isWhole: true }))
  private count = 0

  take(time: number): void {
    this.count++
    for (const each of this.whole) each.isWhole &&= time % each.grain === 0
  }

  get coarsest(): number {
    return this.count < enough ? 0 : (this.whole.find(({ isWhole }) => isWhole)?.grain ?? 0)
  }

  isFinerThan(grain: number): boolean {
    return this.whole.some((each) => each.grain === grain && !each.isWhole)
  }
}

/** Grain of many times or lengths, s; 0: finer than a second, or too few to tell. */
export function grainOf(times: readonly number[]): number {
  const divisors = new Divisors()
  for (const time of times) if (!Number.isNaN(time)) divisors.take(time)
  return divisors.coarsest
}
