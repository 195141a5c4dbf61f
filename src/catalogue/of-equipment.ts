/** Measures of a piece of equipment, of its heads, and in the words of ISO 22400-2, one row each. */
import { ofStops, type StopKey } from './causes.js'
import { type NamedRow, sort, sorts } from './row.js'

const pieceRows = {
  held: {
    ...sorts.heldCases,
    label: (_, where) => `Cases ${where}, mean over time`,
    meaning: 'cases in the place, mean over time, those in work included',
    words: 'cases, mean',
  },
  'held-p95': {
    ...sorts.heldCases,
    label: (_, where) => `Cases ${where}, not passed in 95 % of the time`,
    meaning: 'what is not passed for 95 % of the time',
    words: 'not passed in 95 % of the time',
  },
  'held-largest': {
    ...sorts.heldCases,
    label: (_, where) => `Cases ${where}, most at one time`,
    meaning: 'most cases at one time; mean over shifts of the most',
    words: 'most at one time',
    isUpset: true,
  },
  'share-full': {
    ...sorts.idleShare,
    label: (name) => `Share of time full, ${name}`,
    meaning:
      'share of time in which not even the shortest case more would find room; of a belt, in which it stands',
    words: 'full',
    isUpset: true,
  },
  wait: {
    ...sorts.delay,
    label: (name) => `Time from arrival at ${name} to the start of its work, mean`,
    meaning: 'from arrival at its waiting room to the start of its work',
    words: 'wait for work',
  },
  utilisation: {
    ...sorts.busyShare,
    label: (name) => `Share of its places at work, ${name}`,
    meaning:
      'share of its places with a case in work, over all time: none while it stands for a stop or a break',
  },
  'planned-stops': {
    ...sorts.stops,
    label: (name) => `Planned stops a shift, ${name}`,
    meaning: 'stops after a number of cases, such as pallet changes',
    words: 'planned stops',
  },
  'planned-work': {
    ...sorts.stops,
    label: (name) => `Planned work begun a shift, ${name}`,
    meaning: 'times that planned work in the shift was begun, such as cleaning',
    words: 'planned work',
  },
  'planned-work-wait': {
    ...sort('s', 'ratio', 'down'),
    label: (name) => `Mean time from due to begun, planned work, ${name}`,
    meaning: 'time from which planned work is due until somebody is there, while the piece runs on',
  },
  starts: {
    ...sorts.stops,
    label: (name) => `Starts a shift after sensors, ${name}`,
    meaning: 'times that it ran again after sensors had stopped it',
    words: 'starts after sensors',
  },
  'cases-lost': {
    ...sorts.lostCases,
    label: (name) => `Cases spoilt in jams a shift, ${name}`,
    meaning: 'cases spoilt in jams',
  },
  inspected: {
    ...sorts.countedCases,
    label: (name) => `Cases inspected a shift, one that comes again counted again, ${name}`,
    meaning: 'cases looked at, again when they come again',
    words: 'inspected',
  },
  rejected: {
    ...sorts.countedCases,
    label: (name) => `Cases rejected a shift, ${name}`,
    meaning: 'cases that the inspection rejected',
    words: 'rejected',
  },
  'unsealed-found': {
    ...sorts.countedCases,
    label: (name) => `of them unsealed, ${name}`,
    meaning: 'unsealed cases that the inspection found',
    words: 'unsealed, found',
  },
  'unsealed-missed': {
    ...sorts.lostCases,
    label: (name) => `Unsealed cases that passed a shift, ${name}`,
    meaning: 'unsealed cases that the inspection did not find',
    words: 'unsealed, missed',
  },
} satisfies Record<string, NamedRow>

/** Cases that a divert sends to a piece: a measure for each of these, whose key and words hold its name. */
const sentTo = (target: string): NamedRow => ({
  ...sorts.countedCases,
  label: (name) => `Cases sent to ${target} a shift, ${name}`,
  meaning: 'cases that the divert sent there',
  words: `sent to ${target}`,
})

type SentKey = `to-${string}`
export const sentKey = (target: string): SentKey => `to-${target}`
export const isSentKey = (key: string): key is SentKey => key.startsWith('to-')

/** A measure of a piece, as results name it. */
type OwnKey = keyof typeof pieceRows | StopKey
export type PieceKey = OwnKey | SentKey

/** Those whose key holds no name. */
export const ofPieces: Readonly<Record<OwnKey, NamedRow>> = { ...pieceRows, ...ofStops }
export const pieceRow = (key: PieceKey): NamedRow =>
  isSentKey(key) ? sentTo(key.slice(sentKey('').length)) : ofPieces[key]

