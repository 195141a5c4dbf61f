/** The states of a piece of equipment, one row each in the order of results: it is in exactly one of them at a time. */
import { type NamedRow, sort } from './row.js'

/** Kinds of stop as pictures tell them, each with its noun. */
export const stopNouns = {
  jam: 'jam',
  tape: 'stop for tape',
  size: 'size setting',
  breakdown: 'breakdown',
  blade: 'blade service',
  planned: 'planned stop',
} as const
export type StopKind = keyof typeof stopNouns

/** What may be tried against a state that takes much of the time of `name`; `of`: the share of the shift. */
type Remedy = (name: string, of: string) => string

interface State {
  /** Its words; of a state that is not the only one of its kind of stop those after the name of that. */
  words: string
  /** So short that it finds room on a machine. */
  short: string
  /** What the piece does: it works, waits for others, or stands for a stop of its own or for a break. */
  group: 'work' | 'wait' | 'stop' | 'break'
  /** Of a stop: its kind, and whether somebody is at it or is waited for. */
  stop?: StopKind
  isWaitForCrew?: true
  meaning: string
  remedy?: Remedy
}

// nothing here asks for stops to be put right in a hurry
const morePeople: Remedy = (name, of) =>
  `Try another person or shorter ways: stops of ${name} wait for crew for ${of} of the shift.`

const waitingForCrew = {
  words: 'waiting for crew',
  group: 'stop',
  isWaitForCrew: true,
  remedy: morePeople,
} as const

const rows = {
  working: {
    words: 'working',
    short: 'working',
    group: 'work',
    meaning:
      'works on a case. For a sealer: its headway time and folding; for a conveyor: the time in which it moves cases',
  },
  waiting: {
    words: 'starved',
    short: 'waiting',
    group: 'wait',
    meaning: 'it could work, but no case has arrived',
    remedy: (name, of) => `Look at the line before ${name}, which is starved for ${of} of the shift.`,
  },
  blocked: {
    words: 'blocked',
    short: 'blocked',
    group: 'wait',
    meaning: 'it could pass a case on, but the next piece takes none',
    remedy: (name, of) => `Look at the line after ${name}, which is blocked for ${of} of the shift.`,
  },
  'jam-waiting-for-crew': {
    ...waitingForCrew,
    short: 'jam: waits for crew',
    stop: 'jam',
    meaning: 'jammed, and nobody has arrived yet',
  },
  'jam-being-cleared': {
    words: 'being cleared',
    short: 'jam: being cleared',
    group: 'stop',
    stop: 'jam',
    meaning: 'jammed, and somebody clears it; isolation of the machine is included',
    remedy: (name, of) =>
      `Find what makes cases jam: jams of ${name} take ${of} of the shift. Do not hurry the clearing itself.`,
  },
  'tape-waiting-for-crew': {
    ...waitingForCrew,
    short: 'tape: waits for crew',
    stop: 'tape',
    meaning: 'out of tape or with a torn strip, and nobody has arrived yet',
  },
  'tape-being-changed': {
    words: 'being changed',
    short: 'tape: changing',
    group: 'stop',
    stop: 'tape',
    meaning: 'somebody changes a roll or threads torn tape again',
    remedy: (name, of) =>
      `Try longer rolls, or holders with the next roll ready: roll changes of ${name} take ${of} of the shift.`,
  },
  'size-waiting-for-crew': {
    ...waitingForCrew,
    short: 'size: waits for crew',
    stop: 'size',
    meaning: 'another case size is due, and nobody has arrived to set the machine',
  },
  'size-being-set': {
    words: 'being set',
    short: 'size: being set',
    group: 'stop',
    stop: 'size',
    meaning: 'changeover to another case size',
    remedy: (name, of) =>
      `Try longer runs of one case, or a machine that sets itself: setting sizes at ${name} takes ${of} of the shift.`,
  },
  'breakdown-waiting-for-crew': {
    ...waitingForCrew,
    short: 'broken: waits for crew',
    stop: 'breakdown',
    meaning: 'broken down, and nobody has arrived yet',
  },
  'breakdown-being-repaired': {
    words: 'being repaired',
    short: 'broken: repair',
    group: 'stop',
    stop: 'breakdown',
    meaning: 'broken down, and somebody repairs it',
    remedy: (name, of) =>
      `Improve maintenance and spare parts: breakdowns of ${name} take ${of} of the shift.`,
  },
  'blade-service': {
    words: 'blade service',
    short: 'blade service',
    group: 'stop',
    stop: 'blade',
    meaning: 'stopped for its blades',
    remedy: (name, of) =>
      `Service blades outside the shift: blade service of ${name} takes ${of} of the shift.`,
  },
  'planned-stop': {
    words: 'planned stop',
    short: 'planned stop',
    group: 'stop',
    stop: 'planned',
    meaning: 'stopped after a number of cases, such as for a pallet change, and works on no case',
    remedy: (name, of) =>
      `Planned stops of ${name} take ${of} of the shift. Try more cases between them, or a second piece that works in the meantime.`,
  },
  'on-break': {
    words: 'on break',
    short: 'on break',
    group: 'break',
    meaning: 'stopped because of a break',
  },
} satisfies Record<string, State>

/** A state, as results name it. */
export type StateKey = keyof typeof rows
export const states: Readonly<Record<StateKey, State>> = rows
/** In the order of results. */
export const stateKeys = Object.keys(rows) as StateKey[]

/** The state in words: `jam: being cleared`. `between` stands after the name of the stop. */
export function stateLabel(key: StateKey, between = ': '): string {
  const { words, stop } = states[key]
  const isOnly = stop === undefined || stateKeys.filter((each) => states[each].stop === stop).length === 1
  return isOnly ? words : `${stop}${between}${words}`
}

/** The share of time in a state, as a measure of a piece. */
export const stateRow = (key: StateKey): NamedRow => ({
  label: (name) => `${name}: ${stateLabel(key)}`,
  ...sort('share', 'mean', key === 'working' ? 'neither' : 'down'),
  meaning: states[key].meaning,
  // of what others do to it a single long stop can be more than all else
  ...(states[key].group === 'wait' ? { isUpset: true } : {}),
})
