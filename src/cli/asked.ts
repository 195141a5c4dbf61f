/** What the options of a study ask of its figures: precision and requirements, by the names of its measures. */

import { measureName, measureNamed, type StudyMeasure, studyMeasures } from '../answers/figures.js'
import { parseRequirement, type Requirement, RequirementError } from '../answers/requirement.js'
import type { Line } from '../line/line.js'
import { near } from '../scenario/nearest.js'
import { printable, shown } from '../scenario/problems.js'
import { parseQuantity } from '../scenario/quantity.js'
import { UsageError } from './io.js'
import { type StudyOptions, usualMost } from './options.js'

export interface Asked {
  precision: { share: number; of: readonly StudyMeasure[]; most: number } | null
  requirements: readonly (Requirement | 'precision')[]
}

/** Reads the options against the measures that this line has. Throws `UsageError`. */
export function askedOf(options: StudyOptions, { columns }: Line, campaign: number): Asked {
  const measures = studyMeasures(columns, campaign)
  if (options.of.length > 0 && options.precision === undefined)
    throw new UsageError('--of names what --precision is about: give --precision too, such as "1 %"')
  const of = (options.of.length > 0 ? options.of : ['throughput']).map((name) =>
    measureAsked('--of', name, measures),
  )
  const requirements = options.require.map((text) => requirement(text, measures, options))
  const precision =
    options.precision === undefined
      ? null
      : { share: shareOf(options.precision), of, most: options.shifts ?? usualMost }
  return { precision, requirements }
}

/** Reads a share, such as `1 %`, above 0 and below 1. */
function shareOf(text: string): number {
  const parsed = parseQuantity(text, 'share')
  if (!('value' in parsed)) throw new UsageError(`--precision ${shown(text)}: ${parsed.rule}; ${parsed.fix}`)
  if (!(parsed.value > 0 && parsed.value < 1))
    throw new UsageError(`--precision ${shown(text)}: it must lie above 0 % and below 100 %, such as "1 %"`)
  return parsed.value
}

function requirement(
  text: string,
  measures: readonly StudyMeasure[],
  options: StudyOptions,
): Requirement | 'precision' {
  if (text.trim() === 'precision') {
    if (options.precision === undefined)
      throw new UsageError('--require precision: no precision is asked for; give --precision, such as "1 %"')
    return 'precision'
  }
  return requirementOf(text, measures)
}

/** The measure of that name. Throws `UsageError` with the nearest names. */
export function measureAsked(option: string, name: string, measures: readonly StudyMeasure[]): StudyMeasure {
  const measure = measureNamed(measures, name)
  if (!measure) throw new UsageError(`${option}: ${unknown(name, measures)}`)
  return measure
}

/** Reads a requirement against the measures of a line. Throws `UsageError`. */
export function requirementOf(
  text: string,
  measures: readonly StudyMeasure[],
  option = '--require',
): Requirement {
  try {
    return parseRequirement(text, measures, (name) => unknown(name, measures))
  } catch (error) {
    if (!(error instanceof RequirementError)) throw error
    throw new UsageError(`${option} ${printable(JSON.stringify(text))}: ${printable(error.message)}`)
  }
}

/** Names of measures shown where none is near. */
const usualNames = ['throughput', 'output', 'target-held', 'time-in-system']

/** Says that there is no such measure, with the nearest names. */
export function unknown(name: string, measures: readonly StudyMeasure[]): string {
  const names = measures.map(measureName)
  // a name without its path is understood by its end
  const ending = names.filter((each) => each.endsWith(`.${name}`))
  const guesses = ending.length > 0 ? ending.slice(0, 3) : near(name, names)
  const fix =
    guesses.length > 0
      ? `did you mean \`${guesses.join('`, `')}\`?`
      : `known are ${usualNames.filter((each) => names.includes(each)).join(', ')} and all others of result.json by their path, such as \`${names.find((each) => each.startsWith('equipment.')) ?? names[0]}\``
  return `this line has no measure \`${printable(name.slice(0, 80))}\`; ${fix}`
}
