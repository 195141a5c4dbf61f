/** Measures of a piece of equipment, of its heads, and in the words of ISO 22400-2, one row each. */
import { ofStops, type StopKey } from './causes.js'
import { type NamedRow, sort, sorts } from './row.js'

const pieceRows = {
  held: {
    ...sorts.heldCases,
    label: (_, where) => `Cases ${where}, mean over time`,
    meaning: 'cases at this piece, mean over time, including those being worked on',
    words: 'cases, mean',
    addsUp: true,
  },
  'held-p95': {
    ...sorts.heldCases,
    label: (_, where) => `Cases ${where}, at most this many for 95 % of the time`,
    meaning: 'for 95 % of the time there are no more cases here than this',
    words: 'at most, for 95 % of the time',
  },
  'held-largest': {
    ...sorts.heldCases,
    label: (_, where) => `Cases ${where}, largest number at one time`,
    meaning: 'largest number of cases at one time: mean over the shifts',
    words: 'largest number at one time',
    isUpset: true,
  },
  'share-full': {
    ...sorts.idleShare,
    label: (name) => `Share of time full, ${name}`,
    meaning:
      'share of the time without room for one more of the shortest cases; for a belt, share of the time in which it is stopped',
    words: 'full',
    isUpset: true,
  },
  wait: {
    ...sorts.delay,
    label: (name) => `Time from arrival at ${name} to the start of its work, mean`,
    meaning: 'from arrival in front of the piece to the start of work on the case',
    words: 'wait before work',
  },
  utilisation: {
    ...sorts.busyShare,
    label: (name) => `Utilization of its places, ${name}`,
    meaning:
      'share of its places that work on a case, over all time. During a stop or a break no place works',
  },
  'planned-stops': {
    ...sorts.stops,
    label: (name) => `Planned stops a shift, ${name}`,
    meaning: 'stops after a number of cases, such as pallet changes',
    words: 'planned stops',
  },
  'planned-work': {
    ...sorts.stops,
    label: (name) => `Planned work started a shift, ${name}`,
    meaning: 'how often planned work such as cleaning was started',
    words: 'planned work',
  },
  'planned-work-wait': {
    ...sort('s', 'ratio', 'down'),
    label: (name) => `Mean delay of planned work, ${name}`,
    meaning: 'time from when planned work is due until somebody arrives; the piece keeps running',
  },
  starts: {
    ...sorts.stops,
    label: (name) => `Starts by sensors a shift, ${name}`,
    meaning: 'how often it started again after a sensor had stopped it',
    words: 'starts by sensors',
  },
  'cases-lost': {
    ...sorts.lostCases,
    label: (name) => `Cases spoilt in jams a shift, ${name}`,
    meaning: 'cases spoilt in jams',
  },
  inspected: {
    ...sorts.countedCases,
    label: (name) => `Cases inspected a shift, ${name}`,
    meaning: 'cases inspected; a case that comes back is counted again',
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
    label: (name) => `Unsealed cases among the rejected, ${name}`,
    meaning: 'unsealed cases that the inspection found',
    words: 'unsealed, found',
  },
  'unsealed-missed': {
    ...sorts.lostCases,
    label: (name) => `Unsealed cases missed a shift, ${name}`,
    meaning: 'unsealed cases that the inspection missed',
    words: 'unsealed, missed',
  },
} satisfies Record<string, NamedRow>

/** Cases that a divert sends to a piece: a measure for each of these, whose key and words hold its name. */
const sentTo = (target: string): NamedRow => ({
  ...sorts.countedCases,
  label: (name) => `Cases sent to ${target} a shift, ${name}`,
  meaning: 'cases that the divert sent to it',
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
    label: (of) => `Tape for one strip, ${of}`,
    meaning: 'tape of one strip',
    words: 'tape per strip',
  },
  loss: {
    ...sorts.tape,
    label: (of) => `Tape lost in roll changes and breaks, ${of}`,
    meaning: 'tape lost in threading, roll ends and tape breaks',
    words: 'tape lost',
  },
  rolls: {
    ...sort('rolls', 'total', 'down'),
    label: (of) => `Rolls used a shift, ${of}`,
    meaning: 'rolls used; part of a roll counts as a fraction',
    words: 'rolls used',
  },
  changes: {
    ...sorts.stops,
    label: (of) => `Roll changes a shift, ${of}`,
    meaning: 'rolls changed',
    words: 'roll changes',
  },
  'tape-breaks': {
    ...sorts.stops,
    label: (of) => `Tape breaks a shift, ${of}`,
    meaning: 'strips that tear and are applied again',
  },
  spoilt: {
    ...sorts.tape,
    label: (of) => `Tape spoilt in tape breaks a shift, ${of}`,
    meaning: 'tape of strips that tore',
  },
  missed: {
    ...sorts.lostCases,
    label: (of) => `Cases that passed while the roll was empty, a shift, ${of}`,
    meaning: 'cases that passed the head while its roll was empty',
  },
} satisfies Record<string, NamedRow>

