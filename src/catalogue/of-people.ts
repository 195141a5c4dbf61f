/** Measures of what comes to the line and of the crew, one row each. */
import { type NamedRow, sorts } from './row.js'

const arrivalRows = {
  arrived: {
    label: (name) => `Cases that arrived a shift, ${name}`,
    unit: 'cases',
    kind: 'total',
    better: 'neither',
    meaning: 'cases that came, those turned away included',
  },
  'orders-done': {
    label: (name) => `Orders whose last case has come, ${name}`,
    unit: 'count',
    kind: 'total',
    better: 'up',
    meaning: 'orders whose last case has come',
    words: 'orders done',
  },
  blocked: {
    ...sorts.idleShare,
    label: (name) => `Share of working time in which ${name} waits for room`,
    meaning: 'share of working time in which the packers wait for room',
    words: 'waits',
    isUpset: true,
  },
  'turned-away': {
    label: (name) => `Share of the cases of ${name} that were turned away`,
    unit: 'share',
    kind: 'ratio',
    better: 'down',
    meaning: 'share of the cases that found no room and went elsewhere',
    words: 'turns away',
    isPart: true,
  },
  held: {
    label: (name) => `Cases on the floor at ${name}, mean over time`,
    unit: 'cases',
    kind: 'mean',
    better: 'down',
    meaning: 'cases on the floor before the line, mean over time',
  },
  'held-largest': {
    label: (name) => `Cases on the floor at ${name}, most at one time`,
    unit: 'cases',
    kind: 'mean',
    better: 'down',
    meaning: 'most cases on the floor at one time',
    isUpset: true,
  },
} satisfies Record<string, NamedRow>

export type ArrivalKey = keyof typeof arrivalRows
export const ofArrivals: Readonly<Record<ArrivalKey, NamedRow>> = arrivalRows

const crewRows = {
  busy: {
    ...sorts.busyShare,
    label: (name) => `Share of time busy (walking and working), ${name}`,
    meaning: 'share of the time in which they are there in which they walk or work',
    words: 'busy',
  },
  'at-post': {
    label: (name) => `Share of the time in which somebody stands at the post, ${name}`,
    unit: 'share',
    kind: 'mean',
    better: 'up',
    meaning: 'share of time in which somebody stands there',
    words: 'somebody at the post',
  },
} satisfies Record<string, NamedRow>

export type CrewKey = keyof typeof crewRows
export const ofCrew: Readonly<Record<CrewKey, NamedRow>> = crewRows
