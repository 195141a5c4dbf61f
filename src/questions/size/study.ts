/** Which design is the cheapest that keeps its promises? Makes the designs, searches among them and makes the document. */

import type { Answer } from '../../answers/answer.js'
import { combine, inOrder } from '../../answers/designs.js'
import { cannotWork } from '../../answers/warnings.js'
import { hashOf } from '../../scenario/hash.js'
import { usualShifts } from '../../scenario/limits.js'
import type { ReadScenario } from '../../scenario/read.js'
import { type Context, simulating } from '../../shifts/simulation.js'
import { sizeResult } from './answer.js'
import { type SizeOptions, sizeAsked } from './asked.js'
import { designsSizedCsv } from './csv.js'
import { isShown, type SizeResult } from './document.js'
import { findAmong } from './found.js'

/** Answers the question. Throws `Fault`. */
export async function size(
  loaded: ReadScenario,
  options: SizeOptions = {},
  context: Context = {},
): Promise<Answer<SizeResult>> {
  const asked = sizeAsked(options, loaded)
  const { most = usualShifts.toSize, full: isFull = false } = options
  const { designs, refused, all } = combine(
    asked.choices,
    loaded,
    (scenario) => asked.rate ?? scenario.target ?? 0,
  )
  const ordered = inOrder(designs, asked.choices, asked.order)
  const { seed, confidence } = loaded.scenario.study
  // how a search goes on hangs on the order of the designs, and what came of each on how many were tried before
  const course = [loaded.shiftsSha256, [asked, most, isFull, confidence, ordered.map(({ key }) => key)]]
  const plan = {
    ...{ designs: ordered, seed, total: ordered.length, isOpen: !isFull },
    counts: 'designs' as const,
    course: hashOf(course),
  }
  const found = await simulating(plan, context, (simulation) =>
    findAmong(ordered, asked, { confidence, most, isFull }, simulation),
  )
  const document = sizeResult({ found, loaded, asked, ordered, all, refused, most, options })
  return {
    document,
    rows: () => new Map([['designs.csv', designsSizedCsv(document)]]),
    isMet: isShown(document),
    cannotWork: cannotWork(document),
  }
}
