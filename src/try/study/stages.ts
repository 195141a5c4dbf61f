/** After how many shifts a study tells what it knows, and when it knows enough. */
import { wholeOf } from '../../catalogue/figure.js'
import type { RunResult } from '../../questions/run/document.js'
import { onAverage } from '../../questions/run/summary.js'

/** The first within a blink, then each about twice as many. */
const usual = [20, 50, 100, 200, 500, 1000] as const
/** A scenario that asks for more gets its figures from the command line. */
const mostShifts = 5000

/** Numbers of shifts after which figures are told; the number that the scenario asks for is among them. */
export function stagesOf(asked: number): number[] {
  const own = Math.max(2, Math.min(asked, mostShifts))
  return [...new Set([...usual, own])].sort((a, b) => a - b)
}

/** Enough: the rate within this share of itself, the share of shifts within so much on either side. Project rule. */
const [ofRate, ofShare] = [0.003, 0.03]

/** Whether a line is known well enough that more shifts would change nothing that is decided by it. */
export function isPrecise(result: RunResult): boolean {
  const { throughput, 'target-held': held } = result.measures
  if (!throughput || onAverage(result) === 'open') return false
  const { low, high } = wholeOf(throughput)
  const { mean } = throughput
  if (mean === null || low === null || high === null || high - low > 2 * ofRate * mean) return false
  if (!held) return true
  const share = wholeOf(held)
  return share.low === null || share.high === null || share.high - share.low <= 2 * ofShare
}
