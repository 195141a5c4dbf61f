/** What people write for a unit that the format writes otherwise, and units that it does not have: each with what it means. */
import { poundForcePerInch } from '../trade/us-units.js'
import { type Dimension, dimensions, hasUnit, unitSize } from './units.js'

type Sizes = Record<string, number>

/** Sizes in SI, by name, of names that mean the same. */
const all = (entries: readonly (readonly [size: number, ...names: string[]])[]): Sizes =>
  Object.fromEntries(entries.flatMap(([size, ...names]) => names.map((name) => [name, size])))

const prefixes = all([
  [1, ''],
  [1e-6, 'micro'],
  [1e-3, 'milli'],
  [1e-2, 'centi'],
  [1e-1, 'deci'],
  [1e3, 'kilo'],
])
/** A unit in words, with prefixes and in the plural. */
const inWords = (size: number, ...names: string[]): Sizes =>
  all(
    Object.entries(prefixes).map(
      ([prefix, factor]) =>
        [factor * size, ...names.flatMap((name) => [`${prefix}${name}`, `${prefix}${name}s`])] as const,
    ),
  )

const inch = unitSize('length', 'in')
const foot = unitSize('length', 'ft')
const pound = unitSize('mass', 'lb')
const poundForce = unitSize('force', 'lbf')

/** Yards, pounds and pounds-force as in `units`, SI prefixes by the SI Brochure, 9th edition; bar: the same, table 8; kgf: NIST SP 811, B.8. */
const spelled: Partial<Record<Dimension, Sizes>> = {
  length: {
    ...inWords(1, 'metre', 'meter'),
    ...all([
      [1e3, 'km'],
      [1e-1, 'dm'],
      [1e-6, 'µm', 'μm', 'micron', 'microns'],
      [1e6, 'Mm'],
      [inch, '"', '”', '″', "''", 'inch', 'inches'],
      [foot, "'", '’', '′', 'foot', 'feet'],
      [3 * foot, 'yds', 'yard', 'yards'],
    ]),
  },
  time: {
    ...inWords(1, 'second'),
    ...all([
      [1, 'sec', 'secs'],
      [1e-3, 'msec'],
      [1e-6, 'us', 'µs', 'μs'],
      [1e6, 'Ms'],
      [60, 'mins', 'minute', 'minutes'],
      [3600, 'hr', 'hrs', 'hour', 'hours'],
      [86_400, 'day', 'days'],
      [604_800, 'wks', 'week', 'weeks'],
      [unitSize('time', 'yr'), 'yrs', 'year', 'years'],
    ]),
  },
  mass: {
    ...inWords(1e-3, 'gram', 'gramme'),
    ...all([
      [1e-6, 'mg'],
      [1, 'kilo', 'kilos'],
      [1e3, 'tonne', 'tonnes'],
      [pound, 'lbs', 'pound', 'pounds'],
      [pound / 16, 'ounce', 'ounces'],
    ]),
  },
  force: {
    ...inWords(1, 'newton'),
    ...all([
      [1e-3, 'mN'],
      [1e-2, 'cN'],
      [10, 'daN'],
      [1e6, 'MN'],
      [9.80665, 'kgf'],
    ]),
  },
  speed: all([
    [foot / 60, 'fpm'],
    [foot, 'fps'],
  ]),
  acceleration: all([
    [1, 'm/s²', 'm/s^2', 'm/s/s'],
    [1e-3, 'mm/s²', 'mm/s^2', 'mm/s/s'],
    [foot, 'ft/s²', 'ft/s^2', 'ft/s/s'],
  ]),
  'case-rate': all([[1 / 60, 'cpm']]),
  pressure: all([
    [1e5, 'bar'],
    [100, 'mbar', 'hPa'],
    [1e9, 'GPa'],
    [1e-3, 'mPa'],
    [1e6, 'N/mm2', 'N/mm²'],
    [1, 'N/m2', 'N/m²', 'pascal'],
  ]),
  share: all([
    [0.01, 'percent', 'per cent', 'pct'],
    [1e-3, '‰', 'permille', 'per mille', 'per thousand', 'per thousand cases'],
    [1e-6, 'ppm'],
  ]),
  power: {
    ...inWords(1, 'watt'),
    ...all([
      [1e6, 'MW'],
      [1e-3, 'mW'],
    ]),
  },
  cuts: { cut: 1 },
  yearly: all([
    [1, '/yr', '/year', '/a', 'a year', 'per annum', 'yearly'],
    [12, '/month', 'per month', 'a month', 'monthly'],
  ]),
}

