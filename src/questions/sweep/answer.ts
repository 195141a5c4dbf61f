/** The document of a sweep, from what came of its designs. */

import {
  aboutOf,
  type CheckedDesign,
  checkedDesign,
  checkedDesigns,
  pricedDesign,
  warnedDesign,
} from '../../answers/about.js'
import { inputsTold } from '../../answers/inputs-told.js'
import { orNull } from '../../answers/line-result.js'
import { beginOf, madeOf } from '../../answers/made.js'
import { warningsOf } from '../../answers/warning.js'
import { isCostInPart } from '../../answers/warnings.js'
import { currencyOf } from '../../catalogue/unit-name.js'
import { buffersOf } from '../../hand/buffers.js'
import { handCalculation } from '../../hand/hand.js'
import { lineByHand } from '../../hand/line.js'
import { has } from '../../kinds/traits.js'
import { heldFixed } from '../../scenario/evidence.js'
import type { ReadScenario } from '../../scenario/read.js'
import type { Scenario } from '../../scenario/schema.js'
import type { SweepOptions, Varied } from './asked.js'
import {
  type Factor,
  pointsOf,
  type SampledDesign,
  type SpeedByHand,
  type SweepKind,
  type SweepMeasure,
  type SweepPoint,
  type SweepResult,
} from './document.js'
import type { SweepDraws } from './drawn.js'
import { planOf } from './effects.js'
import { amountOf, inSi, inUnit } from './factor.js'
import type { LeftOut } from './inputs.js'
import { curveOf, eachOf, gridOf, type MovedInput } from './kinds.js'
import type { Outcome } from './outcomes.js'
import type { Planned } from './points.js'
import { type TriedInput, textOf, treeValue } from './tried.js'

/** What the document is made of. */
interface Parts {
  kind: SweepKind
  varied: readonly Varied[]
  loaded: ReadScenario
  measures: readonly SweepMeasure[]
  base: Planned
  points: readonly Planned[]
  inputs: readonly TriedInput[]
  leftOut: readonly LeftOut[]
  notes: readonly string[]
  outcomes: ReadonlyMap<string, Outcome>
  shifts: number
  draws: SweepDraws
  options: SweepOptions
}

/** Makes the document of `command: sweep`. */
export function sweepResult(parts: Parts): SweepResult {
  const { kind, varied, loaded, measures, outcomes, shifts } = parts
  const { each, plan, vary, measure, draws: asked, inputs } = parts.options
  const { scenario } = loaded
  const { confidence } = scenario.study
  const [base] = sampledOf([parts.base], outcomes, parts.draws).designs as [SampledDesign]
  const { designs, tried, failures } = sampledOf(parts.points, outcomes, parts.draws)
  const { checked, errorsOf, notes } = checkedPoints(loaded, tried)
  const points = pointsOf(designs, measures, confidence).map((point, index) => ({
    ...point,
    ...errorsOf(tried[index]!),
  }))
  const warnings = warningsOf([
    ...checked.map(warnedDesign),
    ...(checked.length > 1 ? [] : tried.map(pricedDesign)),
  ])
  const factors = kind === 'each' ? [] : varied.map((factor) => factorOf(factor, parts))
  return {
    ...beginOf({ command: 'sweep', kind }, scenario, {
      // the usual number of shifts is not named: as an option it would be another scenario
      made: madeOf(
        loaded,
        { command: 'sweep', shifts, plain: true },
        { each, plan, vary, measure, shifts: loaded.asked.shifts },
        { draws: asked, inputs },
      ),
      warnings,
    }),
    target: scenario.target ?? null,
    currency: currencyOf(scenario),
    factors,
    measures: [...measures],
    base: pointsOf([base], measures, confidence)[0]!.measures,
    points,
    curve: kind === 'curve' ? curveTold(parts, designs, base, isCostInPart({ warnings })) : null,
    grid: kind === 'grid' ? gridOf(points, factors, measures) : null,
    each: kind === 'each' ? eachOf(movedInputs(parts), base, measures, confidence) : null,
    plan: kind === 'plan' ? planOf(points, designs, factors, measures, confidence) : null,
    ...(parts.draws.asked ? { drawn: parts.draws.asked } : {}),
    leftOut: [...parts.leftOut, ...unlike(failures)],
    about: aboutOf(loaded, [], [{ ...checked[0]!, name: null }]),
    assumed: loaded.assumed,
    ...inputsTold(loaded, each ? [] : parts.varied),
    notes: [...parts.notes, ...notes],
    shifts: 'designs.csv',
  }
}

/** The designs that were simulated to the end, with their samples, and why others were not. */
function sampledOf(points: readonly Planned[], outcomes: Parts['outcomes'], draws: SweepDraws) {
  const failures: LeftOut[] = []
  const tried: Planned[] = []
  const designs = points.flatMap((point): SampledDesign[] => {
    const { set, at, key } = point
    const outcome = outcomes.get(key)!
    if ('failed' in outcome) failures.push({ path: setText(set), reason: outcome.failed })
    else tried.push(point)
    return 'failed' in outcome
      ? []
      : [{ set, at, samples: outcome.samples, draws: draws.samples(point, outcomes) }]
  })
  return { designs, tried, failures }
}

