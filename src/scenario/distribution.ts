/** A time that varies: one form everywhere, a constant, two between which it lies, a count of events in a time, or one named law with its parameters. */
import * as z from 'zod'
import { isBetween, readBetween } from './between.js'
import { countAsValue, isCount, readInTime, valueOfCount } from './counts.js'
import { refer } from './editor.js'
import { bare, broken, numbered, quantity, refuse, text, unitOf, whole, withEvidence } from './kit.js'
import { evident, type Rests, steps } from './known.js'
import type { Distribution, PlainDistribution } from './law.js'
import { oneLaw, triangularOf } from './law-keys.js'
import { fault, type Read } from './reading.js'
import { type Bounds, readQuantity, type Told } from './values.js'

const time = (doc: string) => quantity('time', doc)
const positive = (doc: string) => quantity('time', doc, { above: 0 })

const from = whole('number of observations behind the parameters', 2, 1_000_000).optional()

/** The laws of their own, by their keys. */
const plainLaws = {
  exponential: z.strictObject({ mean: positive('mean'), from }).optional(),
  lognormal: z
    .strictObject({
      mean: positive('mean of the time itself, not of its logarithm'),
      cv: bare('standard deviation / mean (coefficient of variation)', 0, 100),
      from,
    })
    .optional(),
  gamma: z
    .strictObject({
      mean: positive('mean'),
      cv: bare('standard deviation / mean (coefficient of variation)', 0.01, 5),
      from,
    })
    .optional(),
  erlang: z
    .strictObject({
      mean: positive('mean'),
      phases: whole('number of exponential phases', 1, 10_000),
      from,
    })
    .optional(),
  weibull: z.strictObject({ shape: bare('shape', 0.05, 1000), scale: positive('scale'), from }).optional(),
  triangular: triangularOf(time, positive),
  uniform: z
    .strictObject({ low: time('smallest'), high: positive('largest') })
    .refine((u) => u.low <= u.high, broken('conflict', 'low must not be above high', 'swap the two'))
    .optional(),
  normal: z
    .strictObject({
      mean: time('mean before the cut at `at-least`'),
      sd: time('standard deviation before the cut'),
      'at-least': time('smallest value: the distribution is cut off below it and rescaled').optional(),
      from,
    })
    .refine(
      (n) => n.sd === 0 || (n['at-least'] ?? 0) <= n.mean + 5 * n.sd,
      broken(
        'conflict',
        'the cut is more than 5 standard deviations above the mean: nothing of the distribution is left',
        'use a smaller `at-least`',
      ),
    )
    .optional(),
  observed: z
    .strictObject({
      file: text('CSV file beside the scenario, with a header line'),
      column: text('name of the column'),
      unit: unitOf('time', 'unit of the recorded numbers'),
      day: z
        .string()
        .min(1)
        .optional()
        .describe(
          'name of the column with the day of each row: if inputs are drawn, whole days are drawn, for all columns of the file together',
        ),
    })
    .optional(),
}

type Laws = z.output<z.ZodObject<typeof plainLaws>>

/** A map of one law. `from` is what it rests on, and no part of it. */
function toPlain(given: Laws): PlainDistribution {
  if (given.observed) return { law: 'observed', ...given.observed, values: [] }
  if (given.normal) {
    const { mean, sd, 'at-least': atLeast = 0 } = given.normal
    return { law: 'normal', mean, sd, atLeast }
  }
  const [[law, { from: _, ...own }] = ['', {}]] = Object.entries(given as Record<string, { from?: number }>)
  return { law, ...own } as PlainDistribution
}

/** A map of exactly one law, and what the parameters of that rest on. */
function oneOf<Shape extends z.core.$ZodLooseShape>(shape: Shape) {
  const schema = oneLaw(shape)
  evident.add(schema, { evidence: lawEvidence })
  // the law is what its map holds; a mixture is a list there too
  steps.add(schema, { of: (key) => (key === 'mixture' ? [key] : []) })
  return schema
}

