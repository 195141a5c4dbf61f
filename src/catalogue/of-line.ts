/** Measures of the line as a whole, one row each. */
import { ofElements } from './costs.js'
import { type Row, sorts } from './row.js'

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
    label: 'Good cases out over working time',
    unit: 'cases/s',
    kind: 'mean',
    better: 'up',
    meaning: 'good cases out over working time, which is the shift less its breaks',
    column: 'cases out',
    subject: 'Good cases out',
    topic: 'what it puts out',
    wish: 'to put out more',
    claim: (size, isMore) => `puts out ${size} ${isMore ? 'more' : 'less'}`,
  },
  output: {
    label: 'Good cases out a shift',
    unit: 'cases',
    kind: 'total',
    better: 'up',
    meaning: 'cases that leave the line sealed and not rejected, a shift',
    column: 'good cases a shift',
  },
  'output-p10': {
    label: 'Good cases that 9 of 10 shifts put out',
    unit: 'cases',
    kind: 'quantile',
    better: 'up',
    meaning: 'what 9 of 10 shifts reach: a quantile over shifts, with an interval from order statistics',
  },
  'time-in-system': {
    ...sorts.delay,
    label: 'Time from arrival to exit, mean',
    meaning: 'from the arrival of a case until it leaves the line, mean over the cases of a shift',
    column: 'time in the line',
    topic: 'the time in the line',
    claim: (size, isMore) => `keeps a case in the line ${size} ${isMore ? 'longer' : 'shorter'}`,
  },
  'time-in-system-p95': {
    ...sorts.delay,
    label: 'Time from arrival to exit, not passed by 95 % of the cases',
    meaning: 'the time that 95 of 100 cases of a shift do not pass',
  },
  'target-held': {
    label: 'Share of shifts that reach the target',
    unit: 'share',
    kind: 'share',
    better: 'up',
    meaning:
      'of all shifts those whose own throughput reaches the target; Wilson interval, exact limits where nearly all or nearly none do',
    column: 'target held in',
    subject: 'Shifts that hold the target',
    topic: 'how often it holds the target',
    wish: 'to hold the target more often',
  },
  rejected: {
    ...sorts.lostCases,
    label: 'Cases that left the line rejected, a shift',
    meaning: 'cases that left the line as rejected',
  },
  reopened: {
    label: 'Good cases whose closure opens later, expected, a shift',
    unit: 'cases',
    kind: 'total',
    better: 'down',
    meaning: 'good cases times the chance that a closure opens after the line: expected, not drawn',
  },
  unsealed: {
    ...sorts.lostCases,
    label: 'Unsealed cases that left the line unnoticed, a shift',
    meaning: 'cases that left with a strip missing, seen by nobody; they are not good ones',
    column: 'unsealed a shift',
  },
  'tape-per-case': {
    ...sorts.tapePerCase,
    label: 'Tape on a good case',
    meaning: 'tape off the rolls that lies on a good case',
  },
  'tape-lost-per-case': {
    ...sorts.tapePerCase,
    label: 'Tape lost with the rolls and in breaks, a good case',
    meaning: 'tape lost in threading, stubs and breaks, spread over the good cases',
  },
  tape: {
    ...sorts.tape,
    label: 'Tape used a shift, all heads, loss included',
    meaning: 'tape drawn from all rolls, losses included',
    column: 'tape a shift',
  },
  'tape-mass': {
    label: 'Mass of that tape, without cores',
    unit: 'kg',
    kind: 'total',
    better: 'down',
    meaning: 'the same by weight, without cores',
  },
  'cost-per-1000': {
    ...sorts.cost,
    label: 'Cost of 1000 good cases',
    meaning: 'all that is priced in the scenario, over the good cases',
    column: '1000 cases cost',
    subject: 'Cost of 1000 cases',
    topic: 'the cost of 1000 cases',
    wish: 'to cost less per 1000 cases',
    claim: (size, isMore) => `costs ${size} ${isMore ? 'more' : 'less'} per 1000 cases`,
  },
  'cost-per-year': {
    label: 'Cost of a year, all that is priced',
    unit: 'money/yr',
    kind: 'total',
    better: 'down',
    meaning: 'cost of a shift times the shifts of a year',
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