/** What a curve tells, also by hand. */
function curveTold(
  { varied, measures, loaded: { scenario } }: Parts,
  designs: readonly SampledDesign[],
  base: SampledDesign,
  isCostInPart: boolean,
): SweepResult['curve'] {
  const [{ path, unit: factorUnit }] = varied as [Varied]
  const { target = null, study } = scenario
  const { confidence } = study
  const curve = curveOf({ designs, base, measures, target, confidence, isCostInPart, factorUnit })
  return { ...curve, byHand: speedByHand(path, scenario) }
}

/** More points than this are not checked one by one: a check takes milliseconds, and a grid may have thousands. */
const mostChecked = 200

/** What the check finds of the scenario as it stands, then of each point where they are not too many; and what that leaves open. */
function checkedPoints(loaded: ReadScenario, points: readonly Planned[]) {
  const isChecked = points.length <= mostChecked
  const [own] = checkedDesigns(loaded) as [CheckedDesign]
  const others = new Map(
    isChecked ? points.map(({ key, set, scenario }) => [key, checkedDesign(pointName(set), scenario)]) : [],
  )
  const errorsOf = ({ key }: Planned): Pick<SweepPoint, 'errors'> => {
    const errors = others.get(key)?.findings.filter(({ severity }) => severity === 'error') ?? []
    return errors.length > 0 ? { errors: [...new Set(errors.map(({ code }) => code))] } : {}
  }
  return {
    checked: [{ ...own, name: asItStands }, ...others.values()],
    errorsOf,
    notes: isChecked
      ? []
      : [
          `With ${points.length} points, check looked only at the scenario as it stands: run check on the point that you choose.`,
        ],
  }
}

/** A point among others; its values stand together. */
const pointName = (set: Record<string, unknown>) =>
  Object.keys(set).length > 1 ? `(${setText(set)})` : setText(set)

/** The scenario among the points of a sweep. */
const asItStands = 'the scenario as it stands'

const unlike = (failures: readonly LeftOut[]) => [
  ...new Map(failures.map((each) => [each.path, each])).values(),
]

const setText = (set: Record<string, unknown>) =>
  Object.entries(set)
    .map(([path, value]) => `${path} = ${textOf(value)}`)
    .join(', ')

/** The inputs with what came of their ends; one of which both failed is left out. */
function movedInputs({ inputs, outcomes, draws, base: asItStands }: Parts): MovedInput[] {
  const endOf = (planned: TriedInput['low']): SampledDesign | null =>
    sampledOf(planned === null ? [] : [planned], outcomes, draws).designs[0] ?? null
  const textOfEnd = ({ path }: TriedInput, planned: TriedInput['low']) =>
    planned === null ? null : textOf(planned.set[path])
  return inputs.flatMap((input) => {
    const ends = { low: endOf(input.low), high: endOf(input.high) }
    if (ends.low === null && ends.high === null) return []
    const { path, base, low, high } = input
    const against = draws.samples(asItStands, outcomes, draws.heldFor({ [path]: null }))
    return [{ path, base, low: textOfEnd(input, low), high: textOfEnd(input, high), ends, against }]
  })
}

function factorOf({ path, unit, values }: Varied, { loaded, points, varied, kind }: Parts): Factor {
  const own = amountOf(treeValue(heldFixed(loaded), path))
  const si = values.map((number) => inSi({ number, unit }))
  const place = varied.findIndex((each) => each.path === path)
  return {
    path,
    unit,
    values,
    base: own && (inUnit(own, unit)?.number ?? null),
    si: { unit: si[0]!.unit, values: si.map(({ number }) => number) },
    minutes: kind === 'plan' ? null : minutesOf(path, values, place, points, loaded.scenario),
  }
}

/** Minutes that the free places of a conveyor last at the target, by hand, for each of its lengths; null of anything else. */
function minutesOf(
  path: string,
  values: readonly number[],
  place: number,
  points: readonly Planned[],
  { target, line }: Scenario,
): number[] | null {
  const name = /^line\.([^.]+)\.length$/.exec(path)?.[1]
  const piece = name === undefined ? undefined : line[name]
  if (target === undefined || !piece || !has(piece, 'conveys') || piece.carries === 'belt') return null
  const minutes = values.map((value) => {
    const point = points.find(({ at }) => at[place] === value)
    const buffer =
      point && buffersOf(point.scenario, lineByHand(point.scenario)).find((each) => each.name === name)
    return buffer ? (buffer.places - buffer.riding) / target / 60 : Number.NaN
  })
  return minutes.every(Number.isFinite) ? minutes : null
}

/** What pencil and paper say of the belts of a sealer whose speed is varied. */
function speedByHand(path: string, scenario: Scenario): SpeedByHand | null {
  const machine = /^line\.([^.]+)\.belt-speed$/.exec(path)?.[1]
  const curve = handCalculation(scenario).curves.find((each) => each.machine === machine)
  if (!curve) return null
  return { machine: curve.machine, ceiling: orNull(curve.ceiling), littleGain: orNull(curve.littleGain) }
}
