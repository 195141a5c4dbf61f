/** Which design is the cheapest that keeps its promises? Makes the designs, searches among them and makes the document. */

import { combine, inOrder } from '../../answers/designs.js'
import type { Answer } from '../../answers/made.js'
import { cannotWork } from '../../answers/warnings.js'
import { hashOf } from '../../scenario/hash.js'
import { usualShifts } from '../../scenario/limits.js'
import type { ReadScenario } from '../../scenario/read.js'
import { type Context, simulating } from '../../shifts/simulation.js'
import { sizeResult } from './answer.js'
import { type SizeAsked, type SizeOptions, sizeAsked } from './asked.js'
import { designsSizedCsv, drawsSizedCsv } from './csv.js'
import { isShown, type SizeResult } from './document.js'
import { type Found, findAmong } from './found.js'

/** Draws of the inputs that may have to be simulated: of the pick, or of each design until one is sure enough. */
const mostDraws = (designs: number, { draws, sure }: SizeAsked): number =>
  (draws?.draws ?? 0) * (sure === null ? 1 : designs)

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
  const { draws: _, sure: __, ...search } = asked
  const course = [loaded.shiftsSha256, [search, most, isFull, confidence, ordered.map(({ key }) => key)]]
  const plan = {
    ...{ designs: ordered, seed, total: ordered.length + mostDraws(ordered.length, asked), isOpen: !isFull },
    counts: asked.draws === null ? ('designs' as const) : ('designs and draws' as const),
    course: hashOf(course),
  }
  const found = await simulating(plan, context, (simulation) =>
    findAmong(ordered, asked, { confidence, most, isFull }, simulation),
  )
  const document = sizeResult({ found, loaded, asked, ordered, all, refused, most, options })
  return {
    document,
    rows: () => rowsOf(document, found),
    isMet: isShown(document),
    cannotWork: cannotWork(document),
  }
}

/** The designs, and where inputs were drawn the draws of the one that the search ends with. */
function rowsOf(document: SizeResult, { drawn }: Found): Map<string, string> {
  const rows = new Map([['designs.csv', designsSizedCsv(document)]])
  return drawn === null ? rows : rows.set('draws.csv', drawsSizedCsv(document, drawn.rows))
}
