/** Buffers by hand: what a stretch of conveyor holds, how long it lasts, and how much lost output it brings back. */

import exp from '@stdlib/math-base-special-exp'
import expm1 from '@stdlib/math-base-special-expm1'
import { wholeZones, zonesFor } from './zones.js'

/** Rounding of a quotient that is meant to be whole. */
const hair = 1e-9

/** Cases of `caseLength` that stand on `length` of conveyor in contact or `spacing` apart; the last needs none behind it. Metres. Derived. */
export const contactCapacity = (length: number, caseLength: number, spacing = 0): number =>
  Math.floor((length + spacing) / (caseLength + spacing) + hair)

/** Cases of `caseLength` on a conveyor of zones, each taking whole ones. Metres. Derived. */
export const zoneCapacity = (length: number, zone: number, caseLength: number): number =>
  Math.floor(wholeZones(length, zone) / zonesFor(caseLength, zone))

/** Time, s, that `places` free places last at `rate` cases a second. Derived. */
export const bufferTime = (places: number, rate: number): number => places / rate

/** Time, s, until a queue is gone: its cases over what is sealed faster than it arrives; infinite where that is not faster. Derived. */
export function drainTime(queue: number, sealed: number, arriving: number): number {
  if (queue === 0) return 0
  return sealed > arriving ? queue / (sealed - arriving) : Infinity
}

/** Least buffer around the machine that sets the rate, in mean stop times. Common practice, no source. */
export const leastBufferInStops = 2

/** A machine that fails: mean running time to failure and mean time to repair, s. Never fails: infinite `meanUp`. */
export interface Unreliable {
  meanUp: number
  meanRepair: number
}

const downRatio = ({ meanUp, meanRepair }: Unreliable): number => meanRepair / meanUp

/** The same with buffers that never fill or empty: that of the worst machine, which no buffer exceeds. Same sources. */
export const efficiencyBound = (machines: readonly Unreliable[]): number =>
  1 / (1 + machines.reduce((worst, machine) => Math.max(worst, downRatio(machine)), 0))

/** I, 1 and exp(k N) of the formulas below; all divided by exp(k N) where that would overflow, for both halves of a fraction hold them. */
const levels = (k: number, buffer: number) => ({
  fill: Math.abs(k * buffer) < 1e-9 ? buffer : expm1(-Math.abs(k) * buffer) / -Math.abs(k),
  empty: k > 0 ? exp(-k * buffer) : 1,
  full: k > 0 ? 1 : exp(k * buffer),
})

/**
 * Output of two machines of one speed with a buffer worth `buffer` s of flow between them, as a share of that speed; running and
 * repair times exponential, only a running machine fails. Infinite `buffer`, or a machine that is never down, gives the bound.
 *
 * With failure and repair rates p and r, a = (p1 + p2) / (r1 + r2), k = r1 a + p2 / a - p1 - r2 and
 * I = (exp(k N) - 1) / k, or N where k is 0:
 *
 *   E = [I (1 + 1/a) + 1/p2 + exp(k N) / p1]
 *     / [I (2 + a + 1/a) + (1 + (p1 + p2) / r1) / p2 + (1 + (p1 + p2) / r2) exp(k N) / p1]
 *
 * For machines alike it is r (2 + N (r + p)) / (2 (r + 2 p) + N (r + p)^2). Zimmern 1956; Gershwin, Manufacturing Systems
 * Engineering (1994), continuous-material model.
 */
export function twoMachineEfficiency(buffer: number, first: Unreliable, second: Unreliable = first): number {
  if (buffer === Infinity || downRatio(first) === 0 || downRatio(second) === 0)
    return efficiencyBound([first, second])
  const [p1, p2] = [1 / first.meanUp, 1 / second.meanUp]
  const [r1, r2] = [1 / first.meanRepair, 1 / second.meanRepair]
  const a = (p1 + p2) / (r1 + r2)
  const k = r1 * a + p2 / a - p1 - r2
  const { fill, empty, full } = levels(k, buffer)
  const made = fill * (1 + 1 / a) + empty / p2 + full / p1
  const whole =
    fill * (2 + a + 1 / a) + (empty / p2) * (1 + (p1 + p2) / r1) + (full / p1) * (1 + (p1 + p2) / r2)
  return made / whole
}

/**
 * Share of the output lost for want of a buffer that one worth `buffer` s of flow brings back: (E(N) - E(0)) / (E(inf) - E(0)),
 * 0 to 1. For rare failures about k / (k + 2) with k mean repair times of buffer. 0 where nothing is lost. Derived
 * from `twoMachineEfficiency`.
 */
export function shareRecovered(buffer: number, first: Unreliable, second: Unreliable = first): number {
  const without = twoMachineEfficiency(0, first, second)
  const most = efficiencyBound([first, second])
  return most > without ? (twoMachineEfficiency(buffer, first, second) - without) / (most - without) : 0
}

/**
 * Share of a steady flow that a machine keeps out by its stops: it makes `speed` times the flow while it runs, and the buffer before
 * it holds `buffer` s of the flow. Running (at that speed) and repair times exponential, only a running machine fails; 0 to 1.
 *
 * With failure and repair rates p and r, k = p / (s - 1) - r and I = (exp(k N) - 1) / k, or N where k is 0, the densities of the
 * level while the machine is down and up are in the ratio s - 1 to 1 and rise by exp(k N), so that
 *
 *   kept out = (exp(k N) / r) / (I s / (s - 1) + exp(k N) / r + s / p)
 *
 * Where the machine is no faster than the flow the buffer stays full: 1 - s r / (p + r). Derived, in the continuous-material model
 * of `twoMachineEfficiency`.
 */
export function shareKeptOut(buffer: number, machine: Unreliable, speed: number): number {
  const down = downRatio(machine)
  if (down === 0) return Math.max(0, 1 - speed)
  const least = Math.max(0, 1 - speed / (1 + down))
  if (speed <= 1 || buffer === Infinity) return least
  const [p, r] = [1 / machine.meanUp, 1 / machine.meanRepair]
  const k = p / (speed - 1) - r
  const { fill, empty, full } = levels(k, buffer)
  return full / r / ((fill * speed) / (speed - 1) + full / r + (empty * speed) / p)
}

/**
 * Share of the flow lost for want of a buffer before such a machine that one worth `buffer` s of flow brings back, 0 to 1; 0 where
 * nothing is lost, or where no buffer helps. Derived from `shareKeptOut`.
 */
export function shareOfFlowRecovered(buffer: number, machine: Unreliable, speed: number): number {
  const without = shareKeptOut(0, machine, speed)
  const least = shareKeptOut(Infinity, machine, speed)
  return without > least ? (without - shareKeptOut(buffer, machine, speed)) / (without - least) : 0
}
