/** Units as result documents name them: those of money hold the currency of the scenario. */
import type { Scenario } from '../scenario/schema.js'
import type { Unit } from './row.js'

/** The one currency of a scenario; empty where nothing is priced. */
export const currencyOf = ({ money, tape }: Scenario): string => money?.currency ?? tape.price?.currency ?? ''

const ofThousand = ' per 1000 cases'

/** Unit of a measure in a document. */
export function unitName(unit: Unit, currency: string): string {
  if (unit === 'money') return (currency + ofThousand).trim()
  return unit === 'money/yr' ? `${currency}/yr` : unit
}

/** Whether a figure is one of the money that 1000 cases cost. */
export const isPerThousand = (unit: string): boolean => unit.endsWith(ofThousand)

/** The unit where the words around it say that it is of 1000 cases: the currency alone. */
export const briefUnit = (unit: string): string =>
  isPerThousand(unit) ? unit.slice(0, -ofThousand.length) : unit

/** A figure for such a place. */
export const briefly = <T extends { unit: string }>(figure: T): T => ({
  ...figure,
  unit: briefUnit(figure.unit),
})
