/** What a kind of equipment adds to the rules between the keys of a scenario; what it has nothing to say of is left out. */
import type { Skill } from './calls.js'
import type { Report } from './finding.js'
import type { Longest } from './outside.js'
import type { Scenario } from './schema.js'
import { shareUpTo } from './size-law.js'
import type { Path } from './walk.js'

/** Where a piece stands: its path in the scenario, and the longest case. */
export interface Place {
  scenario: Scenario
  path: Path
  longest: Longest | null
}

export interface PieceRules<Keys> {
  /** Reports every breach of the rules between the piece's own keys, and between them and the rest. */
  check?(keys: Keys, place: Place, report: Report): void
  /** The same of its ways; later rules of ways are not asked where it finds something. */
  checkWays?(keys: Keys, place: Pick<Place, 'scenario' | 'path'>, report: Report): void
  /** What people must be able to do for it, repairs of breakdowns left out; the key that asks for it has the same name. */
  skills?(keys: Keys): Skill[]
}

/** A length or a speed as the rules say it. */
export const millimetres = (metres: number): string => `${Math.round(metres * 1000)} mm`
export const perMinute = (speed: number): string => `${(speed * 60).toPrecision(4)} m/min`

/** What to say of a case that is longer than the `room` of what is to hold it, m: the rule, and the nearest mend. */
export function tooLong(
  { name, length, law }: Longest,
  room: number,
  what: string,
): [rule: string, fix: string] {
  const least = `at least ${millimetres(length)}`
  if (law === null) return [`the case \`${name}\` (${millimetres(length)}) is longer than ${what}`, least]
  const share = Number((100 * (1 - shareUpTo(law, room))).toPrecision(2))
  return [
    `the case \`${name}\` is up to ${millimetres(length)} long, and ${share} % of them are longer than ${what}`,
    `${least}, or ${largestOf[law.law]} in its length: at most ${millimetres(room)}`,
  ]
}

/** What sets the largest of the sizes, by their law. */
const largestOf = {
  normal: '`at-most`',
  triangular: '`high`',
  uniform: '`high`',
  observed: 'no longer ones',
} as const
