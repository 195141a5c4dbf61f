/** The command that makes an answer again. */
import type { ScenarioAsked } from '../scenario/read.js'

/** A word as a shell would need it: plain where nothing in it is special, else in single quotes. */
export const quoted = (text: string): string =>
  /^[\w./:=-]+$/.test(text) ? text : `'${text.replaceAll("'", `'\\''`)}'`

/** Options with their values: a list is said once for each, true without a value, and what is undefined or false not at all. */
export type Flags = Readonly<Record<string, string | number | boolean | readonly string[] | undefined>>

function words([name, value]: [string, Flags[string]]): string[] {
  if (value === undefined || value === false) return []
  if (value === true) return [`--${name}`]
  if (typeof value === 'number') return [`--${name} ${value}`]
  return (typeof value === 'string' ? [value] : value).map((each) => `--${name} ${quoted(each)}`)
}

/** `tapeshift run line.yaml --set ... --seed a`; `record`: what is named after the scenario. */
export const repeatOf = (
  command: string,
  { name, record, set }: Pick<ScenarioAsked, 'set'> & { name: string; record?: string },
  flags: Flags,
): string =>
  [
    'tapeshift',
    command,
    ...[name, ...(record === undefined ? [] : [record])].map(quoted),
    ...Object.entries({ set, ...flags }).flatMap(words),
  ].join(' ')