function lawEvidence(written: unknown): Rests | null {
  const [[law, parameters] = ['', {}]] = Object.entries(written as Record<string, Record<string, unknown>>)
  const rests = { of: { dimension: 'time' }, within: [] } as const
  // how many they are is known once they are read
  if (law === 'observed') {
    const { day: _, ...fixed } = parameters
    return { ...rests, known: { form: 'observed', observations: 0 }, fixed: { observed: fixed } }
  }
  const { from: observations, ...fixed } = parameters
  if (typeof observations !== 'number') return null
  return { ...rests, known: { form: 'fitted', observations }, fixed: { [law]: fixed } }
}

steps.add(plainLaws.normal.unwrap(), { of: (key) => [key === 'at-least' ? 'atLeast' : key] })

/** A constant, a time somewhere between two, or the time from one to the next of events that were counted. */
function readTime(written: unknown, bounds: Bounds, least: 0 | 1): Read<Told<PlainDistribution>> {
  if (isCount(written)) {
    const count = readInTime(written, 'interval', least)
    if ('fault' in count) return count
    const value = { law: 'exponential', mean: valueOfCount(count.value) } as const
    return { value: { value, known: count.value, fixed: countAsValue(count.value) } }
  }
  if (isBetween(written)) {
    const ends = readBetween(written)
    if ('fault' in ends) return ends
    return { value: { value: { law: 'uniform', ...ends.value }, known: null, fixed: written } }
  }
  const told = readQuantity(written, 'time', bounds)
  if ('fault' in told) return told
  return { value: { ...told.value, value: { law: 'constant', value: told.value.value } } }
}

function constant(bounds: Bounds, least: 0 | 1, isPerShift = false) {
  const anyOf = [refer('time'), refer('in-time'), refer('between')]
  if (isPerShift) anyOf.push(refer('stops-per-shift'))
  const schema = withEvidence(
    (written) => readTime(written, bounds, least),
    { anyOf, description: 'a constant time, a range of two times, or events counted in a time' },
    // a count is of the law as a whole
    ({ law }) => ({ of: { dimension: 'time' }, within: law === 'constant' ? ['value'] : [] }),
  )
  return numbered(schema, { dimension: 'time', ...bounds })
}

const nested = fault(
  'not-allowed',
  'a mixture must not contain a mixture',
  'put its parts beside the others, with their shares of all draws',
)

/** A mixture where none may stand. */
const noMixture = z
  .unknown()
  .transform((written, context) => refuse(context, written, nested.fault))
  .meta({ not: {} })

const laws = oneOf({ ...plainLaws, mixture: noMixture.optional() })
const partConstant = constant({ from: 0 }, 1)

const mixture = z
  .array(
    z.strictObject({
      share: quantity('share', 'share of the draws from this distribution', { above: 0, to: 1 }),
      law: z
        .union([partConstant, laws.transform(toPlain)])
        .describe('a constant or a distribution, but not a mixture'),
    }),
  )
  .min(2)
  .max(10)
  .refine((parts) => Math.abs(parts.reduce((sum, { share }) => sum + share, 0) - 1) <= 1e-9, {
    error: ({ input }) => {
      const sum = (input as { share: number }[]).reduce((total, { share }) => total + share, 0)
      return `the shares of a mixture must add up to 100 %, not ${Number((100 * sum).toPrecision(6))} %`
    },
    params: { code: 'conflict', fix: 'give shares that add up to 100 %' },
  })
  .describe('several distributions with shares: each draw comes from one of them')

const lawsOrMixture = oneOf({ ...plainLaws, mixture: mixture.optional() })

const toDistribution = (given: z.output<typeof lawsOrMixture>): Distribution =>
  given.mixture ? { law: 'mixture', mixture: given.mixture } : toPlain(given)

/** A time that varies: `90 s`, `18 in 640 h`, or `{lognormal: {mean: 75 s, cv: 0.8}}` and its like; `above` 0: what may never come; `isPerShift`: it may be
 * said how often it comes in a shift, which `plain-words` reads. */
export const timeDistribution = (
  doc: string,
  { above, isPerShift = false }: { above?: 0; isPerShift?: boolean } = {},
) =>
  z
    .union([
      above === undefined ? constant({ from: 0 }, 1) : constant({ above }, 0, isPerShift),
      lawsOrMixture.transform(toDistribution),
    ])
    .describe(
      `${doc}; a constant, \`1 to 2 min\` for any time between, each as likely as another (uniform), a count such as \`18 in 640 h\`${isPerShift ? ', stops a shift such as `10 stops per shift`' : ''}, or a distribution`,
    )
