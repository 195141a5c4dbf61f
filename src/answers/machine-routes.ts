/** Whether machines of a line follow one another, and whether cases can pass them by: what adding them up needs to know. */
import { arrivalWays, exitName, lineWays } from '../scenario/routes.js'
import type { Scenario } from '../scenario/schema.js'

/** Which pieces cases come to, whatever kind they are. */
export class Routes {
  private readonly targets: ReadonlyMap<string, string[]>
  private readonly starts: string[]

  constructor(private readonly scenario: Scenario) {
    this.targets = new Map(
      [...lineWays(scenario)].map(([name, ways]) => [name, ways.map(({ target }) => target)]),
    )
    this.starts = [...arrivalWays(scenario).values()].flat().map(({ target }) => target)
  }

  /** All that is reached from `starts` without passing through any of `closed`. */
  private reached(starts: readonly string[], closed: readonly string[] = []): Set<string> {
    const reached = new Set(starts)
    // a set keeps the order in which it was filled, so that this visits what is added on the way
    for (const name of reached)
      if (!closed.includes(name)) for (const target of this.targets.get(name) ?? []) reached.add(target)
    return reached
  }

  private after(name: string): Set<string> {
    return this.reached(this.targets.get(name)!)
  }

  /** Another of `machines` comes later on, and none of it leads back. */
  isFollowed(name: string, machines: readonly string[]): boolean {
    const after = this.after(name)
    return machines.some((other) => other !== name && after.has(other) && !this.after(other).has(name))
  }

  isOnLoop(name: string): boolean {
    return this.after(name).has(name)
  }

  /** There is no way out of the line past all of `names`. */
  allPass(names: readonly string[]): boolean {
    return !this.reached(this.starts, names).has(exitName)
  }

  /** What the difference is between the cases that leave `machines` and those that leave the line. */
  restLabel(machines: readonly string[]): string {
    const isOnce = machines.every((name) => machines.every((other) => !this.after(name).has(other)))
    const { shift } = this.scenario
    const isEmptyAtStart = shift.start === 'empty' && shift.campaign === 1
    const where = machines.length === 1 ? `behind ${machines[0]}` : 'behind them'
    if (!isOnce || !this.allPass(machines)) return 'still in the line, passed twice or by another way'
    return isEmptyAtStart
      ? `still in the line ${where} at the end`
      : `in the line ${where}: more at the end than at the start`
  }
}
