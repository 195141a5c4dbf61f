/** Quantities: the text `NUMBER UNIT` of a scenario to SI numbers and back. A unit has its home here. */
import { closest, distance } from 'fastest-levenshtein'
import Qty from 'js-quantities'
import { poundForcePerInch } from '../trade/us-units.js'

interface UnitSystem {
  /** What the dimension is called in an error. */
  name: string
  /** SI unit of the number that comes out. */
  si: string
  /** Each spelling and how the units library writes it, or its size in SI; a case, a cut or a roll counts as 1. */
  units: Record<string, string>
  /** What is added to a number in a unit before its size multiplies it: where a scale does not begin at nothing. */
  zeros?: Record<string, number>
  example: string
}

const lengths = { m: 'm', mm: 'mm', cm: 'cm', um: 'um', in: 'in', ft: 'ft', yd: 'yd' }
const times = { s: 's', min: 'min', h: 'h', ms: 'ms', d: 'day', wk: 'week', yr: 'year' }

/** Every dimension that a scenario may ask for. */
export const dimensions = {
  length: { name: 'a length', si: 'm', units: lengths, example: '400 mm' },
  speed: {
    name: 'a speed',
    si: 'm/s',
    units: {
      'm/min': 'm/min',
      'm/s': 'm/s',
      'mm/s': 'mm/s',
      'ft/min': 'ft/min',
      'ft/s': 'ft/s',
      'in/s': 'in/s',
    },
    example: '24 m/min',
  },
  time: { name: 'a time', si: 's', units: times, example: '90 s' },
  mass: {
    name: 'a mass',
    si: 'kg',
    units: { kg: 'kg', g: 'g', t: 'tonne', lb: 'lb', oz: 'oz' },
    example: '9 kg',
  },
  'edge-crush': {
    name: 'an edge crush strength',
    si: 'N/m',
    units: { 'lbf/in': 'lbf/in', 'N/m': 'N/m', 'kN/m': 'kN/m', 'N/mm': 'N/mm', 'lb/in': 'lbf/in' },
    example: '32 lbf/in',
  },
  'strength-of-width': {
    name: 'a strength a width of tape',
    si: 'N/m',
    units: {
      'N/cm': 'N/cm',
      'N/m': 'N/m',
      'N/mm': 'N/mm',
      'oz/in': `${poundForcePerInch / 16}`,
      'lbf/in': 'lbf/in',
      'lb/in': 'lbf/in',
    },
    example: '5 N/cm',
  },
  force: { name: 'a force', si: 'N', units: { N: 'N', kN: 'kN', lbf: 'lbf' }, example: '40 N' },
  temperature: {
    name: 'a temperature',
    si: 'K',
    units: { degC: '1', degF: `${5 / 9}`, K: '1' },
    zeros: { degC: 273.15, degF: 459.67 },
    example: '20 degC',
  },
  pressure: {
    name: 'a pressure',
    si: 'Pa',
    units: { kPa: 'kPa', Pa: 'Pa', psi: 'psi', MPa: 'MPa' },
    example: '200 psi',
  },
  'case-rate': {
    name: 'a rate of cases',
    si: '1/s',
    units: { 'cases/min': '1/min', 'cases/h': '1/h', 'cases/s': '1/s' },
    example: '15 cases/min',
  },
  share: {
    name: 'a share',
    si: '',
    units: { '%': '0.01', 'per 1000 cases': '0.001', 'per 1000': '0.001', 'per case': '1' },
    example: '5 %',
  },
  power: { name: 'a power', si: 'W', units: { kW: 'kW', W: 'W', hp: 'hp' }, example: '0.8 kW' },
  cuts: { name: 'a number of cuts', si: '', units: { cuts: '1' }, example: '30000 cuts' },
  yearly: {
    name: 'a number a year',
    si: '',
    units: { 'per yr': '1', 'per year': '1' },
    example: '480 per yr',
  },
} satisfies Record<string, UnitSystem>

export type Dimension = keyof typeof dimensions

/** What `parseQuantity` found: a number in SI, or what is wrong and the nearest mend. */
export type Parsed =
  | { value: number }
  | { code: 'no-unit' | 'unknown-unit' | 'wrong-unit' | 'not-a-quantity'; rule: string; fix: string }

const shape = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*?)\s*$/
const factors = new Map<string, number>()

