/** Measures and requirements as they are asked for, by the names that a line has. */

import type { MeasureKey } from '../catalogue/of-line.js'
import { misuse, readAt } from '../scenario/fault.js'
import { near } from '../scenario/nearest.js'
import { printable } from '../scenario/printable.js'
import { measureName, measureNamed, type StudyMeasure } from './figures.js'
import { parseRequirement, type Requirement, valueWritten } from './requirement.js'

/** The measure of that name. Throws `Fault` `asked` with the nearest names. */
export function measureAsked(option: string, name: string, measures: readonly StudyMeasure[]): StudyMeasure {
  const measure = measureNamed(measures, name)
  if (!measure) throw misuse(`${option}: ${unknown(name, measures)}`)
  return measure
}

/** Reads a requirement against the measures of a line. Throws `Fault` `asked`. */
export function requirementOf(
  text: string,
  measures: readonly StudyMeasure[],
  option = '--require',
): Requirement {
  return readAt(`${option} ${printable(JSON.stringify(text))}`, () =>
    parseRequirement(text, measures, (name) => unknown(name, measures)),
  )
}

/** Names of measures shown where none is near. */
const usualNames: readonly MeasureKey[] = ['throughput', 'output', 'target-held', 'time-in-system']

/** Says that there is no such measure, with the nearest names. */
export function unknown(name: string, measures: readonly StudyMeasure[]): string {
  const names = measures.map(measureName)
  // a name without its path is understood by its end
  const ending = names.filter((each) => each.endsWith(`.${name}`))
  const guesses = ending.length > 0 ? ending.slice(0, 3) : near(name, names)
  const fix =
    guesses.length > 0
      ? `did you mean \`${guesses.join('`, `')}\`?`
      : `measures are ${usualNames.filter((each) => names.includes(each)).join(', ')}, and all others of result.json by their path, such as \`${names.find((each) => each.startsWith('equipment.')) ?? names[0]}\``
  return `this line has no measure \`${printable(name.slice(0, 80))}\`; ${fix}`
}

/** An amount above 0 in the unit of a measure. Throws `Fault` `asked`. */
export const amountWritten = (where: string, text: string, measure: StudyMeasure): number =>
  readAt(where, () => {
    const value = valueWritten(text, measure)
    if (value > 0) return value
    throw misuse('it must be above 0')
  })
