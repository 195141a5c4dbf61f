/** What the document of a run looks like once it is read back. */
import * as z from 'zod'
import { drawsShape, lineKeys, lossesShape } from '../../answers/line-shape.js'
import { byHandShape, precisionShape, requirementShape, studyKeys } from '../../answers/study-shape.js'
import { maybe, numberOrNull, shapeOf } from '../../catalogue/shape.js'
import { layoutShape } from '../../pictures/layout-shape.js'
import { stretchShape, warmUpShape } from '../../shifts/stretch-shape.js'
import type { RunResult } from './document.js'

export const runShape = shapeOf<RunResult>()({
  ...studyKeys('run'),
  ...lineKeys,
  target: numberOrNull,
  precision: precisionShape.nullable(),
  requirements: z.array(requirementShape),
  warmUp: warmUpShape.nullable(),
  byHand: byHandShape.nullable(),
  losses: maybe(lossesShape.nullable()),
  layout: maybe(layoutShape),
  drawn: maybe(drawsShape),
  stretch: maybe(stretchShape),
}).superRefine(({ stretch, layout }, context) => {
  if (!stretch || !layout) return
  const fault = (message: string, ...path: (string | number)[]) =>
    context.addIssue({ code: 'custom', path, message })
  if (stretch.pieces.length !== layout.pieces.length) fault('as many as `layout.pieces`', 'stretch', 'pieces')
  if (stretch.sources.length !== layout.arrivals.length)
    fault('as many as `layout.arrivals`', 'stretch', 'sources')
  for (const [index, { kind }] of stretch.cases.entries())
    if (layout.cases[kind] === undefined)
      fault('the place of one of `layout.cases`', 'stretch', 'cases', index, 'kind')
})
