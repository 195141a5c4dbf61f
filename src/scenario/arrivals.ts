/** Keys of a source: where cases arrive from and in which of the five ways. */
import * as z from 'zod'
import { passesTo } from '../kinds/shared-keys.js'
import { timeDistribution } from './distribution.js'
import { assume, broken, choice, quantity, text, unitOf, whole } from './kit.js'

/** The ways in which cases may come; exactly one of them stands in a source. */
export const ways = ['time-between', 'rate', 'by-hour', 'orders', 'log'] as const

/** Hours in the longest shift that the format allows: 366 days. */
const mostHours = 8784
const mostOrders = 1000

/** Recorded arrivals as they are replayed; filled in after the file is read. */
export interface RecordedLog {
  file: string
  time: string
  case?: string | undefined
  unit: string
  /** Since the start of the shift, s, not decreasing. */
  times: Float64Array
  /** Kind of each case by its place in the scenario; null where the mix is drawn. */
  kinds: Uint16Array | null
}

const byHour = z
  .strictObject({
    cases: z
      .array(quantity('case-rate', 'rate of that hour', { from: 0 }))
      .min(1)
      .max(mostHours)
      .describe('a rate for each hour of the shift, breaks included; the last value continues to the end'),
    spaced: assume(
      choice(
        ['at-random', 'evenly'],
        'at-random: cases arrive independently of each other; evenly: as evenly as the rates allow',
      ),
      'at-random',
    ),
  })
  .describe('a rate for each hour')

const order = z
  .strictObject({
    case: text('name of the case', 40),
    quantity: whole('number of cases in this order', 1, 20_000_000),
    'time-between': timeDistribution('time from one case of the order to the next'),
    before: timeDistribution(
      'time from the last case of the order before, or from the start of the shift, to the first interval of this order',
    ).optional(),
  })
  .describe('an order: a number of cases of one kind')

const log = z
  .strictObject({
    file: text('CSV file beside the scenario, with a header line and a row for each case'),
    time: text('name of the column of times since the start of the shift, not decreasing'),
    case: z
      .string()
      .min(1)
      .optional()
      .describe('name of the column of case names; without it the kinds are drawn by their shares'),
    unit: unitOf('time', 'unit of the recorded times'),
  })
  .transform(
    (given): RecordedLog => ({
      ...given,
      times: new Float64Array(0),
      kinds: given.case === undefined ? null : new Uint16Array(0),
    }),
  )
  .describe('recorded arrivals, replayed alike in each shift')

export const source = z
  .strictObject({
    'time-between': timeDistribution('time from one arrival to the next').optional(),
    rate: quantity(
      'case-rate',
      'steady rate, evenly spaced; also for a whole shift, such as 4000 cases/shift',
      { above: 0 },
    ).optional(),
    'by-hour': byHour.optional(),
    orders: z
      .array(order)
      .min(1)
      .max(mostOrders)
      .optional()
      .describe(
        'orders, one after the other, each of one kind of case; after the last one no more cases arrive',
      ),
    log: log.optional(),
    batch: assume(whole('cases that arrive together; only with time-between, rate or by-hour', 1, 10_000), 1),
    'when-full': assume(
      choice(
        ['wait', 'queue', 'turn-away'],
        'wait: the packers stop; queue: cases wait on the floor without limit; turn-away: the case goes elsewhere',
      ),
      'wait',
    ),
    to: passesTo.optional(),
  })
  .refine(
    (given) => ways.filter((way) => given[way] !== undefined).length === 1,
    broken(
      'one-of',
      'exactly one of `time-between`, `rate`, `by-hour`, `orders` and `log` is needed here',
      'keep only one',
    ),
  )
  .describe('where cases arrive from')
