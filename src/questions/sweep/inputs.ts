/** The numeric inputs of a scenario, for one factor at a time: what each is, and what it is with a tenth less and more. */

import { isCount } from '../../scenario/counts.js'
import { isMap } from '../../scenario/is-map.js'
import { amountOf, inSi, writtenAmount } from './factor.js'

/** An input with its two ends; an end that cannot be reached is null. */
export interface Input {
  path: string
  /** The value as the scenario has it, or the law whose scale moves. */
  base: unknown
  low: unknown
  high: unknown
  /** Bare whole numbers: the ends where only whole ones may stand. */
  whole: { low: unknown; high: unknown } | null
}

/** An input that is not moved, and why. */
export interface LeftOut {
  path: string
  reason: string
}

/** How far each input is moved, as a share of it. */
export const moved = 0.1

const checkOnly = 'only tapeshift check reads it'
const limitOnly = 'it only limits other values'

/** Inputs on which no shift depends. A test moves each of them. */
const idle: [RegExp, string][] = [
  [/^site\./, checkOnly],
  [/^closure\.(?!reopens\.)/, checkOnly],
  [/^tape\.(adhesion|shear|tensile|elongation|applies-at)\b/, checkOnly],
  [/^cases\.[^.]+\.(weight|board|contents-value|overfill|width|height)\b/, checkOnly],
  [/^cases\.[^.]+\.inside\.(width|height)$/, checkOnly],
  [/^line\.[^.]+\.roller-pitch$/, checkOnly],
  [/^line\.[^.]+\.heads\.[^.]+\.drum$/, checkOnly],
  [/^line\.[^.]+\.heads\.[^.]+\.(takes|rated-speed)\b/, limitOnly],
  [/^target$/, 'it is a requirement, not an input of the line'],
  [/^shift\.campaign$/, 'it says how shifts are observed; it is not an input of the line'],
]

/** How a study is made, what is asked of it, and texts: none of them is an input. */
const aside = ['title', 'display', 'study', 'size', 'variants', 'log', 'observed', 'note', 'currency', 'unit']

/** Laws of times by the keys that stretch them. */
const scales: Record<string, string[]> = {
  exponential: ['mean'],
  lognormal: ['mean'],
  gamma: ['mean'],
  erlang: ['mean'],
  weibull: ['scale'],
  triangular: ['low', 'mode', 'high'],
  uniform: ['low', 'high'],
  normal: ['mean', 'sd', 'at-least'],
}

/** Most entries of a list whose entries are moved one by one. */
const mostEntries = 20

/**
 * Every numeric input of a scenario as resolved, in its order. A law of times is one input: its scale is moved, and its form stays. So is
 * a list of rates. Shares stay within 0 and 1; what is 0 does not move.
 */
export function inputsOf(resolved: Record<string, unknown>): { inputs: Input[]; leftOut: LeftOut[] } {
  const found = within(resolved, '')
  return {
    inputs: found.flatMap((each) => ('base' in each ? [each] : [])),
    leftOut: found.flatMap((each) => ('reason' in each ? [each] : [])),
  }
}

/** The inputs in a value at `path`, and what is left out of it. */
function within(value: unknown, path: string): (Input | LeftOut)[] {
  const law = scaleKeys(value)
  if (law !== null) {
    const { name, keys, parameters } = law
    const isNothing = keys.every((key) => (amountOf(parameters[key])?.number ?? 0) === 0)
    const stretched = (factor: number) => ({ [name]: { ...parameters, ...scaled(parameters, keys, factor) } })
    return [inputAt(path, value, stretched, isNothing)]
  }
  if (isRates(value))
    return [inputAt(path, value, (factor) => value.map((each) => movedValue(each, factor)), false)]
  if (Array.isArray(value))
    return value.length > mostEntries
      ? [{ path, reason: `the list has more than ${mostEntries} entries: name one with --vary` }]
      : value.flatMap((each, index) => within(each, `${path}.${index}`))
  if (isMap(value))
    return Object.entries(value).flatMap(([key, each]) =>
      aside.includes(key) ? [] : within(each, path === '' ? key : `${path}.${key}`),
    )
  if (isCount(value)) return [{ path, reason: 'nothing was counted, so there is nothing to change' }]
  const amount = amountOf(value)
  if (amount === null) return []
  return [inputAt(path, value, (factor) => movedValue(value, factor), amount.number === 0)]
}

/** An input with its ends; why it is left out where moving it says nothing. */
function inputAt(
  path: string,
  base: unknown,
  times: (factor: number) => unknown,
  isNothing: boolean,
): Input | LeftOut {
  const reason = idle.find(([pattern]) => pattern.test(path))?.[1]
  if (reason !== undefined) return { path, reason }
  if (isNothing) return { path, reason: 'it is 0, and 10 % of 0 is 0' }
  return { path, base, low: times(1 - moved), high: times(1 + moved), whole: wholeEnds(base) }
}

/** A law of times by its scale, such as `mean 85 s` or `3.2 s to 5.6 s`; null of anything else. */
export function lawText(value: unknown): string | null {
  const law = scaleKeys(value)
  if (law === null) return null
  const { keys, parameters } = law
  const [first] = keys
  return first === 'low' ? `${parameters.low} to ${parameters.high}` : `${first} ${parameters[first!]}`
}

/** The ends of a whole number that stays whole: a tenth away, and at least 1. */
function wholeEnds(base: unknown): Input['whole'] {
  if (typeof base !== 'number' || !Number.isInteger(base)) return null
  const by = Math.max(1, Math.round(Math.abs(base) * moved))
  return { low: base - by, high: base + by }
}

/** The law of a time by its name, its parameters and the keys of its scale; null of anything else. */
function scaleKeys(value: unknown) {
  if (!isMap(value)) return null
  const [[name, parameters] = ['', null], ...others] = Object.entries(value)
  const keys = Object.hasOwn(scales, name) ? scales[name]! : []
  return others.length === 0 && isMap(parameters) && amountOf(parameters[keys[0] ?? '']) !== null
    ? { name, keys, parameters }
    : null
}

const scaled = (parameters: Record<string, unknown>, keys: readonly string[], factor: number) =>
  Object.fromEntries(
    keys.flatMap((key) =>
      parameters[key] === undefined ? [] : [[key, movedValue(parameters[key], factor)]],
    ),
  )

/** Rates of the hours of a shift. */
const isRates = (value: unknown): value is string[] =>
  Array.isArray(value) && value.length > 0 && value.every((each) => /cases\/(min|h|s)$/.test(String(each)))

function movedValue(value: unknown, factor: number): unknown {
  const amount = amountOf(value)
  if (amount === null) return value
  const next = writtenAmount({ number: amount.number * factor, unit: amount.unit })
  const isShare = amount.unit !== '' && inSi(amount).unit === '' && inSi({ ...amount, number: 1 }).number < 1
  // no share of anything is above all of it, but the base itself may be, such as a stretch or a load
  return isShare && inSi(amount).number <= 1 && inSi(amountOf(next)!).number > 1 ? '100 %' : next
}
