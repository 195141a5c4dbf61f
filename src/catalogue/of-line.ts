/** Measures of the line as a whole, one row each. */
import { ofElements } from './costs.js'
import { type Row, sort, sorts } from './row.js'

/** A measure of the line; the words below are those of the few that sentences speak of. */
export interface LineRow extends Row<string> {
  /** At the head of a narrow column. */
  column?: string
  /** At the head of a sentence of its own. */
  subject?: string
  /** In a sentence on what is not shown to differ. */
  topic?: string
  /** What a design that is better in it is shown to do. */
  wish?: string
  /** What a design does that has so much more or less of it. */
  claim?: (size: string, isMore: boolean) => string
}

const rows = {
  throughput: {
    ...sort('cases/s', 'mean', 'up'),
    label: 'Throughput of good cases',
    meaning: 'good cases out of the line, divided by the working time (the shift without its breaks)',
    column: 'cases out',
    subject: 'Throughput',
    topic: 'its throughput',
    wish: 'to have more throughput',
    claim: (size, isMore) => `has ${size} ${isMore ? 'more' : 'less'} throughput`,
  },
  output: {
    ...sort('cases', 'total', 'up'),
    label: 'Good cases a shift',
    meaning: 'cases that leave the line sealed and not rejected, a shift',
    column: 'good cases a shift',
  },
  'output-p10': {
    ...sort('cases', 'quantile', 'up'),
    label: 'Good cases that 9 of 10 shifts reach',
    meaning:
      '9 of 10 shifts reach at least this number: a quantile over shifts, with an interval from order statistics',
  },
  'time-in-system': {
    ...sorts.delay,
    label: 'Time in the line, mean',
    meaning: 'from the arrival of a case until it leaves the line: mean over the cases of a shift',
    column: 'time in the line',
    topic: 'the time in the line',
    claim: (size, isMore) => `keeps a case in the line for ${size} ${isMore ? 'longer' : 'less'}`,
  },
  'time-in-system-p95': {
    ...sorts.delay,
    label: 'Time in the line, 95 % of the cases take less',
    meaning: '95 of 100 cases of a shift are in the line for less than this time',
  },
  'target-held': {
    ...sort('share', 'share', 'up'),
    label: 'Share of shifts that reach the target',
    meaning:
      'share of the shifts whose own throughput reaches the target. Wilson interval; exact limits where nearly all or nearly none do',
    column: 'shifts that reach the target',
    subject: 'Shifts that hold the target',
    topic: 'how often it reaches the target',
    wish: 'to reach the target more often',
  },
  rejected: {
    ...sorts.lostCases,
    label: 'Cases that left the line rejected, a shift',
    meaning: 'cases that left the line after an inspection rejected them',
  },
  reopened: {
    ...sort('cases', 'total', 'down'),
    label: 'Good cases whose closure opens later, a shift, expected',
    meaning:
      'good cases times the chance that a closure opens after the line. This is calculated, not simulated',
  },
  unsealed: {
    ...sorts.lostCases,
    label: 'Unsealed cases that left the line unnoticed, a shift',
    meaning: 'cases that left with a strip missing and unnoticed; they do not count as good',
    column: 'unsealed a shift',
  },
  'tape-per-case': {
    ...sorts.tapePerCase,
    label: 'Tape on each good case',
    meaning: 'length of tape, as taken from the roll, on each good case',
  },
  'tape-lost-per-case': {
    ...sorts.tapePerCase,
    label: 'Tape lost in roll changes and breaks, per good case',
    meaning: 'tape lost in threading, roll ends and tape breaks, divided by the good cases',
  },
  tape: {
    ...sorts.tape,
    label: 'Tape used a shift, all heads, losses included',
    meaning: 'tape taken from all rolls, losses included',
    column: 'tape a shift',
  },
  'tape-mass': {
    ...sort('kg', 'total', 'down'),
    label: 'Mass of the tape used, without cores',
    meaning: 'mass of the tape used a shift, without cores',
  },
  'cost-per-1000': {
    ...sorts.cost,
    label: 'Cost of 1000 good cases',
    meaning: 'all costs that have a price in the scenario, for 1000 good cases',
    column: '1000 cases cost',
    subject: 'Cost of 1000 cases',
    topic: 'the cost of 1000 cases',
    wish: 'to cost less per 1000 cases',
    claim: (size, isMore) => `costs ${size} ${isMore ? 'more' : 'less'} per 1000 cases`,
  },
  'cost-per-year': {
    ...sort('money/yr', 'total', 'down'),
    label: 'Cost a year, all costs with a price',
    meaning: 'cost of a shift times the number of shifts a year',
    column: 'a year costs',
  },
  ...ofElements,
} satisfies Record<string, LineRow>

/** A measure of the line, by its name in results and in what people ask for. */
export type MeasureKey = keyof typeof rows
export const ofLine: Readonly<Record<MeasureKey, LineRow>> = rows

/** The row of a measure of the line; undefined of one of a piece, or where there is none of that name. */
export const lineRow = (name: string): LineRow | undefined =>
  Object.hasOwn(ofLine, name) ? ofLine[name as MeasureKey] : undefined
