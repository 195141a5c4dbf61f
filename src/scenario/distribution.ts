/** A time that varies: one form everywhere, a constant or one named law with its parameters. */
import * as z from 'zod'
import { bare, choice, quantity, whole } from './kit.js'
import type { Distribution } from './law.js'
import { dimensions } from './quantity.js'

const time = (doc: string) => quantity('time', doc)
const positive = (doc: string) => quantity('time', doc, { above: 0 })
const timeUnits = Object.keys(dimensions.time.units) as [string, ...string[]]

const laws = z
  .strictObject({
    exponential: z.strictObject({ mean: positive('mean') }).optional(),
    lognormal: z
      .strictObject({
        mean: positive('mean of the time itself, not of its logarithm'),
        cv: bare('standard deviation over mean', 0, 100),
      })
      .optional(),
    gamma: z
      .strictObject({ mean: positive('mean'), cv: bare('standard deviation over mean', 0.01, 5) })
      .optional(),
    erlang: z
      .strictObject({ mean: positive('mean'), phases: whole('number of exponential phases', 1, 10_000) })
      .optional(),
    weibull: z.strictObject({ shape: bare('shape', 0.05, 1000), scale: positive('scale') }).optional(),
    triangular: z
      .strictObject({ low: time('smallest'), mode: time('most likely'), high: positive('largest') })
      .refine((t) => t.low <= t.mode && t.mode <= t.high && t.low < t.high, {
        message: 'low, mode and high must be in this order',
        params: { code: 'conflict', fix: 'put the smallest value in low and the largest in high' },
      })
      .optional(),
    uniform: z
      .strictObject({ low: time('smallest'), high: positive('largest') })
      .refine((u) => u.low <= u.high, {
        message: 'low must not be above high',
        params: { code: 'conflict', fix: 'exchange the two' },
      })
      .optional(),
    normal: z
      .strictObject({
        mean: time('mean before the cut at `at-least`'),
        sd: time('standard deviation before the cut'),
        'at-least': time('smallest value: the law is cut off below it, the rest scaled up').optional(),
      })
      .refine((n) => n.sd === 0 || (n['at-least'] ?? 0) <= n.mean + 5 * n.sd, {
        message: 'cut more than 5 standard deviations above the mean: nothing of the law is left',
        params: { code: 'conflict', fix: 'a smaller `at-least`' },
      })
      .optional(),
    observed: z
      .strictObject({
        file: z.string().min(1).describe('CSV file beside the scenario, with a header line'),
        column: z.string().min(1).describe('name of its column'),
        unit: choice(timeUnits, 'unit of the recorded numbers'),
      })
      .optional(),
  })
  .refine((given) => Object.keys(given).length === 1, {
    message: 'exactly one law must stand here',
    params: {
      code: 'one-of',
      fix: 'keep one of exponential, lognormal, gamma, erlang, weibull, triangular, uniform, normal, observed',
    },
  })
  .meta({ minProperties: 1, maxProperties: 1 })

type Laws = z.output<typeof laws>

function toDistribution(given: number | Laws): Distribution {
  if (typeof given === 'number') return { law: 'constant', value: given }
  if (given.exponential) return { law: 'exponential', ...given.exponential }
  if (given.lognormal) return { law: 'lognormal', ...given.lognormal }
  if (given.gamma) return { law: 'gamma', ...given.gamma }
  if (given.erlang) return { law: 'erlang', ...given.erlang }
  if (given.weibull) return { law: 'weibull', ...given.weibull }
  if (given.triangular) return { law: 'triangular', ...given.triangular }
  if (given.uniform) return { law: 'uniform', ...given.uniform }
  if (given.normal)
    return {
      law: 'normal',
      mean: given.normal.mean,
      sd: given.normal.sd,
      atLeast: given.normal['at-least'] ?? 0,
    }
  return { law: 'observed', ...given.observed!, values: [] }
}

/** A time that varies: `90 s`, or `{lognormal: {mean: 75 s, cv: 0.8}}` and its like. */
export const timeDistribution = (doc: string, bounds: { above?: number } = {}) =>
  z
    .union([
      quantity('time', 'a constant time', bounds.above === undefined ? { from: 0 } : { above: bounds.above }),
      laws,
    ])
    .transform(toDistribution)
    .describe(`${doc}; a constant or a distribution`)
