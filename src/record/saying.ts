/** How one thing that is found in a record is said. */
import type { Account } from './record.js'

/** What was gathered of one entry. */
export interface Told {
  count: number
  seconds: number
  /** Names and figures, the first few. */
  what: readonly string[]
}

/** Of what was told, or the same of all. */
type Text = string | ((told: Told) => string)

/** What was done, what is said, and the nearest mend; none where there is nothing to mend. */
export interface Saying {
  did: Account['did']
  words: Text
  fix: Text
}

const saying =
  (did: Account['did']) =>
  (words: Text, fix: Text = ''): Saying => ({ did, words, fix })

export const noted = saying('noted')
export const changed = saying('changed')
export const leftOut = saying('left-out')
export const refused = saying('refused')

/** A text as it is told. */
export const saidOf = (text: Text, told: Told): string => (typeof text === 'string' ? text : text(told))

export const many = (count: number, one: string, more = `${one}s`): string =>
  `${count} ${count === 1 ? one : more}`
export const rows = ({ count }: Told): string => many(count, 'row')
export const stops = ({ count }: Told): string => many(count, 'stop')
/** `90 s`, `15 min`, `41.2 h`. */
export const time = ({ seconds }: Told): string => {
  if (seconds < 120) return `${Number(seconds.toFixed(1))} s`
  return seconds < 36_000
    ? `${Number((seconds / 60).toFixed(1))} min`
    : `${Number((seconds / 3600).toFixed(1))} h`
}
export const named = ({ what }: Told): string => what.map((each) => `\`${each}\``).join(', ')
export const verb = ({ count }: Told, one: string, more: string): string => (count === 1 ? one : more)
