/** Lengths as drawings in inches and feet have them: `15 3/4 in`, `6'3"`, `33' 6 1/2"`, `6 ft 3 in`. */

const feetMark = `(?:ft|feet|foot|'|\u2019|\u2032)`
const inchMark = `(?:in|inch|inches|"|\u201d|\u2033|'')`
const decimal = '\\d+\\.?\\d*|\\.\\d+'
const fraction = '\\d{1,3}/[1-9]\\d{0,2}'
/** Inches: a decimal number, a fraction, or a whole number and a fraction. */
const inches = `(?:(?<whole>\\d+)[ -]+)?(?<part>${fraction})|(?<number>${decimal})`

const inInches = new RegExp(`^\\s*(?:${inches})\\s*${inchMark}\\s*$`)
const inFeet = new RegExp(`^\\s*(?<feet>\\d+)\\s*${feetMark}\\s*-?\\s*(?:${inches})\\s*${inchMark}\\s*$`)

/** Regular expression source for editors: without names, which they need not know. */
export const feetAndInchesPattern =
  `^\\s*(\\d+\\s*${feetMark}\\s*-?\\s*)?((\\d+[ -]+)?${fraction}|${decimal})\\s*${inchMark}\\s*$`.replaceAll(
    '(?:',
    '(',
  )

/** Inches in a text that has a fraction of an inch, or feet and inches; null in any other. */
export function inchesIn(written: string): number | null {
  const groups = (inFeet.exec(written) ?? inInches.exec(written))?.groups
  if (!groups) return null
  const { feet, whole, part, number } = groups as Partial<Record<string, string>>
  // a plain number of inches is a quantity like any other
  if (feet === undefined && part === undefined) return null
  const [above, below] = part === undefined ? [Number(number), 1] : part.split('/').map(Number)
  const value = Number(feet ?? 0) * 12 + Number(whole ?? 0) + above! / below!
  return Number.isFinite(value) ? value : null
}
