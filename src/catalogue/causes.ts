/** Why a piece stands until somebody has put it right: one row each, and what is measured of the stops of every cause. */
import type { Skill } from '../scenario/calls.js'
import { type NamedRow, sort, sorts } from './row.js'
import type { StateKey } from './states.js'

interface Cause {
  /** Its stops in words, at the beginning of a line. */
  label: string
  /** One of them. */
  one: string
  meaning: string
  /** Whose skill it needs. */
  skill: Skill
  /** States while it waits for somebody, and while they work. */
  waiting: StateKey
  working: StateKey
  /** Such stops come by chance; the others with the cases. */
  isByChance?: true
  /** They are rare and long. */
  isLong?: true
}

const rows = {
  jams: {
    label: 'Jams',
    one: 'jam',
    meaning: 'cases that stop at the first head and must be cleared',
    skill: 'jams',
    waiting: 'jam-waiting-for-crew',
    working: 'jam-being-cleared',
    isByChance: true,
  },
  'roll-changes': {
    label: 'Roll changes',
    one: 'roll change',
    meaning: 'rolls changed',
    skill: 'roll-change',
    waiting: 'tape-waiting-for-crew',
    working: 'tape-being-changed',
  },
  'size-settings': {
    label: 'Size settings',
    one: 'size setting',
    meaning: 'changeovers to another case size',
    skill: 'size-setting',
    waiting: 'size-waiting-for-crew',
    working: 'size-being-set',
  },
  breakdowns: {
    label: 'Breakdowns',
    one: 'breakdown',
    meaning: 'failures of the machine that must be repaired',
    skill: 'breakdowns',
    waiting: 'breakdown-waiting-for-crew',
    working: 'breakdown-being-repaired',
    isByChance: true,
    isLong: true,
  },
  'blade-services': {
    label: 'Blade services',
    one: 'blade service',
    meaning: 'services of the cutting blades after a number of cuts',
    skill: 'blade',
    waiting: 'blade-service',
    working: 'blade-service',
  },
  'tape-breaks': {
    label: 'Tape breaks',
    one: 'tape break',
    meaning: 'strips that tear and are applied again',
    skill: 'roll-change',
    waiting: 'tape-waiting-for-crew',
    working: 'tape-being-changed',
    isByChance: true,
  },
} as const satisfies Record<string, Cause>

/** A cause, as results name it: the key of the measure that counts its stops. */
export type CauseKey = keyof typeof rows
export const causes: Readonly<Record<CauseKey, Cause>> = rows
/** In the order of results. */
export const causeKeys = Object.keys(rows) as CauseKey[]

/** What is measured of the stops of a cause besides their number, by how its key ends. */
const times = {
  stop: {
    label: (words: string) => `Mean time from stop to restart, ${words}`,
    meaning: 'from the stop until it runs again',
  },
  wait: {
    label: (words: string) => `Mean time waiting for crew, ${words}`,
    meaning: 'the part of the stop until somebody arrives',
  },
}

export type StopKey = CauseKey | `${CauseKey}-${keyof typeof times | 'in-breaks'}`

/** The measures of the stops of each cause. */
export const ofStops = Object.fromEntries(causeKeys.flatMap(stopRows)) as Record<StopKey, NamedRow>

function stopRows(key: CauseKey): [string, NamedRow][] {
  const { label, meaning, isLong } = causes[key]
  return [
    [
      key,
      {
        ...sorts.stops,
        label: (name) => `${label} a shift, ${name}`,
        meaning,
        words: label.toLowerCase(),
        ...(isLong ? { isLongStop: true } : {}),
      },
    ],
    ...Object.entries(times).map(([end, { label: words, meaning: of }]): [string, NamedRow] => [
      `${key}-${end}`,
      {
        ...sort('s', 'ratio', 'down'),
        label: (name) => words(`${label.toLowerCase()}, ${name}`),
        meaning: of,
      },
    ]),
    [
      `${key}-in-breaks`,
      {
        ...sorts.stops,
        label: (name) => `${label} that waited for the end of a break, a shift, ${name}`,
        meaning: 'the stops that waited for the end of a break, because nobody on duty could come',
        isLongStop: true,
      },
    ],
  ]
}