const headRows = {
  tape: {
    ...sorts.tape,
    label: (of) => `Tape used a shift, ${of}`,
    meaning: 'tape drawn from the roll of the head',
    words: 'tape used',
  },
  'tape-per-case': {
    ...sorts.tapePerCase,
    label: (of) => `Tape a strip, ${of}`,
    meaning: 'tape of one strip',
    words: 'a strip',
  },
  loss: {
    ...sorts.tape,
    label: (of) => `of it lost with the rolls, ${of}`,
    meaning: 'tape lost in threading, stubs and breaks',
    words: 'of it lost',
  },
  rolls: {
    ...sort('rolls', 'total', 'down'),
    label: (of) => `Rolls used a shift, ${of}`,
    meaning: 'rolls used, parts of rolls counted as parts',
    words: 'rolls used',
  },
  changes: {
    ...sorts.stops,
    label: (of) => `Roll changes a shift, ${of}`,
    meaning: 'rolls put in',
    words: 'roll changes',
  },
  'tape-breaks': {
    ...sorts.stops,
    label: (of) => `Tape breaks a shift, ${of}`,
    meaning: 'strips that tear and are laid again',
  },
  spoilt: {
    ...sorts.tape,
    label: (of) => `Tape spoilt in breaks a shift, ${of}`,
    meaning: 'tape of strips that tore',
  },
  missed: {
    ...sorts.lostCases,
    label: (of) => `Cases that passed an empty roll a shift, ${of}`,
    meaning: 'cases that passed an empty roll',
  },
} satisfies Record<string, NamedRow>

/** A measure of a head; its label takes machine and head. */
export type HeadKey = keyof typeof headRows
export const ofHeads: Readonly<Record<HeadKey, NamedRow>> = headRows

const effectivenessRows = {
  PBT: {
    ...sorts.element,
    label: (name) => `PBT, planned busy time a shift, ${name}`,
    meaning: 'ISO 22400-2: the shift less breaks, planned stops and blade service',
  },
  APT: {
    ...sorts.element,
    label: (name) => `APT, actual production time a shift, ${name}`,
    meaning: 'ISO 22400-2: time in which it works on cases',
  },
  AUST: {
    ...sorts.element,
    label: (name) => `AUST, actual unit set-up time a shift, ${name}`,
    meaning: 'ISO 22400-2: time in which it is set',
  },
  ADET: {
    ...sorts.element,
    label: (name) => `ADET, actual unit delay time a shift, ${name}`,
    meaning: 'ISO 22400-2: time lost to stops that nobody planned',
  },
  availability: {
    ...sorts.index,
    label: (name) => `Availability, ${name}`,
    meaning: 'ISO 22400-2: APT over PBT',
    words: 'availability',
  },
  effectiveness: {
    ...sorts.index,
    label: (name) => `Effectiveness, ${name}`,
    meaning: 'ISO 22400-2: planned run time of its cases over APT',
    words: 'effectiveness',
  },
  quality: {
    ...sorts.index,
    label: (name) => `Quality ratio, ${name}`,
    meaning: 'ISO 22400-2: good cases over all cases',
    words: 'quality',
    isPart: true,
  },
  oee: {
    ...sorts.index,
    label: (name) => `OEE index, ${name}`,
    meaning: 'product of the three; not cut off at 1',
    words: 'OEE index',
  },
  'technical-availability': {
    ...sorts.index,
    label: (name) => `Technical availability, ${name}`,
    meaning: 'share of PBT without its own jams, tape and breakdowns: what others do to it does not lower it',
    words: 'technical availability',
  },
  MTBF: {
    ...sorts.failureTime,
    label: (name) => `MTBF, mean operating time between failures, ${name}`,
    meaning:
      'ISO 22400-2: operating time and times to repair of the study over its breakdowns and one: MTTF and MTTR together',
    words: 'MTBF',
    isOverOneMore: true,
    isTimeOfEvents: true,
  },
  MTTF: {
    ...sorts.failureTime,
    label: (name) => `MTTF, mean operating time to failure, ${name}`,
    meaning:
      'ISO 22400-2: operating time of the study, at work and being set, over its breakdowns and one; the one is for the time to the next failure, which is still open',
    words: 'MTTF',
    isOverOneMore: true,
    isTimeOfEvents: true,
  },
  MTTR: {
    ...sorts.failureTime,
    better: 'down',
    label: (name) => `MTTR, mean time to repair, ${name}`,
    meaning:
      'ISO 22400-2: time of the study from breakdown to restart, waiting for crew included, over its breakdowns and one; low where these are few, for no repair is open',
    words: 'MTTR',
    isOverOneMore: true,
  },
} satisfies Record<string, NamedRow>

/** A time element or key figure of ISO 22400-2. */
export type EffectivenessKey = keyof typeof effectivenessRows
export const ofEffectiveness: Readonly<Record<EffectivenessKey, NamedRow>> = effectivenessRows
