/** Measures of a piece of equipment, of its heads, and in the words of ISO 22400-2, one row each. */
import { ofStops, type StopKey } from './causes.js'
import type { NamedRow } from './row.js'

/** Cases in a place. */
const held = { unit: 'cases', kind: 'mean', better: 'neither' } as const
/** Cases that a piece has to do with, or things that happen to it, a shift. */
const count = { unit: 'cases', kind: 'count' } as const

const pieceRows = {
  held: {
    ...held,
    label: (_, where) => `Cases ${where}, mean over time`,
    meaning: 'cases in the place, mean over time, those in work included',
    words: 'cases, mean',
  },
  'held-p95': {
    ...held,
    label: (_, where) => `Cases ${where}, not passed in 95 % of the time`,
    meaning: 'what is not passed for 95 % of the time',
    words: 'not passed in 95 % of the time',
  },
  'held-largest': {
    ...held,
    label: (_, where) => `Cases ${where}, most at one time`,
    meaning: 'most cases at one time; mean over shifts of the most',
    words: 'most at one time',
    isUpset: true,
  },
  'share-full': {
    label: (name) => `Share of time full, ${name}`,
    unit: 'share',
    kind: 'mean',
    better: 'down',
    meaning:
      'share of time in which not even the shortest case more would find room; of a belt, in which it stands',
    words: 'full',
    isUpset: true,
  },
  wait: {
    label: (name) => `Time from arrival at ${name} to the start of its work, mean`,
    unit: 's',
    kind: 'mean',
    better: 'down',
    meaning: 'from arrival at its waiting room to the start of its work',
    words: 'wait for work',
  },
  utilisation: {
    label: (name) => `Share of its places at work, ${name}`,
    unit: 'share',
    kind: 'mean',
    better: 'neither',
    meaning:
      'share of its places with a case in work, over all time: none while it stands for a stop or a break',
  },
  'planned-stops': {
    label: (name) => `Planned stops a shift, ${name}`,
    unit: 'count',
    kind: 'count',
    better: 'down',
    meaning: 'stops after a number of cases, such as pallet changes',
    words: 'planned stops',
  },
  'cases-lost': {
    ...count,
    label: (name) => `Cases spoilt in jams a shift, ${name}`,
    better: 'down',
    meaning: 'cases spoilt in jams',
  },
  inspected: {
    ...count,
    label: (name) => `Cases inspected a shift, one that comes again counted again, ${name}`,
    better: 'neither',
    meaning: 'cases looked at, again when they come again',
    words: 'inspected',
  },
  rejected: {
    ...count,
    label: (name) => `Cases rejected a shift, ${name}`,
    better: 'neither',
    meaning: 'cases that the inspection rejected',
    words: 'rejected',
  },
  'unsealed-found': {
    ...count,
    label: (name) => `of them unsealed, ${name}`,
    better: 'neither',
    meaning: 'unsealed cases that the inspection found',
    words: 'unsealed, found',
  },
  'unsealed-missed': {
    ...count,
    label: (name) => `Unsealed cases that passed a shift, ${name}`,
    better: 'down',
    meaning: 'unsealed cases that the inspection did not find',
    words: 'unsealed, missed',
  },
} satisfies Record<string, NamedRow>

/** Cases that a divert sends to a piece: a measure for each of these, whose key and words hold its name. */
const sentTo = (target: string): NamedRow => ({
  ...count,
  label: (name) => `Cases sent to ${target} a shift, ${name}`,
  better: 'neither',
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
    label: (of) => `Tape used a shift, ${of}`,
    unit: 'm',
    kind: 'total',
    better: 'down',
    meaning: 'tape drawn from the roll of the head',
    words: 'tape used',
  },
  'tape-per-case': {
    label: (of) => `Tape a strip, ${of}`,
    unit: 'm/case',
    kind: 'ratio',
    better: 'down',
    meaning: 'tape of one strip',
    words: 'a strip',
  },
  loss: {
    label: (of) => `of it lost with the rolls, ${of}`,
    unit: 'm',
    kind: 'total',
    better: 'down',
    meaning: 'tape lost in threading, stubs and breaks',
    words: 'of it lost',
  },
  rolls: {
    label: (of) => `Rolls used a shift, ${of}`,
    unit: 'rolls',
    kind: 'total',
    better: 'down',
    meaning: 'rolls used, parts of rolls counted as parts',
    words: 'rolls used',
  },
  changes: {
    label: (of) => `Roll changes a shift, ${of}`,
    unit: 'count',
    kind: 'count',
    better: 'down',
    meaning: 'rolls put in',
    words: 'roll changes',
  },
  'tape-breaks': {
    label: (of) => `Tape breaks a shift, ${of}`,
    unit: 'count',
    kind: 'count',
    better: 'down',
    meaning: 'strips that tear and are laid again',
  },
  spoilt: {
    label: (of) => `Tape spoilt in breaks a shift, ${of}`,
    unit: 'm',
    kind: 'total',
    better: 'down',
    meaning: 'tape of strips that tore',
  },
  missed: {
    ...count,
    label: (of) => `Cases that passed an empty roll a shift, ${of}`,
    better: 'down',
    meaning: 'cases that passed an empty roll',
  },
} satisfies Record<string, NamedRow>

/** A measure of a head; its label takes machine and head. */
export type HeadKey = keyof typeof headRows
export const ofHeads: Readonly<Record<HeadKey, NamedRow>> = headRows

const element = { unit: 's', kind: 'total', better: 'neither' } as const
const ratio = { unit: 'share', kind: 'ratio', better: 'up' } as const

const effectivenessRows = {
  PBT: {
    ...element,
    label: (name) => `PBT, planned busy time a shift, ${name}`,
    meaning: 'ISO 22400-2: the shift less breaks, planned stops and blade service',
  },
  APT: {
    ...element,
    label: (name) => `APT, actual production time a shift, ${name}`,
    meaning: 'ISO 22400-2: time in which it works on cases',
  },
  AUST: {
    ...element,
    label: (name) => `AUST, actual unit set-up time a shift, ${name}`,
    meaning: 'ISO 22400-2: time in which it is set',
  },
  ADET: {
    ...element,
    label: (name) => `ADET, actual unit delay time a shift, ${name}`,
    meaning: 'ISO 22400-2: time lost to stops that nobody planned',
  },
  availability: {
    ...ratio,
    label: (name) => `Availability, ${name}`,
    meaning: 'ISO 22400-2: APT over PBT',
    words: 'availability',
  },
  effectiveness: {
    ...ratio,
    label: (name) => `Effectiveness, ${name}`,
    meaning: 'ISO 22400-2: planned run time of its cases over APT',
    words: 'effectiveness',
  },
  quality: {
    ...ratio,
    label: (name) => `Quality ratio, ${name}`,
    meaning: 'ISO 22400-2: good cases over all cases',
    words: 'quality',
    isPart: true,
  },
  oee: {
    ...ratio,
    label: (name) => `OEE index, ${name}`,
    meaning: 'product of the three; not cut off at 1',
    words: 'OEE index',
  },
  'technical-availability': {
    ...ratio,
    label: (name) => `Technical availability, ${name}`,
    meaning: 'share of PBT without its own jams, tape and breakdowns: what others do to it does not lower it',
    words: 'technical availability',
  },
} satisfies Record<string, NamedRow>

/** A time element or key figure of ISO 22400-2. */
export type EffectivenessKey = keyof typeof effectivenessRows
export const ofEffectiveness: Readonly<Record<EffectivenessKey, NamedRow>> = effectivenessRows