/** Signs of scales that begin elsewhere: the unit as the format writes it. */
const degrees: Record<string, string> = {
  '°C': 'degC',
  '℃': 'degC',
  C: 'degC',
  celsius: 'degC',
  '°F': 'degF',
  '℉': 'degF',
  F: 'degF',
  fahrenheit: 'degF',
  kelvin: 'K',
}

/** What a quotient is made of: above the stroke, and below it with or without a number. */
const quotients: Partial<Record<Dimension, [above: (unit: string) => number | null, below: Dimension]>> = {
  speed: [(unit) => sizeOf('length', unit), 'time'],
  'case-rate': [(unit) => (/^(?:cases?)?$/i.test(unit) ? 1 : null), 'time'],
  'edge-crush': [(unit) => forceOf(unit), 'length'],
  'strength-of-width': [(unit) => forceOf(unit), 'length'],
}

/** A force; beside a width a pound or an ounce is one too. */
function forceOf(unit: string): number | null {
  if (unit === 'lb') return poundForce
  if (unit === 'oz' || unit === 'ozf') return (poundForcePerInch / 16) * inch
  return sizeOf('force', unit)
}

/** Below the stroke: `min`, `8h`, `25 mm`. */
const divisor = /^(\d+(?:\.\d+)?)?\s*(\D.*)$/

function quotient(dimension: Dimension, written: string): number | null {
  const parts = quotients[dimension]
  const match = /^(.*?)\s*\/\s*(.+)$/.exec(written) ?? /^(.*?)\s*\b(?:per|an?|in)\b\s*(.+)$/.exec(written)
  if (!parts || !match) return null
  const [above, below] = [parts[0](match[1]!), divisor.exec(match[2]!)]
  const size = below ? sizeOf(parts[1], below[2]!) : null
  const count = Number(below?.[1] ?? 1)
  if (above === null || size === null || !(count > 0)) return null
  // how much of a day is worked is not said
  if (dimension === 'case-rate' && size >= unitSize('time', 'd')) return null
  return above / (count * size)
}

/** Shares: so many of a number of cases. */
function ofCases(written: string): number | null {
  const match = /^(?:\/|per|in|of|out of)\s*([1-9]\d{0,11})\s*(?:cases?)?$/i.exec(written)
  return match ? 1 / Number(match[1]) : null
}

/**
 * Size in SI of a unit in whatever spelling; null where it has none in this dimension that is certain. Not of temperatures. Capitals
 * that are no unit of their own are a way of writing: `MM` is mm, `Mm` is not.
 */
export function sizeOf(dimension: Dimension, written: string): number | null {
  if (hasUnit(dimension, written)) return unitSize(dimension, written)
  const names = spelled[dimension] ?? {}
  if (Object.hasOwn(names, written)) return names[written]!
  const composed = dimension === 'share' ? ofCases(written) : quotient(dimension, written)
  if (composed !== null) return composed
  const lower = written.toLowerCase()
  const own = Object.keys(dimensions[dimension].units).find((each) => each.toLowerCase() === lower)
  if (own !== undefined) return unitSize(dimension, own)
  // of two letters one is a prefix, and a capital makes another
  return lower.length > 2 && Object.hasOwn(names, lower) ? names[lower]! : null
}

/** The unit of a temperature in whatever spelling, as the format writes it; null where it is none. */
export function scaleOf(written: string): string | null {
  const joined = written.replace(/^deg\.?\s+/i, 'deg')
  const own = Object.keys(dimensions.temperature.units).find(
    (each) => each.toLowerCase() === joined.toLowerCase(),
  )
  return own ?? degrees[joined] ?? null
}
