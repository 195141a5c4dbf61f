/** The document of a sizing, from what the search found. */

import { aboutOf, checkedDesign, pricedDesign, warnedDesign } from '../../answers/about.js'
import type { ChosenDesign } from '../../answers/designs.js'
import { inputsTold } from '../../answers/inputs-told.js'
import { beginOf, madeOf } from '../../answers/made.js'
import { type Warning, warningsOf } from '../../answers/warning.js'
import { currencyOf, unitName } from '../../catalogue/unit-name.js'
import type { ReadScenario } from '../../scenario/read.js'
import { shareOfDraws } from '../../statistics/kept-draws.js'
import { inputsBeside, type SizeAsked, type SizeOptions } from './asked.js'
import type { NearestDesign, SizedDesign, SizeResult } from './document.js'
import { wrongOf } from './drawn.js'
import { atPromisedRate } from './fault.js'
import type { Found } from './found.js'
import { endsOf } from './nearest.js'
import type { Tried } from './search.js'

/** What the document is made of. */
interface SizeRecord {
  found: Found
  loaded: ReadScenario
  asked: SizeAsked
  ordered: readonly ChosenDesign[]
  all: number
  refused: ReadonlyMap<string, number>
  most: number
  options: SizeOptions
}

/** A design that was looked at, as the document tells it. */
function sizedDesign(
  { design, verdict, without, figures, shifts }: Tried,
  { found, ordered }: Pick<SizeRecord, 'found' | 'ordered'>,
): SizedDesign {
  const promises = found.conditions.map((_, index) => figures[index] ?? { mean: null, low: null, high: null })
  const [{ mean, low, high }] = promises as [SizedDesign['promises'][number]]
  const { set, cost } = ordered[design]!
  return {
    place: design + 1,
    ...{ set, cost, share: mean, low, high, shifts, verdict },
    without:
      without && 'worseThan' in without
        ? `no better than design ${without.worseThan + 1}, which was rejected`
        : (without?.reason ?? null),
    promises,
    ...(found.drawn?.kept.has(design) ? { draws: found.drawn.kept.get(design)! } : {}),
  }
}

/** The nearest design, at that place among those that were looked at. */
function nearestDesign(at: number, { found, ordered, asked }: SizeRecord): NearestDesign {
  return {
    design: at,
    afresh: found.afresh,
    byHand: found.fault?.byHand ?? null,
    atEnds: endsOf(asked.choices, ordered[found.nearest!]!.set, asked.rising),
  }
}

/** What draws of the inputs say of the design that the search ends with. */
function sizeDrawn({ found, asked, loaded, ordered }: SizeRecord): Pick<SizeResult, 'drawn'> {
  const { drawn, pick, nearest } = found
  if (drawn === null) return {}
  const { confidence } = loaded.scenario.study
  const family = drawn.kept.size
  const wrongly = wrongOf(confidence)
  const kept = drawn.kept.get(pick ?? nearest!)!
  // the one of several that was chosen by its draws: the limits of all hold at once
  const limits = shareOfDraws(kept, 1 - (1 - confidence) / family, wrongly)
  const { evidence } = ordered[pick ?? nearest!]!
  const inputs = inputsBeside(evidence, asked.choices).map(({ path }) => path)
  const each = drawn.rows.map(({ verdict, figure, inputs: values }) => ({ verdict, figure, inputs: values }))
  return { drawn: { sure: asked.sure, ...limits, family, wrongly, inputs, each, ...drawn.told } }
}

/** Makes the document of `command: size`. */
export function sizeResult(parts: SizeRecord): SizeResult {
  const { found, loaded, asked, ordered, all, refused, most, options } = parts
  const { choose, holds, order, rising, full, draws, inputs, sure } = options
  const { scenario } = loaded
  const currency = currencyOf(scenario)
  const tried = [...found.tried].sort((a, b) => a.design - b.design)
  const designs = tried.map((each) => sizedDesign(each, parts))
  const placeOf = (design: number | undefined | null) => {
    const at = tried.findIndex((each) => each.design === design)
    return at < 0 ? null : at
  }
  const nearestAt = placeOf(found.nearest)
  const simulated = tried.filter(({ without }) => without === null)
  const cheaper = simulated.filter(
    ({ design, verdict }) => verdict === 'refused' && design < (found.pick ?? Infinity),
  )
  return {
    ...beginOf({ command: 'size' }, scenario, {
      made: madeOf(
        loaded,
        { command: 'size', shifts: most, plain: false },
        { choose, holds, order, rising, 'every-design': full, shifts: most },
        { draws, inputs, sure },
      ),
      warnings: warningsWith(ordered, found.pick, asked),
    }),
    currency,
    promises: found.conditions.map(({ text, measure, isShare, isLeast, value, near }) => ({
      promise: text,
      measure: measure.path.at(-1)!,
      label: measure.label,
      unit: isShare ? 'share' : unitName(measure.unit, currency),
      ...{ value, isLeast, near },
    })),
    choices: asked.choices,
    all,
    order: [
      ...(ordered.some(({ cost }) => cost !== null) ? ['cost'] : []),
      ...asked.order,
      'fewer machines',
      'slower belts',
      'shorter conveyors',
      'fewer people',
    ],
    isFull: full === true,
    designs,
    pick: placeOf(found.pick),
    nextCheaper: placeOf(cheaper.at(-1)?.design),
    spent: {
      designs: simulated.length,
      shifts: simulated.reduce((sum, { shifts }) => sum + shifts, 0),
    },
    rising: asked.rising,
    picked: found.pick === null ? null : found.afresh,
    nearest: nearestAt === null ? null : nearestDesign(nearestAt, parts),
    ...sizeDrawn(parts),
    about: aboutOf(
      loaded,
      found.pick === null ? [] : [{ name: 'the pick', scenario: ordered[found.pick]!.scenario }],
    ),
    // what is chosen is not assumed
    assumed: loaded.assumed.filter(({ path }) => asked.choices.every((choice) => choice.path !== path)),
    ...inputsTold(loaded, asked.choices),
    notes: [...refused].map(
      ([reason, count]) =>
        `${count} of the ${all} designs cannot be simulated and ${count === 1 ? 'is' : 'are'} left out: ${reason.replace(/\.$/, '')}.`,
    ),
    shifts: 'designs.csv',
  }
}

/** What stands at the head; `pick` is the place of the pick in `ordered`. Errors of other designs, and of the scenario itself, are none of the answer. */
function warningsWith(ordered: readonly ChosenDesign[], pick: number | null, asked: SizeAsked): Warning[] {
  const picked =
    pick === null
      ? []
      : [warnedDesign(checkedDesign('the pick', atPromisedRate(ordered[pick]!.scenario, asked)))]
  return warningsOf([...picked, ...ordered.map(pricedDesign)])
}
