/** Measures of what comes to the line and of the crew, one row each. */
import { type NamedRow, sort, sorts } from './row.js'

const arrivalRows = {
  arrived: {
    ...sort('cases', 'total', 'neither'),
    label: (name) => `Cases that arrived a shift, ${name}`,
    meaning: 'cases that arrived, including those turned away',
  },
  'orders-done': {
    ...sort('count', 'total', 'up'),
    label: (name) => `Orders completed, ${name}`,
    meaning: 'orders whose last case has arrived',
    words: 'orders completed',
  },
  blocked: {
    ...sorts.idleShare,
    label: (name) => `Share of working time in which ${name} is blocked`,
    meaning: 'share of working time in which the packers wait for room on the line',
    words: 'waits',
    isUpset: true,
  },
  'turned-away': {
    ...sort('share', 'ratio', 'down'),
    label: (name) => `Share of the cases of ${name} that were turned away`,
    meaning: 'share of the cases that found no room on the line and went elsewhere',
    words: 'turns away',
    isPart: true,
  },
  held: {
    ...sort('cases', 'mean', 'down'),
    label: (name) => `Cases on the floor at ${name}, mean over time`,
    meaning: 'cases on the floor before the line, mean over time',
  },
  'held-largest': {
    ...sort('cases', 'mean', 'down'),
    label: (name) => `Cases on the floor at ${name}, most at one time`,
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
    meaning: 'share of their time on duty in which they walk or work',
    words: 'busy',
  },
  'other-work': {
    ...sorts.busyShare,
    label: (name) => `Share of time at other work, ${name}`,
    meaning: 'share of their time on duty in which they do work beside the line',
    words: 'at other work',
  },
  'other-work-done': {
    ...sort('count', 'count', 'neither'),
    label: (name) => `Other work done a shift, ${name}`,
    meaning: 'jobs beside the line that were completed',
    words: 'other work done',
  },
  'other-work-left': {
    ...sort('s', 'mean', 'down'),
    label: (name) => `Other work left at the end, ${name}`,
    meaning: 'how long the jobs beside the line would take that are due at the end of the shift and not done',
    words: 'other work left at the end',
    isUpset: true,
  },
  'at-post': {
    ...sort('share', 'mean', 'up'),
    label: (name) => `Share of the time with somebody at the post, ${name}`,
    meaning: 'share of the time with somebody at the flap place',
    words: 'somebody at the post',
  },
} satisfies Record<string, NamedRow>

export type CrewKey = keyof typeof crewRows
export const ofCrew: Readonly<Record<CrewKey, NamedRow>> = crewRows
