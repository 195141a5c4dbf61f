/** What the document of a sizing looks like once it is read back. */
import * as z from 'zod'
import {
  contributionsShape,
  drawsKeys,
  intervalKeys,
  intervalShape,
  lineKeys,
  lossesShape,
} from '../../answers/line-shape.js'
import { studyKeys } from '../../answers/study-shape.js'
import { figureOfInputsShape } from '../../catalogue/figure-shape.js'
import {
  anything,
  byName,
  count,
  isSo,
  maybe,
  number,
  numberOrNull,
  part,
  place,
  shapeOf,
  text,
  textOrNull,
} from '../../catalogue/shape.js'
import type { KeptDraws } from '../../statistics/kept-draws.js'
import type {
  JudgedAfresh,
  NearestDesign,
  PromiseResult,
  SizeDrawn,
  SizedDesign,
  SizeResult,
} from './document.js'
import type { AtEnd } from './nearest.js'

const promise = shapeOf<PromiseResult>()({
  promise: text,
  measure: text,
  label: text,
  unit: text,
  value: number,
  isLeast: isSo,
  near: number,
})

const verdict = z.enum(['accepted', 'refused', 'undecided'])

const sized = shapeOf<SizedDesign>()({
  place: z.int().min(1),
  set: byName(anything),
  cost: numberOrNull,
  share: numberOrNull,
  low: numberOrNull,
  high: numberOrNull,
  shifts: count,
  verdict,
  without: textOrNull,
  promises: z.array(intervalShape),
  draws: maybe(shapeOf<KeptDraws>()({ kept: count, missed: count, open: count })),
})

const afresh = shapeOf<JudgedAfresh>()({
  ...lineKeys,
  firstShift: count,
  shifts: count,
  promises: z.array(
    shapeOf<JudgedAfresh['promises'][number]>()({
      ...intervalKeys,
      shown: z.enum(['kept', 'open', 'near', 'missed']),
      inputs: maybe(figureOfInputsShape),
    }),
  ),
  bottleneck: textOrNull,
  losses: lossesShape.nullable(),
})

const nearest = shapeOf<NearestDesign>()({
  design: place,
  afresh: afresh.nullable(),
  byHand: shapeOf<NonNullable<NearestDesign['byHand']>>()({
    atMost: number,
    promised: numberOrNull,
    path: text,
    message: text,
    fix: text,
  }).nullable(),
  atEnds: z.array(shapeOf<AtEnd>()({ path: text, value: anything, end: z.enum(['smallest', 'largest']) })),
})

const drawn = shapeOf<SizeDrawn>()({
  ...drawsKeys,
  sure: numberOrNull,
  share: part,
  low: part,
  high: part,
  family: count,
  wrongly: number,
  inputs: z.array(text),
  each: z.array(
    shapeOf<SizeDrawn['each'][number]>()({ verdict, figure: numberOrNull, inputs: z.array(number) }),
  ),
  promises: z.array(contributionsShape.nullable()),
})

export const sizeShape = shapeOf<SizeResult>()({
  ...studyKeys('size'),
  currency: text,
  promises: z.array(promise).min(1),
  choices: z.array(shapeOf<SizeResult['choices'][number]>()({ path: text, values: z.array(anything) })),
  all: count,
  order: z.array(text),
  isFull: isSo,
  designs: z.array(sized).min(1),
  pick: place.nullable(),
  nextCheaper: place.nullable(),
  spent: shapeOf<SizeResult['spent']>()({ designs: count, shifts: count }),
  rising: z.array(text),
  picked: afresh.nullable(),
  nearest: nearest.nullable(),
  drawn: maybe(drawn),
}).superRefine((document, context) => {
  const { designs, promises, pick, nextCheaper, picked, nearest: near } = document
  const fault = (message: string, ...path: (string | number)[]) =>
    context.addIssue({ code: 'custom', path, message })
  const hold = (at: number | null, ...path: string[]) => {
    if (at !== null && designs[at] === undefined) fault('the place of one of `designs`', ...path)
  }
  hold(pick, 'pick')
  hold(nextCheaper, 'nextCheaper')
  if (near) hold(near.design, 'nearest', 'design')
  if ((pick === null) !== (picked === null)) fault('there with `pick`, and null without it', 'picked')
  for (const [path, judged] of [
    ['picked', picked],
    ['nearest', near?.afresh ?? null],
  ] as const)
    if (judged && judged.promises.length !== promises.length)
      fault('promises as many as those of the document', path)
  for (const [index, { verdict: came, without, promises: own }] of designs.entries())
    if (without === null && own.length !== promises.length)
      fault(`promises as many as those of the document, for it was ${came}`, 'designs', index)
})
