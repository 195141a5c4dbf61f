/** The document of a sizing, from what the search found. */
import type { Scenario } from '../scenario/schema.js'
import type { Condition } from '../study/condition.js'
import { currencyOf, unitName } from '../study/line-result.js'
import { shiftOf } from '../study/result.js'
import type { Tried } from '../study/size.js'
import { promiseFigure, type SizedDesign, type SizeResult } from '../study/size-result.js'
import { aboutOf } from './about.js'
import { overrideWords } from './options.js'
import type { CommandScenario } from './scenario.js'
import type { SizeOptions } from './size.js'
import type { SizeAsked } from './size-asked.js'
import type { ChosenDesign } from './size-choices.js'
import { quoted } from './text.js'
import { version } from './version.js'

/** What a search found. */
export interface Found {
  tried: Tried[]
  pick: number | null
  conditions: Condition[]
  /** The pick with shifts enough for its figures. */
  picked: SizeResult['picked']
}

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

/** Makes the document of `command: size`. */
export function sizeResult({
  found,
  loaded,
  asked,
  ordered,
  all,
  refused,
  most,
  options,
  name,
  confidence,
}: Parts): SizeResult {
  const { scenario } = loaded
  const currency = currencyOf(scenario)
  const tried = [...found.tried].sort((a, b) => a.design - b.design)
  const designs = tried.map((each): SizedDesign => {
    const promises = found.conditions.map((condition, index) =>
      promiseFigure(condition, each, index, confidence),
    )
    const [{ mean, low, high }] = promises as [SizedDesign['promises'][number]]
    const { set, cost } = ordered[each.design]!
    return {
      place: each.design + 1,
      ...{ set, cost, share: mean, low, high, shifts: each.shifts, verdict: each.verdict },
      without:
        each.without === null
          ? null
          : 'reason' in each.without
            ? each.without.reason
            : `no better than design ${each.without.worseThan + 1}, which was refused`,
      promises,
    }
  })
  const placeOf = (design: number | undefined | null) => {
    const at = tried.findIndex((each) => each.design === design)
    return at < 0 ? null : at
  }
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
    picked: found.picked,
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
