/** The units of a scenario, their sizes in SI, and which of them a dimension has. A unit has its home here. */
import Qty from 'js-quantities'
import { secondsOfYear } from '../trade/money.js'
import { poundForcePerInch } from '../trade/us-units.js'
import { feetAndInchesPattern } from './feet-and-inches.js'

interface UnitSystem {
  /** What the dimension is called in an error. */
  name: string
  /** SI unit of the number that comes out. */
  si: string
  /** Each spelling and how the units library writes it, or its size in SI; a case, a cut or a roll counts as 1. */
  units: Record<string, string>
  /** What else people write for a unit, and which it is: taken, and not listed. */
  also?: Record<string, string>
  /** What is added to a number in a unit before its size multiplies it: where a scale does not begin at nothing. */
  zeros?: Record<string, number>
  /** It is also counted per a number of cases, whatever that is: `per 4000 cases`, `per 4000`. */
  perCases?: true
  example: string
  /**
   * Smallest size but nothing, and largest, that makes sense anywhere on a line, SI; keys may be narrower. Far inside what numbers can hold, so that no
   * product of a few is endless or nothing. Project rule.
   */
  ends: readonly [least: number, most: number]
  /** What people most often write it in, for asking which of them is meant. */
  usual: readonly string[]
}

/** Units that the units library writes as the format does. */
const alike = (...units: string[]): Record<string, string> =>
  Object.fromEntries(units.map((each) => [each, each]))

const lengths = alike('m', 'mm', 'cm', 'um', 'in', 'ft', 'yd')
const times = { s: 's', min: 'min', h: 'h', ms: 'ms', d: 'day', wk: 'week', yr: `${secondsOfYear}` }

/** Every dimension that a scenario may ask for. */
export const dimensions = {
  length: {
    name: 'a length',
    si: 'm',
    units: lengths,
    also: { inch: 'in', inches: 'in' },
    example: '400 mm',
    ends: [1e-7, 1e6],
    usual: ['mm', 'cm', 'in'],
  },
  speed: {
    name: 'a speed',
    si: 'm/s',
    units: alike('m/min', 'm/s', 'mm/s', 'ft/min', 'ft/s', 'in/s'),
    example: '24 m/min',
    ends: [1e-5, 1000],
    usual: ['m/min', 'm/s', 'ft/min'],
  },
  acceleration: {
    name: 'an acceleration',
    si: 'm/s2',
    units: { 'm/s2': 'm/s2', 'mm/s2': 'mm/s2', 'ft/s2': 'ft/s2' },
    example: '0.5 m/s2',
    ends: [1e-6, 1e4],
    usual: ['m/s2', 'mm/s2', 'ft/s2'],
  },
  time: {
    name: 'a time',
    si: 's',
    units: times,
    example: '90 s',
    ends: [1e-6, 1e13],
    usual: ['s', 'min', 'h'],
  },
  mass: {
    name: 'a mass',
    si: 'kg',
    units: { kg: 'kg', g: 'g', t: 'tonne', lb: 'lb', oz: 'oz' },
    example: '9 kg',
    ends: [1e-6, 1e6],
    usual: ['kg', 'g', 'lb'],
  },
  'edge-crush': {
    name: 'an edge crush strength',
    si: 'N/m',
    units: { 'lbf/in': 'lbf/in', 'N/m': 'N/m', 'kN/m': 'kN/m', 'N/mm': 'N/mm', 'lb/in': 'lbf/in' },
    example: '32 lbf/in',
    ends: [1e-3, 1e7],
    usual: ['lbf/in', 'kN/m', 'N/m'],
  },
  'strength-of-width': {
    name: 'a strength a width of tape',
    si: 'N/m',
    units: {
      ...alike('N/cm', 'N/m', 'N/mm'),
      'oz/in': `${poundForcePerInch / 16}`,
      ...alike('lbf/in'),
      'lb/in': 'lbf/in',
    },
    example: '5 N/cm',
    ends: [1e-3, 1e7],
    usual: ['N/cm', 'N/m', 'lbf/in'],
  },
  force: {
    name: 'a force',
    si: 'N',
    units: { N: 'N', kN: 'kN', lbf: 'lbf' },
    example: '40 N',
    ends: [1e-6, 1e7],
    usual: ['N', 'kN', 'lbf'],
  },
  temperature: {
    name: 'a temperature',
    si: 'K',
    units: { degC: '1', degF: `${5 / 9}`, K: '1' },
    zeros: { degC: 273.15, degF: 459.67 },
    example: '20 degC',
    ends: [100, 1000],
    usual: ['degC', 'degF', 'K'],
  },
  pressure: {
    name: 'a pressure',
    si: 'Pa',
    units: { kPa: 'kPa', Pa: 'Pa', psi: 'psi', MPa: 'MPa' },
    example: '200 psi',
    ends: [1e-3, 1e10],
    usual: ['psi', 'kPa', 'MPa'],
  },
  'case-rate': {
    name: 'a rate of cases',
    si: '1/s',
    units: { 'cases/min': '1/min', 'cases/h': '1/h', 'cases/s': '1/s' },
    also: {
      ...{ '/min': 'cases/min', 'per min': 'cases/min', 'cases per min': 'cases/min' },
      ...{ '/h': 'cases/h', 'per h': 'cases/h', 'cases per h': 'cases/h' },
    },
    example: '15 cases/min',
    ends: [1e-9, 1e4],
    usual: ['cases/min', 'cases/h', 'cases/s'],
  },
  share: {
    name: 'a share',
    si: '',
    units: { '%': '0.01', 'per 1000 cases': '0.001', 'per case': '1' },
    perCases: true,
    example: '5 %',
    ends: [1e-12, 1e6],
    usual: ['%', 'per 1000 cases', 'per case'],
  },
  power: {
    name: 'a power',
    si: 'W',
    units: { kW: 'kW', W: 'W', hp: 'hp' },
    example: '0.8 kW',
    ends: [1e-6, 1e9],
    usual: ['kW', 'W', 'hp'],
  },
  cuts: {
    name: 'a number of cuts',
    si: '',
    units: { cuts: '1' },
    example: '30000 cuts',
    ends: [1e-3, 1e12],
    usual: ['cuts'],
  },
  yearly: {
    name: 'a number a year',
    si: '',
    units: { 'per yr': '1', 'per year': '1' },
    example: '480 per yr',
    ends: [1e-3, 1e6],
    usual: ['per yr'],
  },
} satisfies Record<string, UnitSystem>

