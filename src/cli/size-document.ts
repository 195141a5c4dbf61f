/** The document of a sizing, from what the search found. */

import { shiftOf } from '../answers/made.js'
import { currencyOf, unitName } from '../catalogue/unit-name.js'
import type { NearestDesign, SizedDesign, SizeResult } from '../questions/size/document.js'
import { endsOf } from '../questions/size/nearest.js'
import type { Tried } from '../questions/size/search.js'
import type { Scenario } from '../scenario/schema.js'
import { aboutOf } from './about.js'
import { overrideWords } from './options.js'
import type { CommandScenario } from './scenario.js'
import type { SizeOptions } from './size.js'
import type { SizeAsked } from './size-asked.js'
import type { ChosenDesign } from './size-choices.js'
import type { Found } from './size-search.js'
import { quoted } from './text.js'
import { version } from './version.js'

/** What the document is made of. */
interface Parts {
  found: Found
  loaded: CommandScenario
  asked: SizeAsked
  ordered: readonly ChosenDesign[]
  all: number
  refused: ReadonlyMap<string, number>
  most: number
  options: SizeOptions
  name: string
  confidence: number
}

/** A design that was looked at, as the document tells it. */
function sizedDesign(
  { design, verdict, without, figures, shifts }: Tried,
  { found, ordered }: Pick<Parts, 'found' | 'ordered'>,
): SizedDesign {
  const promises = found.conditions.map((_, index) => figures[index] ?? { mean: null, low: null, high: null })
  const [{ mean, low, high }] = promises as [SizedDesign['promises'][number]]
  const { set, cost } = ordered[design]!
  return {
    place: design + 1,
    ...{ set, cost, share: mean, low, high, shifts, verdict },
    without:
      without === null
        ? null
        : 'reason' in without
          ? without.reason
          : `no better than design ${without.worseThan + 1}, which was refused`,
    promises,
  }
}

/** The nearest design, at that place among those that were looked at. */
function nearestDesign(at: number, { found, ordered, asked }: Parts): NearestDesign {
  return {
    design: at,
    afresh: found.afresh,
    byHand: found.fault?.byHand ?? null,
    atEnds: endsOf(asked.choices, ordered[found.nearest!]!.set, asked.rising),
  }
}

/** Makes the document of `command: size`. */
export function sizeResult(parts: Parts): SizeResult {
  const { found, loaded, asked, ordered, all, refused, most, options, name, confidence } = parts
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
    format: 'tapeshift-result/1',
    command: 'size',
    made: {
      version,
      node: process.version,
      seed: scenario.study.seed,
      scenario: { title: scenario.title, sha256: loaded.sha256 },
      shifts: most,
      confidence,
      plain: false,
      repeat: repeatOf(name, options, most, scenario),
    },
    display: scenario.display,
    shift: shiftOf(scenario),
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
    isFull: options.full === true,
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
    about: aboutOf(
      loaded,
      found.pick === null ? [] : [{ name: 'the pick', scenario: ordered[found.pick]!.scenario }],
    ),
    // what is chosen is not assumed
    assumed: loaded.assumed.filter(({ path }) => asked.choices.every((choice) => choice.path !== path)),
    notes: [...refused].map(
      ([reason, count]) =>
        `${count} of the ${all} designs cannot be simulated and ${count === 1 ? 'is' : 'are'} left out: ${reason.replace(/\.$/, '')}.`,
    ),
    shifts: 'designs.csv',
  }
}

/** The command line that makes the same document again. */
function repeatOf(name: string, options: SizeOptions, most: number, { study }: Scenario): string {
  const named = (flag: string, values: readonly string[]) => values.map((each) => `--${flag} ${quoted(each)}`)
  return [
    ...overrideWords('size', name, options),
    ...named('choose', options.choose),
    ...named('holds', options.holds),
    ...named('order', options.order),
    ...named('rising', options.rising),
    ...(options.full ? ['--full'] : []),
    `--shifts ${most}`,
    ...named('seed', [study.seed]),
    ...(options.confidence === undefined ? [] : named('confidence', [options.confidence])),
  ].join(' ')
}
