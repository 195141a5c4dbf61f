/** What the reasons of a log may be in a scenario: stops of a piece by their path, and words for what is no stop of its own. */

import { isKeyOfJam } from '../scenario/jam-keys.js'
import { nearest } from '../scenario/nearest.js'
import { shown } from '../scenario/printable.js'
import type { LoggedKind } from '../scenario/recorded-stops.js'
import { type Meaning, meaningsWithoutPath } from './record.js'

/** What a stop of some sort gives: the keys below its path, as the format of scenarios has them. */
export interface StopKeys {
  /** What several of them are called. */
  words: string
  /** How long they last. */
  times: string
  /** Chance of one, counted in cases or in strips of tape. */
  chance?: { key: string; of: 'cases' | 'strips' }
  /** Running time from one to the next. */
  timeTo?: string
}

/** The stops of a piece, by the key that they have in a scenario. */
export const stopKeys = {
  jams: { words: 'jams', times: 'clear', chance: { key: 'chance', of: 'cases' } },
  breakdowns: { words: 'breakdowns', times: 'repair', timeTo: 'after' },
  'roll-change': { words: 'roll changes', times: 'time' },
  'size-setting': { words: 'settings to another size', times: 'time' },
  'tape-breaks': { words: 'tape breaks', times: 'fix', chance: { key: 'chance', of: 'strips' } },
  blade: { words: 'blade services', times: 'time' },
  every: { words: 'planned stops', times: 'stop' },
} as const satisfies Record<LoggedKind, StopKeys>

/** A stop of a piece of the line. */
export interface StopPath {
  piece: string
  kind: LoggedKind
  keys: StopKeys
  /** Of jams their kind, where the path goes on to it. */
  jam: string | null
}

const words: readonly string[] = meaningsWithoutPath

/** The piece and the stop that a path names; null for a word without a path. */
export function stopPathOf(meaning: Meaning): StopPath | null {
  if (words.includes(meaning)) return null
  const [, piece, kind, jam] = meaning.split('.') as [string, string, LoggedKind, string?]
  const keys = stopKeys[kind]
  return jam === undefined
    ? { piece, kind, keys, jam: null }
    : { piece, kind, keys: { ...keys, words: `${keys.words} (${jam})` }, jam }
}

const example = 'line.sealer.jams'

const isName = (step: string): boolean => /^\p{L}[\p{L}\p{N} _-]{0,39}$/u.test(step)

/** `jams.flap`: a kind of jam by its name, which is none of the keys of a jam. */
const isKindOfJam = (tail: string, more: readonly string[]): boolean =>
  tail === 'jams' && more.length === 1 && isName(more[0]!) && !isKeyOfJam(more[0]!)

/** What is wrong with a meaning as it was written, and the nearest mend; null where nothing is. */
export function meaningFault(written: string): { rule: string; fix: string } | null {
  if (words.includes(written)) return null
  const [line, piece = '', tail, ...more] = written.split('.')
  if (line !== 'line' || tail === undefined) {
    const isWord = !written.includes('.')
    return {
      rule: `a meaning must be a stop of the scenario such as \`${example}\`, or one of ${words.join(', ')}`,
      fix: isWord ? nearest(written.slice(0, 40), words) : `write it like \`${example}\``,
    }
  }
  if (!isName(piece))
    return {
      rule: `\`${shown(piece)}\` is not the name of a piece`,
      fix: `write it like \`${example}\``,
    }
  if (Object.hasOwn(stopKeys, tail) && more.length === 0) return null
  if (isKindOfJam(tail, more)) return null
  const tails = Object.keys(stopKeys)
  if (Object.hasOwn(stopKeys, tail))
    return {
      rule: `the meaning of a stop must end with ${tails.join(', ')}: its times and chance are calculated from the log`,
      fix: `did you mean \`line.${piece}.${tail}\`?`,
    }
  return {
    rule: `\`${shown(tail)}\` is not a stop of a piece`,
    fix: nearest(tail.slice(0, 40), tails),
  }
}
