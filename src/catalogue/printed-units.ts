/** Quantities as they are printed: SI numbers in the units that the scenario's `display` asks for. */
import { unitSize } from '../scenario/quantity.js'
import type { Amount } from './figure.js'
import { briefly } from './unit-name.js'

export type Display = 'metric' | 'us'

/** A unit as it is printed: its word, and its size in SI. */
interface PrintedUnit {
  word: string
  size: number
}

const unit = (word: string, size: number): PrintedUnit => ({ word, size })

/** The units that figures are printed in. */
export function unitsFor(display: Display) {
  const isUs = display === 'us'
  return {
    length: isUs ? unit('in', unitSize('length', 'in')) : unit('mm', 0.001),
    distance: isUs ? unit('ft', unitSize('length', 'ft')) : unit('m', 1),
    speed: isUs ? unit('ft/min', unitSize('speed', 'ft/min')) : unit('m/min', unitSize('speed', 'm/min')),
    rate: unit('cases/min', 1 / 60),
    mass: isUs ? unit('lb', unitSize('mass', 'lb')) : unit('kg', 1),
    share: unit('%', 0.01),
    force: isUs ? unit('lbf', unitSize('force', 'lbf')) : unit('N', 1),
    strength: isUs ? unit('lbf/in', unitSize('strength-of-width', 'lbf/in')) : unit('N/cm', 100),
  }
}

/** The unit of an amount of metres that is printed as a small one. */
const small = 'm, small'

/** The same length, to be printed in the unit for small ones. */
export const inSmall = ({ value }: Amount): Amount => ({ value, unit: small })

/** The unit of seconds that are printed as hours. */
const long = 's, long'

/** The same time, to be printed in hours; what is not known stays so. */
export const inLong = <T extends { unit: string }>(figure: T | undefined): T | undefined =>
  figure && { ...figure, unit: long }

function unitOf(name: string, display: Display): PrintedUnit {
  const { rate, distance, length, speed, mass, share } = unitsFor(display)
  const units = new Map([
    ['cases/s', rate],
    ['m', distance],
    ['m/case', { ...distance, word: `${distance.word}/case` }],
    [small, length],
    [long, unit('h', unitSize('time', 'h'))],
    ['m/s', speed],
    ['kg', mass],
    ['share', share],
    ['count', unit('', 1)],
  ])
  return units.get(name) ?? unit(name, 1)
}

/** How each unit of a result is printed, with the factor from SI; money and others that are not listed stand as they are. */
export function printedUnit(name: string, display: Display): { factor: number; word: string } {
  const { word, size } = unitOf(name, display)
  return { factor: 1 / size, word }
}

/** Figures of a unit: drawings in inches go to hundredths of an inch. */
const digitsOf = (word: string): number => (word === 'in' ? 4 : 3)

/** What stands where nothing is known. */
export const nothing = '–'

/** An amount as people read it, where the words around it say what it is of; a dash where it is not known. */
export function amountText(amount: Amount, display: Display): string {
  const { value, unit: name } = briefly(amount)
  if (value === null) return nothing
  switch (name) {
    case 's':
      return wordsFor(display).time(value)
    case 'cases':
      return `${wordsFor(display).count(value)} cases`
    case 'rolls':
      return figures(value)
    default: {
      const { word, size } = unitOf(name === 'm/case' ? 'm' : name, display)
      return `${figures(value / size, digitsOf(word))} ${word}`.trimEnd()
    }
  }
}

/** Two texts of amounts as a span, the unit once where it is one: `8.9 to 9.3 cases/min`. */
export function spanText(low: string, high: string): string {
  const unit = /^[\d.\u2009]+(\s\D+)$/.exec(high)?.[1]
  return `${unit !== undefined && low.endsWith(unit) ? low.slice(0, -unit.length) : low} to ${high}`
}

/** Digits with thousands apart by a thin space. */
export const thousandsApart = (digits: string): string => digits.replace(/\B(?=(\d{3})+(?!\d))/g, '\u2009')

/** A number with `figures` figures and no more decimals than it needs; thousands apart by a thin space. */
export function figures(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return value > 0 ? 'without limit' : 'unknown'
  if (value === 0) return '0'
  const whole = Math.abs(value) >= 10 ** digits
  const rounded = whole ? Math.round(value) : Number(value.toPrecision(digits))
  const [before, after] = String(rounded).split('.') as [string, string | undefined]
  // past the range of plain decimals a number keeps its power of ten
  if (/e/.test(before) || (after !== undefined && /e/.test(after))) return String(rounded)
  const spaced = thousandsApart(before)
  return after === undefined ? spaced : `${spaced}.${after}`
}

const inHours = (seconds: number): string => {
  const minutes = Math.round(seconds / 60)
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60]
  if (hours >= 24) return `${figures(hours, 4)} h`
  return [hours > 0 ? `${hours} h` : '', rest > 0 ? `${rest} min` : ''].filter((part) => part).join(' ')
}

/** Says SI numbers in words of `display`: each takes SI and gives the number with its unit. */
export function wordsFor(display: Display) {
  const units = unitsFor(display)
  const sized =
    ({ word, size }: PrintedUnit) =>
    (value: number) =>
      `${figures(value / size, digitsOf(word))} ${word}`
  return {
    /** Small lengths: mm or in. */
    length: sized(units.length),
    /** Long lengths: m or ft. */
    distance: sized(units.distance),
    speed: sized(units.speed),
    rate: sized(units.rate),
    mass: sized(units.mass),
    time: (seconds: number) => {
      if (!Number.isFinite(seconds)) return seconds > 0 ? 'never' : 'unknown'
      if (seconds < 120) return `${figures(seconds)} s`
      return seconds < 3600 ? `${figures(seconds / 60)} min` : inHours(seconds)
    },
    share: sized(units.share),
    temperature: (kelvin: number) =>
      display === 'us' ? `${figures((kelvin * 9) / 5 - 459.67)} degF` : `${figures(kelvin - 273.15)} degC`,
    force: sized(units.force),
    /** Strength a width of tape. */
    strength: sized(units.strength),
    count: (number: number) => figures(number, Math.abs(number) < 100 ? 3 : 4),
  }
}
export type Words = ReturnType<typeof wordsFor>

const metric = /(?<![\w.])(\d+(?:\.\d+)?) (mm|cm|m\/min|m\/s|m|kg)(?![\w/])/g

/** A value of the format in the units of `display`, wherever metric lengths, speeds and masses stand in it. */
export function inUnitsOf(text: string, display: Display): string {
  if (display === 'metric') return text
  const { length, distance, speed, mass } = wordsFor(display)
  return text.replace(metric, (_, number: string, word: string) => {
    const value = Number(number)
    if (word === 'kg') return mass(value)
    if (word.includes('/')) return speed(value * unitSize('speed', word))
    return word === 'm' ? distance(value) : length(value * unitSize('length', word))
  })
}
