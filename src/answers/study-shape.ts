/** What every document tells of its study, once it is read back. */
import * as z from 'zod'
import {
  anything,
  byName,
  count,
  isSo,
  maybe,
  number,
  numberOrNull,
  part,
  shapeOf,
  text,
  textOf,
  textOrNull,
} from '../catalogue/shape.js'
import type { About } from './about.js'
import type { ByHand, Made, PrecisionReached, RequirementJudged, ShiftTold, StudyDocument } from './made.js'
import type { Assumed, RestsOn } from './rests-on.js'
import type { Warning } from './warning.js'

export const warningShape = shapeOf<Warning>()({
  severity: z.enum(['error', 'warning']),
  code: text,
  meaning: text,
  text,
  fix: text,
  count,
  paths: z.array(text),
  designs: z.array(text),
  leavesOut: maybe(text),
  given: maybe(z.array(text)),
  missing: maybe(z.array(text)),
  differs: maybe(isSo),
})

/** Keys of what made a document that all have. */
export const madeKeys = {
  version: text,
  node: text,
  seed: text,
  shifts: count,
  confidence: z.number().gt(0).lt(1),
  repeat: text,
}

/** A title and the hash of the text that it is of. */
export const titled = shapeOf<Made['scenario']>()({ title: text, sha256: text })

const made = shapeOf<Made>()({ ...madeKeys, scenario: titled, plain: isSo })

export const displayShape = z.enum(['metric', 'us'])

const shift = shapeOf<ShiftTold>()({
  length: z.number().gt(0),
  runOut: z.number().min(0),
  breaks: z.array(shapeOf<ShiftTold['breaks'][number]>()({ at: number, for: number })),
  campaign: z.int().min(1),
  start: z.enum(['empty', 'carry-over', 'steady']),
})

const about = shapeOf<About>()({
  question: textOrNull,
  purpose: textOrNull,
  decision: textOrNull,
  dataSource: textOrNull,
  validatedBy: textOrNull,
  findings: z.array(
    shapeOf<About['findings'][number]>()({
      severity: z.enum(['error', 'warning']),
      code: text,
      path: text,
      message: text,
      basis: text,
      fix: text,
      design: textOrNull,
    }),
  ),
  given: z.array(shapeOf<About['given'][number]>()({ path: text, value: text })),
})

const assumed = shapeOf<Assumed>()({ path: text, value: anything, basis: text })

const restsOn = shapeOf<RestsOn>()({
  path: text,
  form: z.enum(['count', 'fitted', 'observed', 'guess']),
  restsOn: text,
  unit: text,
  value: numberOrNull,
  low: numberOrNull,
  high: numberOrNull,
  confidence: number,
})

/** The keys that the document of every study has. */
export const studyKeys = <const Command extends StudyDocument['command']>(command: Command) => ({
  format: z.literal('tapeshift-result/1'),
  command: z.literal(command) as unknown as z.ZodType<Command>,
  warnings: maybe(z.array(warningShape)),
  made,
  display: displayShape,
  shift,
  about: maybe(about),
  assumed: z.array(assumed),
  evidence: maybe(z.array(restsOn)),
  exact: maybe(text),
  notes: z.array(text),
  shifts: text,
})

export const precisionShape = shapeOf<PrecisionReached>()({
  asked: number,
  of: z.array(
    shapeOf<PrecisionReached['of'][number]>()({
      measure: text,
      label: text,
      reached: numberOrNull,
      isMet: isSo,
    }),
  ),
  most: count,
  isMet: isSo,
})

export const requirementShape = shapeOf<RequirementJudged>()({
  require: text,
  judgement: z.enum(['met', 'not-met', 'not-shown']),
  measure: textOrNull,
})

export const byHandShape = shapeOf<ByHand>()({
  rows: z.array(
    shapeOf<ByHand['rows'][number]>()({
      measure: textOf(),
      label: text,
      value: numberOrNull,
      unit: text,
      how: text,
    }),
  ),
  shareOfArrivals: byName(number),
  bottleneck: textOrNull,
  shareAdmitted: part,
  expected: maybe(
    shapeOf<NonNullable<ByHand['expected']>>()({
      throughput: number,
      perShift: number,
      within: number,
    }).nullable(),
  ),
})