/** SI size of one `unit` of `dimension`. The unit must be one of the dimension's own. */
export function unitSize(dimension: Dimension, unit: string): number {
  const key = `${dimension} ${unit}`
  let size = factors.get(key)
  if (size === undefined) {
    const system: UnitSystem = dimensions[dimension]
    const expression = system.units[unit]!
    const number = Number(expression)
    size = Number.isNaN(number) ? Qty(`1 ${expression}`).to(system.si).scalar : number
    factors.set(key, size)
  }
  return size
}

/** The number of SI units in `text`, or what is wrong with it. Takes any value: hostile input gets a finding. */
export function parseQuantity(text: unknown, dimension: Dimension): Parsed {
  const system: UnitSystem = dimensions[dimension]
  const known = Object.keys(system.units)
  const list = known.join(', ')
  const usual = system.example.slice(system.example.indexOf(' ') + 1)
  if (typeof text === 'number')
    return {
      code: 'no-unit',
      rule: `${system.name} needs a unit: ${list}`,
      fix: `write it with its unit, such as \`${text} ${usual}\``,
    }
  const match = typeof text === 'string' ? shape.exec(text) : null
  if (!match)
    return {
      code: 'not-a-quantity',
      rule: `${system.name} is a number and a unit (${list})`,
      fix: `write it like \`${system.example}\``,
    }
  const [, digits, unit] = match as unknown as [string, string, string]
  if (unit === '')
    return {
      code: 'no-unit',
      rule: `${system.name} needs a unit: ${list}`,
      fix: `write it with its unit, such as \`${digits} ${usual}\``,
    }
  if (!Object.hasOwn(system.units, unit)) {
    const other = Object.values(dimensions as Record<string, UnitSystem>).find((each) =>
      Object.hasOwn(each.units, unit),
    )
    if (other)
      return {
        code: 'wrong-unit',
        rule: `\`${unit}\` is the unit of ${other.name}; here stands ${system.name}: ${list}`,
        fix: `write it like \`${system.example}\``,
      }
    return {
      code: 'unknown-unit',
      rule: `\`${unit.slice(0, 40)}\` is no unit of ${system.name}: ${list}`,
      fix: unitMend(digits, unit.slice(0, 40), known),
    }
  }
  return { value: inSi(Number(digits) + (system.zeros?.[unit] ?? 0), unitSize(dimension, unit)) }
}

/** Signs that people write for a unit. */
const signs: Record<string, string> = {
  '"': 'in',
  '”': 'in',
  "'": 'ft',
  '’': 'ft',
  µm: 'um',
  μm: 'um',
  '°C': 'degC',
  '°F': 'degF',
}

/** What was most likely meant by an unknown unit; never a guess that would change the size of the value. */
function unitMend(digits: string, unit: string, known: readonly string[]): string {
  const comma = /^,(\d+)\s*(.*)$/.exec(unit)
  if (comma) return `write a decimal point: \`${digits}.${comma[1]} ${comma[2]}\``
  const meant = known.find((each) => each.toLowerCase() === unit.toLowerCase()) ?? signs[unit]
  if (meant !== undefined && known.includes(meant)) return `did you mean \`${digits} ${meant}\`?`
  const near = closest(unit, known)
  const isNear =
    unit.length > 1 && near.length > 1 && distance(unit, near) <= Math.max(1, Math.floor(unit.length / 3))
  return isNear ? `did you mean \`${digits} ${near}\`?` : 'one of these units'
}

/** `number` units of `size`: divided where the unit is a whole part, so that 95 % is 0.95 and 24 m/min is 0.4 m/s. */
function inSi(number: number, size: number): number {
  const parts = Math.round(1 / size)
  return parts > 1 && Math.abs(parts * size - 1) < 1e-12 ? number / parts : number * size
}

/** Regular expression source that editors use to check a quantity while it is typed. */
export function quantityPattern(dimension: Dimension): string {
  const escaped = Object.keys(dimensions[dimension].units).map((unit) =>
    unit.replace(/[/.]/g, (c) => `\\${c}`),
  )
  return `^\\s*[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?\\s*(${escaped.join('|')})\\s*$`
}

const moneyShape = /^\s*(\d+\.?\d*|\.\d+)\s*([A-Z]{3})(?:\s*\/\s*(roll|h|kWh|m))?\s*$/

/** An amount of money, `42 EUR/roll`: amount, currency code and what it is per; null where the text is none. */
export function parseMoney(text: unknown): { amount: number; currency: string; per: string | null } | null {
  const match = typeof text === 'string' ? moneyShape.exec(text) : null
  return match ? { amount: Number(match[1]), currency: match[2]!, per: match[3] ?? null } : null
}
