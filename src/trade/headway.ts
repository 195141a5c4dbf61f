/** Headway: how close cases may follow through a taping head, and the rate that this allows. */

/** Timing of one head's cutting arm: belt travel that wipes the trailing leg, m; time to swing back and cover the blade, s. */
interface CutTiming {
  wipeTravel: number
  reset: number
}

/**
 * Gap that must follow a case at belt speed `speed`, m: the arm must have wiped the trailing leg and swung back
 * before the next leading face arrives. Common practice, no source; derived from the arm's motion.
 */
export function gapNeeded(minimumGap: number, cuts: readonly CutTiming[], speed: number): number {
  return cuts.reduce((gap, cut) => Math.max(gap, cut.wipeTravel + speed * cut.reset), minimumGap)
}

/**
 * Cases a second that belts of `speed` m/s can pass, one case of `length` after the other with `gap`. For a mix give the
 * mean length by share of cases: headway rises in a straight line with length, so that is exact. Derived.
 */
export const steadyRate = (speed: number, length: number, gap: number): number => speed / (length + gap)

/** What a belt speed brings: m/s, m, cases a second. */
export interface RatePoint {
  speed: number
  gap: number
  rate: number
}

/** The steady rate at each of `speeds`: it rises ever more slowly, towards `rateCeiling`. Derived. */
export const rateCurve = (
  speeds: readonly number[],
  length: number,
  minimumGap: number,
  cuts: readonly CutTiming[],
): RatePoint[] =>
  speeds.map((speed) => {
    const gap = gapNeeded(minimumGap, cuts, speed)
    return { speed, gap, rate: steadyRate(speed, length, gap) }
  })

/** Cases a second that no belt speed exceeds: one a reset of the slowest arm; infinite where no arm needs time. Derived. */
export const rateCeiling = (cuts: readonly CutTiming[]): number =>
  1 / cuts.reduce((slowest, cut) => Math.max(slowest, cut.reset), 0)

/**
 * Belt speed, m/s, from which another m/s brings less than `worth` cases a second (or another m/min less than `worth` cases a
 * minute: the same number, in cases a metre). 0 where it never brings as much; infinite where it always does.
 *
 * With l + travel = a, the rate v / (a + v reset) has the slope a / (a + v reset)^2, which falls to `worth` at
 * v = (sqrt(a / worth) - a) / reset. The arm that asks for the largest gap governs; as speed rises, slower arms take over, and the
 * slope falls at each step. Derived.
 */
export function speedOfLittleGain(
  worth: number,
  length: number,
  minimumGap: number,
  cuts: readonly CutTiming[],
): number {
  const demands = [
    { fixed: length + minimumGap, reset: 0 },
    ...cuts.map(({ wipeTravel, reset }) => ({ fixed: length + wipeTravel, reset })),
  ].sort((a, b) => b.fixed - a.fixed)
  let governs = demands[0]!
  let from = 0
  for (;;) {
    const { fixed, reset } = governs
    const slowsAt =
      1 / fixed < worth ? 0 : reset === 0 ? Infinity : (Math.sqrt(fixed / worth) - fixed) / reset
    const takesOverAt = (other: typeof governs) => (fixed - other.fixed) / (other.reset - reset)
    const next = demands
      .filter((other) => other.reset > reset)
      .sort((a, b) => takesOverAt(a) - takesOverAt(b))[0]
    if (next === undefined || slowsAt <= takesOverAt(next)) return Math.max(from, slowsAt)
    from = takesOverAt(next)
    governs = next
  }
}

/**
 * Time from case to case, s: folding goes on while the case before clears its headway, so the longer of both; where folding
 * varies the mean is no shorter than this. Derived.
 */
export const cycleTime = (headway: number, folding: number): number => Math.max(headway, folding)
