/** An amount worked out by hand, in the words for its unit. */

import type { Words } from '../catalogue/printed-units.js'
import { figures } from '../catalogue/printed-units.js'
import { briefUnit } from '../catalogue/unit-name.js'

/** A number with its unit; null where it is without limit or not known. */
export interface Amount {
  value: number | null
  unit: string
}

/** What stands where nothing is known. */
const nothing = '–'

/** An amount in the words for its unit. */
export function amountText({ value, unit }: Amount, words: Words): string {
  if (value === null) return nothing
  switch (unit) {
    case 'cases/s':
      return words.rate(value)
    case 's':
      return words.time(value)
    case 'share':
      return words.share(value)
    case 'm':
    case 'm/case':
      return words.distance(value)
    case 'kg':
      return words.mass(value)
    case 'cases':
      return `${words.count(value)} cases`
    case 'count':
    case 'rolls':
      return figures(value)
    default:
      return `${figures(value)} ${briefUnit(unit)}`
  }
}