export type Dimension = keyof typeof dimensions

const factors = new Map<string, number>()

/** The number of cases in `per 4000 cases` and its like; null where a unit is none of those. */
const casesIn = (unit: string): number | null => {
  const match = /^per ([1-9]\d{0,11})(?: cases?)?$/.exec(unit)
  return match ? Number(match[1]) : null
}

/** Whether `unit` is one of those that a dimension may be written in. */
export function hasUnit(dimension: Dimension, unit: string): boolean {
  const system: UnitSystem = dimensions[dimension]
  return (
    Object.hasOwn(system.units, unit) ||
    Object.hasOwn(system.also ?? {}, unit) ||
    (system.perCases === true && casesIn(unit) !== null)
  )
}

/** The dimension that has the unit, or null; of several the first. */
export const dimensionOf = (unit: string): Dimension | null =>
  (Object.keys(dimensions) as Dimension[]).find((dimension) => hasUnit(dimension, unit)) ?? null

/** The units of a dimension in words. */
export function unitList(dimension: Dimension): string {
  const system: UnitSystem = dimensions[dimension]
  return [...Object.keys(system.units), ...(system.perCases ? ['per any other number of cases'] : [])].join(
    ', ',
  )
}

/** SI size of one `unit` of `dimension`. The unit must be one of the dimension's own. */
export function unitSize(dimension: Dimension, unit: string): number {
  const key = `${dimension} ${unit}`
  let size = factors.get(key)
  if (size === undefined) {
    const system: UnitSystem = dimensions[dimension]
    const own = system.also?.[unit] ?? unit
    const expression = Object.hasOwn(system.units, own) ? system.units[own]! : `${1 / casesIn(own)!}`
    const number = Number(expression)
    size = Number.isNaN(number) ? Qty(`1 ${expression}`).to(system.si).scalar : number
    factors.set(key, size)
  }
  return size
}

/** `number` units of `size`: divided where the unit is a whole part, so that 95 % is 0.95 and 24 m/min is 0.4 m/s. */
function sized(number: number, size: number): number {
  const parts = Math.round(1 / size)
  return parts > 1 && Math.abs(parts * size - 1) < 1e-12 ? number / parts : number * size
}

/** A number in one of the dimension's own units as one in SI. */
export function inSi(dimension: Dimension, number: number, unit: string): number {
  const system: UnitSystem = dimensions[dimension]
  return sized(number + (system.zeros?.[unit] ?? 0), unitSize(dimension, unit))
}

/** The end of what makes sense in a dimension that `value`, SI, lies beyond; null where it keeps both, or is nothing. */
export function beyondEnds(dimension: Dimension, value: number): { end: number; words: string } | null {
  const { ends, si }: UnitSystem = dimensions[dimension]
  const [least, most] = ends
  const size = Math.abs(value)
  if (size <= most && (size >= least || (size === 0 && dimension !== 'temperature'))) return null
  const words = `from ${least} to ${most} ${si}`.trimEnd()
  return { end: size > most ? most : least, words: dimension === 'temperature' ? words : `0, or ${words}` }
}

/** Regular expression source that editors use to check a quantity while it is typed. */
export function quantityPattern(dimension: Dimension): string {
  const system: UnitSystem = dimensions[dimension]
  const escaped = [...Object.keys(system.units), ...Object.keys(system.also ?? {})].map((unit) =>
    unit.replace(/[/.]/g, (c) => `\\${c}`),
  )
  if (system.perCases) escaped.push('per [1-9]\\d{0,11}( cases?)?')
  const usual = `^\\s*[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?\\s*(${escaped.join('|')})\\s*$`
  return dimension === 'length' ? `(${usual})|(${feetAndInchesPattern})` : usual
}
