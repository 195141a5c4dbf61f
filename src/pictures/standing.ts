/** Who stands before the line in a recorded stretch, and how many cases are on it. */
import type { Stretch } from '../shifts/stretch.js'
import { holdingAt } from './steps.js'

/** Of each source the number of its cases that stand before the line, from each of these instants on. */
export type Standing = readonly (readonly (readonly [number, number])[])[]

/** Of each source how many of its cases stand before the line, from each instant on at which that changes. */
export const standingOf = ({ sources, cases }: Stretch): Standing =>
  sources.map(({ whenFull }, source) => {
    // of those who are told no at once nobody stands
    if (whenFull === 'turn-away') return []
    const changes = cases.flatMap(({ came, path }): [number, number][] => {
      const taken = path[0]?.[1] ?? Infinity
      const isWaiting = came[0] === source && taken > came[1]
      return isWaiting ? [came[1], taken].map((time, by) => [time, 1 - 2 * by]) : []
    })
    changes.sort((a, b) => a[0] - b[0] || b[1] - a[1])
    let count = 0
    return changes.map(([time, by]): [number, number] => {
      count += by
      return [time, count]
    })
  })

/** The number that holds at `time`; 0 before the first. */
export const countAt = (steps: readonly (readonly [number, number])[], time: number): number =>
  holdingAt(steps, time) ?? 0

/** Cases on the line at `time`: of those that have come and not left, those that do not stand before it. */
export const countOnLine = ({ held }: Pick<Stretch, 'held'>, standing: Standing, time: number): number =>
  countAt(held, time) - standing.reduce((sum, steps) => sum + countAt(steps, time), 0)