/** A measure of a head; its label takes machine and head. */
export type HeadKey = keyof typeof headRows
export const ofHeads: Readonly<Record<HeadKey, NamedRow>> = headRows

const effectivenessRows = {
  PBT: {
    ...sorts.element,
    label: (name) => `PBT, planned busy time a shift, ${name}`,
    meaning: 'ISO 22400-2: the shift without breaks, planned stops and blade service',
  },
  APT: {
    ...sorts.element,
    label: (name) => `APT, actual production time a shift, ${name}`,
    meaning: 'ISO 22400-2: time in which it works on cases',
  },
  AUST: {
    ...sorts.element,
    label: (name) => `AUST, actual unit set-up time a shift, ${name}`,
    meaning: 'ISO 22400-2: time of changeovers',
  },
  ADET: {
    ...sorts.element,
    label: (name) => `ADET, actual unit delay time a shift, ${name}`,
    meaning: 'ISO 22400-2: time lost to unplanned stops and waiting',
  },
  availability: {
    ...sorts.index,
    label: (name) => `Availability, ${name}`,
    meaning: 'ISO 22400-2: APT / PBT',
    words: 'availability',
  },
  effectiveness: {
    ...sorts.index,
    label: (name) => `Effectiveness, ${name}`,
    meaning: 'ISO 22400-2: planned run time of its cases / APT',
    words: 'effectiveness',
  },
  quality: {
    ...sorts.index,
    label: (name) => `Quality ratio, ${name}`,
    meaning: 'ISO 22400-2: good cases / all cases',
    words: 'quality',
    isPart: true,
  },
  oee: {
    ...sorts.index,
    label: (name) => `OEE index, ${name}`,
    meaning: 'product of the three; it may exceed 100 %',
    words: 'OEE index',
  },
  'technical-availability': {
    ...sorts.index,
    label: (name) => `Technical availability, ${name}`,
    meaning:
      'share of PBT without its own jams, tape stops and breakdowns. Being starved or blocked does not lower it',
    words: 'technical availability',
  },
  MTBF: {
    ...sorts.failureTime,
    label: (name) => `MTBF, mean operating time between failures, ${name}`,
    meaning:
      'ISO 22400-2: MTTF plus MTTR, that is (operating time + repair time) / (breakdowns + 1) over the whole study',
    words: 'MTBF',
    isOverOneMore: true,
    isTimeOfEvents: true,
  },
  MTTF: {
    ...sorts.failureTime,
    label: (name) => `MTTF, mean operating time to failure, ${name}`,
    meaning:
      'ISO 22400-2: operating time (working and changeovers) / (breakdowns + 1) over the whole study. The 1 stands for the time to the next failure, which has not come yet',
    words: 'MTTF',
    isOverOneMore: true,
    isTimeOfEvents: true,
  },
  MTTR: {
    ...sorts.failureTime,
    better: 'down',
    label: (name) => `MTTR, mean time to repair, ${name}`,
    meaning:
      'ISO 22400-2: time from breakdown to restart, waiting for crew included, / (breakdowns + 1) over the whole study. It is too low where breakdowns are few',
    words: 'MTTR',
    isOverOneMore: true,
  },
} satisfies Record<string, NamedRow>

/** A time element or key figure of ISO 22400-2. */
export type EffectivenessKey = keyof typeof effectivenessRows
export const ofEffectiveness: Readonly<Record<EffectivenessKey, NamedRow>> = effectivenessRows
