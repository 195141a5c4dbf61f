/** In what share of what the inputs may be a promise is kept, by draws of them of which each was judged by shifts. */
import { chanceLimits } from './events.js'

/** Draws by how they were judged: kept, missed, or not told by so many shifts as were allowed. */
export interface KeptDraws {
  kept: number
  missed: number
  open: number
}

/**
 * Share of the draws that keep, and limits of the share of all that the inputs may be. The draws and their luck know nothing of each
 * other, so the number of those that were judged to keep is binomial, and its limits exact (Clopper & Pearson, Biometrika 26 (1934)
 * 404-413). With q the share that keeps, and a judgement that is wrong with at most the chance `wrongly` either way, a draw is judged to
 * keep with a chance of at most q + (1 - q) wrongly, and judged to keep or left open with one of at least q (1 - wrongly): the
 * limits are moved by what that allows. A draw that was not told counts as missed below and as kept above. At least one draw.
 */
export function shareOfDraws(
  { kept, missed, open }: KeptDraws,
  confidence: number,
  wrongly: number,
): { share: number; low: number; high: number } {
  const draws = kept + missed + open
  const { low } = chanceLimits(kept, draws, confidence)
  const { high } = chanceLimits(kept + open, draws, confidence)
  return {
    share: kept / draws,
    low: Math.max(0, (low - wrongly) / (1 - wrongly)),
    high: Math.min(1, high / (1 - wrongly)),
  }
}
