/** The states of a piece of equipment, one row each in the order of results: it is in exactly one of them at a time. */
import type { NamedRow } from './row.js'

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
  /** Its words; of a state that one stop shares with another those after the name of the stop. */
  words: string
  /** That name. */
  of?: string
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
      'at work on a case; of a sealer the time of its headway and of folding, of a conveyor the time in which it moves cases',
  },
  waiting: {
    words: 'waiting for a case',
    short: 'waiting',
    group: 'wait',
    meaning: 'ready, and no case is there',
    remedy: (name, of) => `Look at what comes before ${name}, which waits for cases for ${of} of the shift.`,
  },
  blocked: {
    words: 'blocked ahead',
    short: 'blocked',
    group: 'wait',
    meaning: 'ready, and what follows takes no case',
    remedy: (name, of) =>
      `Look at what follows ${name}: it holds that up for ${of} of the shift. Try more conveyor there, or a faster piece.`,
  },
  'jam-waiting-for-crew': {
    ...waitingForCrew,
    of: 'jam',
    short: 'jam: waits for crew',
    stop: 'jam',
    meaning: 'jammed, and nobody is there yet',
  },
  'jam-being-cleared': {
    words: 'being cleared',
    of: 'jam',
    short: 'jam: being cleared',
    group: 'stop',
    stop: 'jam',
    meaning: 'jammed, and somebody clears it, isolation included',
    remedy: (name, of) =>
      `Find what makes cases jam: jams of ${name} take ${of} of the shift. Clearing itself must not be hurried.`,
  },
  'tape-waiting-for-crew': {
    ...waitingForCrew,
    of: 'tape',
    short: 'tape: waits for crew',
    stop: 'tape',
    meaning: 'out of tape or with a torn strip, and nobody is there yet',
  },
  'tape-being-changed': {
    words: 'being changed',
    of: 'tape',
    short: 'tape: changing',
    group: 'stop',
    stop: 'tape',
    meaning: 'a roll is put in, or a torn strip mended',
    remedy: (name, of) =>
      `Try longer rolls, or holders on which the next one waits ready: rolls of ${name} are being changed for ${of} of the shift.`,
  },
  'size-waiting-for-crew': {
    ...waitingForCrew,
    of: 'size',
    short: 'size: waits for crew',
    stop: 'size',
    meaning: 'another case is due, and nobody is there to set it',
  },
  'size-being-set': {
    words: 'being set',
    of: 'size',
    short: 'size: being set',
    group: 'stop',
    stop: 'size',
    meaning: 'it is set to another case',
    remedy: (name, of) =>
      `Try longer runs of one case, or a machine that sets itself: setting sizes at ${name} takes ${of} of the shift.`,
  },
  'breakdown-waiting-for-crew': {
    ...waitingForCrew,
    of: 'breakdown',
    short: 'broken: waits for crew',
    stop: 'breakdown',
    meaning: 'broken down, and nobody is there yet',
  },
  'breakdown-being-repaired': {
    words: 'being repaired',
    of: 'breakdown',
    short: 'broken: repair',
    group: 'stop',
    stop: 'breakdown',
    meaning: 'broken down, and somebody repairs it',
    remedy: (name, of) =>
      `See to maintenance and spare parts: breakdowns of ${name} take ${of} of the shift.`,
  },
  'blade-service': {
    words: 'blade service',
    short: 'blade service',
    group: 'stop',
    stop: 'blade',
    meaning: 'stopped for its blades',
    remedy: (name, of) => `Service blades outside the shift: at ${name} they take ${of} of it.`,
  },
  'planned-stop': {
    words: 'planned stop',
    short: 'planned stop',
    group: 'stop',
    stop: 'planned',
    meaning: 'stands after a number of cases, as for a pallet change, and no case is in work',
    remedy: (name, of) =>
      `Try more cases between planned stops of ${name}, or a second piece that works meanwhile: they take ${of} of the shift.`,
  },
  'on-break': {
    words: 'on break',
    short: 'on break',
    group: 'break',
    meaning: 'stands because of a break',
  },
} satisfies Record<string, State>

/** A state, as results name it. */
export type StateKey = keyof typeof rows
export const states: Readonly<Record<StateKey, State>> = rows
/** In the order of results. */
export const stateKeys = Object.keys(rows) as StateKey[]

/** The state in words: `jam: being cleared`. `between` stands after the name of the stop. */
export function stateLabel(key: StateKey, between = ': '): string {
  const { words, of } = states[key]
  return of === undefined ? words : `${of}${between}${words}`
}

/** The share of time in a state, as a measure of a piece. */
export const stateRow = (key: StateKey): NamedRow => ({
  label: (name) => `${name}: ${stateLabel(key)}`,
  unit: 'share',
  kind: 'mean',
  better: key === 'working' ? 'neither' : 'down',
  meaning: states[key].meaning,
  // of what others do to it a single long stop can be more than all else
  ...(states[key].group === 'wait' ? { isUpset: true } : {}),
})
