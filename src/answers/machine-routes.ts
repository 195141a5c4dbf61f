/** Whether machines of a line follow one another, and whether cases can pass them by: what adding them up needs to know. */
import {
  arrivalWays,
  exitName,
  lineWays,
  reachedFrom,
  startsOf,
  targetsOf,
  type Ways,
} from '../scenario/routes.js'
import type { Scenario } from '../scenario/schema.js'

/** Which pieces cases come to, whatever kind they are. */
export class Routes {
  private readonly ways: Ways
  private readonly starts: string[]

  constructor(private readonly scenario: Scenario) {
    this.ways = lineWays(scenario)
    this.starts = startsOf(arrivalWays(scenario))
  }

  /** All that is reached from `starts` without passing through any of `closed`. */
  private reached(starts: readonly string[], closed: readonly string[] = []): Set<string> {
    return reachedFrom(starts, (name) => (closed.includes(name) ? [] : targetsOf(this.ways, name)))
  }

  private after(name: string): Set<string> {
    return this.reached(targetsOf(this.ways, name))
  }

  /** Pieces that cases come to after one of `machines`, these left out. */
  behind(machines: readonly string[]): string[] {
    const after = machines.map((name) => this.after(name))
    return Object.keys(this.scenario.line).filter(
      (name) => !machines.includes(name) && after.some((each) => each.has(name)),
    )
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
    const where = machines.length === 1 ? `after ${machines[0]}` : 'after them'
    if (!isOnce || !this.allPass(machines)) return 'still in the line, passed twice, or went another way'
    return isEmptyAtStart
      ? `still in the line ${where} at the end`
      : `in the line ${where}: more at the end than at the start`
  }
}
