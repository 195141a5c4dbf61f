/** What the document of a fit looks like once it is read back. */
import * as z from 'zod'
import { madeKeys, titled, warningShape } from '../../answers/study-shape.js'
import { amountShape } from '../../catalogue/figure-shape.js'
import {
  ascends,
  byName,
  count,
  isSo,
  maybe,
  number,
  numberOrNull,
  place,
  shapeOf,
  text,
  textOrNull,
} from '../../catalogue/shape.js'
import type { FileRead } from '../../record/read-record.js'
import type { Account } from '../../record/record.js'
import {
  type At,
  type FamilyResult,
  type FitResult,
  type FittedInput,
  type Known,
  type Remark,
  remarkCodes,
  type TestResult,
  testNames,
} from './document.js'

const knownKeys = { value: number, low: numberOrNull, high: numberOrNull }
const known = shapeOf<Known>()(knownKeys)
const family = z.enum(['exponential', 'weibull', 'gamma', 'lognormal', 'mixture'])
const fits = z.object({ statistic: number, p: number }).nullable()

const familyResult = shapeOf<FamilyResult>()({
  family,
  parameters: z.array(
    shapeOf<FamilyResult['parameters'][number]>()({ ...knownKeys, name: text, unit: text }),
  ),
  mean: known,
  logLikelihood: number,
  aic: number,
  bic: number,
  kolmogorovSmirnov: fits,
  andersonDarling: fits,
  quantileGap: numberOrNull,
})

const test = shapeOf<TestResult>()({
  test: z.enum(testNames),
  asks: text,
  statistic: number,
  p: number,
  adjustedP: number,
  isShown: isSo,
})

const remark = shapeOf<Remark>()({
  code: z.enum(remarkCodes),
  text,
})

const at: z.ZodType<At> = z.tuple([number, number])
const points = z.array(at).refine((all) => ascends(all.map(([x]) => x)), 'in order, from left to right')

type Pictures = FittedInput['pictures']
type Histogram = NonNullable<Pictures['histogram']>

const bar = shapeOf<Histogram['bars'][number]>()({ from: number, to: number, share: number }).refine(
  ({ from, to }) => to >= from,
  'a bar that ends after it begins',
)

const pictures = shapeOf<Pictures>()({
  quantiles: points,
  histogram: shapeOf<Histogram>()({
    bars: z.array(bar),
    densities: z.array(shapeOf<Histogram['densities'][number]>()({ family, at: points })),
  }).nullable(),
  survival: shapeOf<NonNullable<Pictures['survival']>>()({ record: points, law: points }).nullable(),
  trend: points,
  hours: z.array(
    shapeOf<Pictures['hours'][number]>()({
      hour: number,
      events: count,
      exposure: number,
      low: number,
      high: number,
    }),
  ),
})

const input = shapeOf<FittedInput>()({
  path: text,
  words: text,
  what: z.enum(['chance', 'times', 'time-to', 'time-between', 'mix']),
  events: count,
  cutOff: count,
  exposure: amountShape.nullable(),
  value: textOrNull,
  also: byName(text),
  restsOn: z.enum(['counted', 'fitted', 'observed', 'nothing']),
  rate: shapeOf<NonNullable<FittedInput['rate']>>()({ ...knownKeys, unit: text }).nullable(),
  mean: known.nullable(),
  seen: shapeOf<NonNullable<FittedInput['seen']>>()({ mean: number, standardError: numberOrNull }).nullable(),
  chosen: family.nullable(),
  alike: z.array(family),
  families: z.array(familyResult),
  tests: z.array(test),
  remarks: z.array(remark),
  pictures,
}).refine(
  ({ chosen, families }) => chosen === null || families.some((each) => each.family === chosen),
  'a `chosen` that is one of `families`',
)

const accountShape = shapeOf<Account>()({
  code: text,
  did: z.enum(['noted', 'changed', 'left-out', 'refused']),
  file: text,
  words: text,
  rows: z.array(place),
  count,
  seconds: number,
  fix: text,
})

type RecordTold = FitResult['record']

const record = shapeOf<RecordTold>()({
  files: z.array(shapeOf<FileRead>()({ file: text, rows: count, sha256: text })),
  zone: textOrNull,
  roundedTo: amountShape,
  seenFrom: amountShape,
  shifts: count,
  days: shapeOf<RecordTold['days']>()({ first: text, last: text, count }),
  heldOut: z.array(text),
  cases: numberOrNull,
  time: z.array(shapeOf<RecordTold['time'][number]>()({ what: text, time: amountShape, stops: count })),
})

export const fitShape = shapeOf<FitResult>()({
  format: z.literal('tapeshift-result/1'),
  command: z.literal('fit'),
  warnings: maybe(z.array(warningShape)),
  made: shapeOf<FitResult['made']>()({ ...madeKeys, record: titled }),
  display: z.literal('metric'),
  record,
  account: z.array(accountShape),
  inputs: z.array(input),
  notes: z.array(text),
})
