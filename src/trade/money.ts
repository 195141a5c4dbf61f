/** Money by hand: tape, labour, and whether a machine pays. Any one currency; years are whole and count from the purchase. */

import exp from '@stdlib/math-base-special-exp'
import log1p from '@stdlib/math-base-special-log1p'

/**
 * Yearly amount that pays back `capital` over `years` at the yearly interest `rate`: the annuity
 * A = I i (1+i)^n / ((1+i)^n - 1); without interest I / n. Textbook formula of engineering economics.
 */
export function capitalRecovery(capital: number, rate: number, years: number): number {
  if (rate === 0) return capital / years
  return (capital * rate) / (1 - exp(-years * log1p(rate)))
}

/** What machines cost and how it is paid back: `life` in s, `interest` yearly, `shifts` a year. */
interface Invested {
  /** What was bought, by name. */
  capital?: Readonly<Record<string, { amount: number }>> | undefined
  interest?: number | undefined
  life?: number | undefined
  shifts?: number | undefined
}

const hour = 3600
/** A year as scenarios and money count it, s: the Julian year of 365.25 days, by definition (ISO 80000-3, annex; IAU). */
export const secondsOfYear = 365.25 * 24 * hour

/** What all that was bought cost. */
export const invested = ({ capital = {} }: Pick<Invested, 'capital'>): number =>
  Object.values(capital).reduce((sum, { amount }) => sum + amount, 0)

/** `time` s in years of 365.25 days. */
export const inYears = (time: number): number => time / secondsOfYear

/** Capital recovery a shift: the annuity over the shifts of a year; null where nothing was bought or one of the others is not given. Derived. */
export function capitalPerShift({ capital, interest, life, shifts }: Invested): number | null {
  const bought = invested({ capital })
  if (!(bought > 0) || !life || !shifts || interest === undefined) return null
  return capitalRecovery(bought, interest, inYears(life)) / shifts
}

/** Maintenance a shift, as the share `maintenance` a year of what was bought; null where one of them is not given. Derived. */
export function maintenancePerShift({
  capital,
  shifts,
  maintenance,
}: Pick<Invested, 'capital' | 'shifts'> & { maintenance?: number | undefined }): number | null {
  if (maintenance === undefined || !shifts || capital === undefined) return null
  return (maintenance * invested({ capital })) / shifts
}

/** Energy of `power` W drawn for `time` s at `price` a kilowatt-hour. Definition of the unit. */
export const energyCost = (power: number, price: number, time: number): number =>
  (power / 1000) * price * (time / hour)

/** Labour of `people` paid `wage` an hour for `time` s. Derived. */
export const labourCost = (people: number, wage: number, time: number): number =>
  wage * people * (time / hour)

/** Years until level yearly savings have paid `investment`, without interest; infinite where nothing is saved. Textbook formula. */
export const simplePayback = (investment: number, yearlySaving: number): number =>
  yearlySaving > 0 ? investment / yearlySaving : Infinity

/**
 * Net present value: minus `investment`, plus each year's saving (the first after one year), discounted at the yearly `rate`. Textbook formula
 * of engineering economics.
 *
 * A saving of downtime counts only where the sealer sets the rate, or where lost cases cannot be made up in the shift.
 */
export function netPresentValue(investment: number, savings: readonly number[], rate: number): number {
  const worth = savings.reduceRight((later, saving) => (saving + later) / (1 + rate), 0)
  return worth - investment
}

/** Failed closures that must be spared to earn back an extra cost of tape, at a cost each. Same number of cases for both. Derived. */
export const breakEvenFailures = (extraTapeCost: number, costOfFailure: number): number =>
  extraTapeCost / costOfFailure
