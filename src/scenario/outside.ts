/** The outside size of a case of the scenario, whichever way it was given. */
import { flutes, outsideFromInside, type Size } from '../trade/case.js'
import type { CaseKind } from './schema.js'

/** Outside size, m; from the inside size and the flute where that is what the file gives. */
export function outsideSize(kind: CaseKind): Size {
  if (kind.inside) return outsideFromInside(kind.inside, flutes[kind.flute!])
  return { length: kind.length!, width: kind.width!, height: kind.height! }
}
