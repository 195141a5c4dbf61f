/** What the document of a validation looks like once it is read back. */
import * as z from 'zod'
import { displayShape, madeKeys, titled, warningShape } from '../../answers/study-shape.js'
import {
  count,
  isSo,
  maybe,
  number,
  numberOrNull,
  part,
  shapeOf,
  text,
  textOrNull,
} from '../../catalogue/shape.js'
import { drivers } from './asked.js'
import type { Stopped } from './causes.js'
import type {
  BesideResult,
  CauseResult,
  DayResult,
  Explanation,
  GapResult,
  GoodResult,
  Known,
  OwnStopsResult,
  RanksResult,
  ValidateResult,
} from './document.js'

const knownKeys = { mean: number, low: numberOrNull, high: numberOrNull }
const known = shapeOf<Known>()(knownKeys)

const day = shapeOf<DayResult>()({
  day: text,
  shifts: count,
  drivenBy: z.enum(['cases', 'law']),
  plant: number,
  model: shapeOf<DayResult['model']>()({ mean: number, median: number, low: number, high: number }),
  below: count,
  isInside: isSo,
})

const gap = shapeOf<GapResult>()({
  ...knownKeys,
  standardised: numberOrNull,
  p: numberOrNull,
  isShown: isSo,
})

const counted = shapeOf<Stopped>()({ stops: number, seconds: number })

const cause = shapeOf<CauseResult>()({
  path: textOrNull,
  words: text,
  isPutIn: isSo,
  plant: counted,
  model: counted,
  stops: gap,
  seconds: gap,
})

const explanation = shapeOf<Explanation>()({
  path: text,
  words: text,
  what: z.enum(['stops', 'seconds']),
  plant: number,
  model: number,
  isShown: isSo,
  worth: number,
  isAlong: isSo,
})

const good = shapeOf<GoodResult>()({
  plant: number,
  model: number,
  difference: shapeOf<GoodResult['difference']>()({
    ...knownKeys,
    t: numberOrNull,
    degreesOfFreedom: number,
    p: numberOrNull,
  }),
  bootstrap: shapeOf<NonNullable<GoodResult['bootstrap']>>()({ low: number, high: number }).nullable(),
  share: known,
  p: numberOrNull,
  verdict: z.enum(['within', 'not-shown', 'outside']),
})

const ranks = shapeOf<RanksResult>()({ low: number, high: number, share: part, inside: count, p: number })

const ownStops = shapeOf<OwnStopsResult>()({ put: counted, left: counted, open: number })

const days = z.array(day).min(1)

type Regression = NonNullable<ValidateResult['regression']>

export const validateShape = shapeOf<ValidateResult>()({
  format: z.literal('tapeshift-result/1'),
  command: z.literal('validate'),
  warnings: maybe(z.array(warningShape)),
  made: shapeOf<ValidateResult['made']>()({
    ...madeKeys,
    scenario: titled,
    record: titled,
    shiftsSha256: text,
  }),
  display: displayShape,
  margin: number,
  runs: count,
  drivenBy: z.enum(drivers),
  ownStops: ownStops.nullable(),
  isCalibration: isSo,
  chosen: text,
  leftOut: z.array(shapeOf<ValidateResult['leftOut'][number]>()({ day: text, why: text })),
  days,
  good,
  ranks,
  regression: shapeOf<Regression>()({
    intercept: number,
    slope: number,
    f: number,
    degreesOfFreedom: z.tuple([number, number]),
    p: number,
  }).nullable(),
  beside: shapeOf<BesideResult>()({ days, good, ranks }).nullable(),
  causes: z.array(cause),
  explains: explanation.nullable(),
  sheet: shapeOf<NonNullable<ValidateResult['sheet']>>()({ count, right: count, p: number }).nullable(),
  notes: z.array(text),
})
