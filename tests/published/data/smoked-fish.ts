/**
 * Concentrations of Listeria monocytogenes in 103 samples of smoked fish, CFU/g, most below a limit of detection: Busschaert et al., Int. J. Food
 * Microbiology 138 (2010) 260-269. The data set `smokedfish` of the R package fitdistrplus.
 */
import type { Seen } from '../../../src/statistics/fitting/sample.js'

/** What is known of each, and how often it stands. */
export const smokedFish: readonly (readonly [Seen, number])[] = [
  [{ between: [0, 0.04] }, 54],
  [{ between: [0, 100] }, 2],
  [{ between: [0.04, 10] }, 26],
  [{ at: 15 }, 1],
  [{ between: [0.04, 100] }, 8],
  [{ over: 100 }, 2],
  [{ between: [0, 1] }, 1],
  [{ over: 1 }, 1],
  [{ between: [0.04, 1] }, 7],
  [{ between: [1, 100] }, 1],
]
