/** Guesses as a scenario writes them: `{guess: 90 s, between: [60 s, 150 s]}`, believed with 90 % to lie between the two. */
import type { Ends, Known, Spread } from './known.js'
import { nearest } from './nearest.js'
import { shown } from './printable.js'
import { type Fault, fault, type Read } from './reading.js'

/** How values of a guess are read and compared. */
export interface Guessed<T> {
  read(written: unknown): Read<T>
  numberOf(value: T): number
  /** Whether two are of the same, such as two amounts of one currency. */
  isAlike?(one: T, other: T): boolean
  spread: Spread
  ends: Ends
}

type Guess = Extract<Known, { form: 'guess' }>

const example = '{guess: 90, between: [60, 150]}'
const keys = ['guess', 'between']

/** The value of a guess and what is believed, or what is wrong with it. */
export function readGuess<T>(
  written: Record<string, unknown>,
  how: Guessed<T>,
): Read<{ value: T; known: Guess }> {
  const foreign = Object.keys(written).find((key) => !keys.includes(key))
  if (foreign !== undefined)
    return fault('unknown-key', `\`${shown(foreign)}\` is not a key of a guess`, nearest(foreign, keys), [
      foreign,
    ])
  const missing = keys.find((key) => written[key] === undefined)
  if (missing !== undefined)
    return fault(
      'missing-key',
      `a guess needs \`guess\` and \`between\`; \`${missing}\` is missing`,
      `write it like \`${example}\`, with units`,
    )
  const { between } = written
  if (!Array.isArray(between) || between.length !== 2)
    return fault(
      'wrong-type',
      '`between` must be a list of two values; the true value lies between them with 90 %',
      'such as `between: [LOW, HIGH]`',
      ['between'],
    )
  const read = [
    at(how.read(between[0]), ['between', 0]),
    at(how.read(between[1]), ['between', 1]),
    at(how.read(written.guess), ['guess']),
  ] as const
  for (const each of read) if ('fault' in each) return each
  const [low, high, value] = read.map((each) => (each as { value: T }).value) as [T, T, T]
  const wrong = orderFault(how, [low, high, value])
  if (wrong) return wrong
  const ends = { low: how.numberOf(low), high: how.numberOf(high) }
  return { value: { value, known: { form: 'guess', ...ends, spread: how.spread, ...how.ends } } }
}

const at = <T>(read: Read<T>, path: readonly (string | number)[]): Read<T> =>
  'fault' in read ? { fault: { ...read.fault, within: path } } : read

/** The first rule between the two ends and the guess that is broken. */
function orderFault<T>(how: Guessed<T>, values: readonly [T, T, T]): { fault: Fault } | null {
  const [low, high, guess] = values.map((each) => how.numberOf(each)) as [number, number, number]
  if (how.isAlike && !(how.isAlike(values[0], values[2]) && how.isAlike(values[1], values[2])))
    return fault(
      'conflict',
      'the guess and its ends must be of the same kind: the same currency, for the same thing',
      'write all three in the same way',
    )
  if (low === high)
    return fault(
      'conflict',
      'the two ends of a guess must be different',
      'give only the value, or different ends',
      ['between'],
    )
  if (low > high)
    return fault('conflict', 'the lower end of a guess must come first', 'swap the two', ['between'])
  if (!(low <= guess && guess <= high))
    return fault(
      'out-of-range',
      'the guess must lie between its two ends',
      'use wider ends or another guess',
      ['guess'],
    )
  if (how.spread === 'lognormal' && !(low > 0))
    return fault(
      'out-of-range',
      'the lower end of this guess must be above 0, because the value cannot be 0',
      'use a small lower end above 0',
      ['between', 0],
    )
  if (how.spread === 'logit-normal' && !(low > 0 && high < 1))
    return fault(
      'out-of-range',
      'both ends of a guessed share must be above 0 % and below 100 %',
      'use ends a little inside',
      ['between'],
    )
  return null
}
