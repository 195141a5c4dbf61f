/** Conveyors by hand: gaps made at a step of speed, rollers and zones under a case, and how hard a belt may brake. */
import type { Basis } from './basis.js'

/** Standard gravity, m/s2. */
const gravity = 9.80665

/** Gap, m, between cases of `length` that leave one belt back to back for a faster one; negative where the next is slower: they jam. Derived. */
export const gapMade = (length: number, speed: number, nextSpeed: number): number =>
  length * (nextSpeed / speed - 1)

/** Least ratio of speeds, next over first, that draws cases back to back apart by `gap`, m. Derived. */
export const speedRatioFor = (length: number, gap: number): number => (length + gap) / length

/** Belts of a sealer over the speed at which cases arrive, at least; 1.5 is usual too, and never less than 1. From memory, low confidence. */
export const infeedSpeedRatio = 1.2

/** Widest roller pitch, m, that keeps `rollers` under the shortest case: three, four for soft bottoms. Common practice, no source. */
export const widestRollerPitch = (shortest: number, rollers = 3): number => shortest / rollers

/** Least zone, m: the longest case and a margin of 75 to 150 mm. From memory, low confidence. */
export const leastZone = (longest: number, margin = 0.075): number => longest + margin

/** Friction of corrugated board, static, lowest and highest; it changes with surface and repeats (TAPPI T 815). */
export const frictions: readonly { on: string; low: number; high: number; basis: Basis }[] = [
  { on: 'corrugated board', low: 0.3, high: 0.6, basis: 'from memory, low confidence' },
  { on: 'plastic belt', low: 0.3, high: 0.5, basis: 'from memory, low confidence' },
  { on: 'rubber belt', low: 0.5, high: 0.8, basis: 'from memory, low confidence' },
  { on: 'steel', low: 0.2, high: 0.35, basis: 'from memory, low confidence' },
]

/** Hardest change of speed, m/s2, at which a case does not slip. Derived; for design 1 to 1.5 m/s2 is kept (from memory). */
export const noSlipAcceleration = (friction: number): number => friction * gravity

/** Hardest change of speed, m/s2, at which a case does not tip: base along the travel and height of its centre of mass, m. Derived. */
export const noTipAcceleration = (base: number, centreHeight: number): number =>
  (gravity * base) / 2 / centreHeight

/** Way to a stop, m, from `speed` m/s at a steady `deceleration` m/s2. Derived. */
export const stopDistance = (speed: number, deceleration: number): number =>
  (speed * speed) / (2 * deceleration)
