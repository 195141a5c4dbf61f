/** Textbook formulas that the program does not need itself, to hold its answers against. */
import type { Unreliable } from '../../src/trade/buffer.js'

/**
 * Output of machines of one speed in a row without buffers, as a share of that speed: 1 / (1 + sum of repair over running time).
 * Only running machines fail. Buzacott, International Journal of Production Research 5 (1967); Gershwin, Manufacturing Systems
 * Engineering (1994).
 */
export const unbufferedEfficiency = (machines: readonly Unreliable[]): number =>
  1 / (1 + machines.reduce((sum, { meanUp, meanRepair }) => sum + meanRepair / meanUp, 0))
