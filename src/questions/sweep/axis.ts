/** Axes of the charts of a sweep: factors with their unit, and what is measured with its own. */

import { printedUnit } from '../../catalogue/printed-units.js'
import { grouped } from '../../report/format.js'
import { numbers, spanAxis } from '../../report/marks/axis.js'
import type { Factor, SweepMeasure, SweepResult } from './document.js'
import { measureSubject, valueText } from './words.js'

/** Most values of a factor that are written along its axis. */
const mostValues = 13

/** The axis of a factor with its values as ticks, some left out where they are many. */
export function factorAxis(factor: Factor) {
  const { values, unit, path } = factor
  const [first, last] = [values[0]!, values.at(-1)!]
  const room = (last - first) * 0.06
  const every = Math.ceil(values.length / mostValues)
  const ticks = values.filter((_, index) => index % every === 0)
  return spanAxis(
    { min: first - room, max: last + room, ticks, decimals: 0 },
    unit === '' ? path : `${path}, ${unit}`,
    { textOf: (value) => valueText(value, { unit: '' }) },
  )
}

/** Beside a length: minutes of buffer at the places of its values, on an axis across. */
export function minutesAxis(factor: Factor, minutes: readonly number[], position: 'top' | 'right') {
  const { min, max, afterBuildTicks } = factorAxis(factor)
  return numbers({
    ...{ title: 'minutes of buffer at the target, by hand calculation', min, max, isPlain: true },
    textOf: (value) => grouped(minutes[factor.values.indexOf(value)] ?? Number.NaN, 1),
    more: { position, afterBuildTicks },
    moreOfTicks: { autoSkip: false },
  })
}

/** `Good cases out, cases/min`, the unit alone, and how a figure is brought into it. */
export function measureAxis(measure: SweepMeasure, { display }: SweepResult) {
  const { factor, word } = printedUnit(measure.unit, display)
  return {
    factor,
    word,
    title: word === '' ? measureSubject(measure) : `${measureSubject(measure)}, ${word}`,
  }
}
