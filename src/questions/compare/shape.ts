/** What the document of a comparison looks like once it is read back. */
import * as z from 'zod'
import {
  differenceShape,
  drawsAskedShape,
  intervalKeys,
  intervalShape,
  lineKeys,
} from '../../answers/line-shape.js'
import { requirementShape, studyKeys } from '../../answers/study-shape.js'
import {
  anything,
  byName,
  count,
  isSo,
  maybe,
  number,
  numberOrNull,
  shapeOf,
  text,
  textOrNull,
} from '../../catalogue/shape.js'
import type { TapeLayout } from '../../trade/tape-layout.js'
import type { BestAcross } from './across-draws.js'
import type { Outcome, Why } from './best.js'
import { type BestResult, baseName, type CompareResult, type DesignResult } from './document.js'
import type { Worth } from './worth.js'

const tapeLayout = shapeOf<TapeLayout>()({
  width: number,
  leg: number,
  pricePerMetre: numberOrNull,
  massPerMetre: number,
  rollMass: number,
  rollDiameter: number,
  fits: isSo.nullable(),
  legIndex: numberOrNull,
  seamIndex: numberOrNull,
  errors: z.array(text),
  warnings: z.array(text),
})

const worth = shapeOf<Worth>()({
  investment: numberOrNull,
  yearlySaving: intervalShape.nullable(),
  yearlyCases: numberOrNull,
  years: numberOrNull,
  interest: numberOrNull,
  netPresentValue: intervalShape.nullable(),
  payback: intervalShape.nullable(),
  breakEven: shapeOf<NonNullable<Worth['breakEven']>>()({
    ...intervalKeys,
    spared: numberOrNull,
  }).nullable(),
  leftOut: z.array(text),
})

const design = shapeOf<DesignResult>()({
  ...lineKeys,
  note: text,
  set: byName(anything),
  shifts: count,
  requirements: z.array(requirementShape),
  tapeLayout: tapeLayout.nullable(),
  worth: worth.nullable(),
})

const why: z.ZodType<Why<string>> = z.discriminatedUnion('reason', [
  z.object({ reason: z.literal('alike'), other: text, shifts: count }),
  z.object({ reason: z.literal('unseen'), stop: text, shifts: count }),
  z.object({ reason: z.literal('spread') }),
])

const outcome = shapeOf<Outcome<string>>()({
  verdict: z.enum(['picked', 'dropped', 'refused', 'undecided']),
  shifts: count,
  why: maybe(why),
})

const across = shapeOf<BestAcross>()({
  draws: count,
  best: byName(count),
  behind: numberOrNull,
  among: z.array(shapeOf<BestAcross['among'][number]>()({ require: text, measure: text })),
})

const best = shapeOf<BestResult>()({
  measure: text,
  label: text,
  unit: text,
  isLargerBetter: isSo,
  within: number,
  among: z.array(shapeOf<BestResult['among'][number]>()({ require: text, near: number, unit: text })),
  confidence: number,
  pick: textOrNull,
  designs: byName(outcome),
  most: count,
  spent: count,
  across: maybe(across),
})

const differences = byName(differenceShape)

export const compareShape = shapeOf<CompareResult>()({
  ...studyKeys('compare'),
  target: numberOrNull,
  currency: text,
  best: best.nullable(),
  compared: z.array(text),
  variants: byName(design),
  differences: byName(differences),
  drawn: maybe(drawsAskedShape),
  pairs: z.array(shapeOf<CompareResult['pairs'][number]>()({ of: text, against: text, differences })),
}).superRefine((document, context) => {
  const { variants, compared, best: chosen, pairs } = document
  const fault = (message: string, ...path: (string | number)[]) =>
    context.addIssue({ code: 'custom', path, message })
  const hold = (name: string, ...path: (string | number)[]) => {
    if (!Object.hasOwn(variants, name)) fault('the name of one of `variants`', ...path)
  }
  hold(baseName, 'variants')
  for (const name of Object.keys(variants)) {
    if (name === baseName) continue
    const own = Object.hasOwn(document.differences, name) ? document.differences[name]! : {}
    const lacking = compared.find((measure) => !Object.hasOwn(own, measure))
    if (lacking !== undefined)
      fault('a difference of each measure of `compared`', 'differences', name, lacking)
  }
  for (const name of Object.keys(document.differences)) hold(name, 'differences', name)
  for (const [index, { of, against }] of pairs.entries()) {
    hold(of, 'pairs', index, 'of')
    hold(against, 'pairs', index, 'against')
  }
  if (chosen === null) return
  if (chosen.pick !== null) hold(chosen.pick, 'best', 'pick')
  for (const name of Object.keys(chosen.designs)) hold(name, 'best', 'designs', name)
})
