/** The losses of the shift: what a machine could put out at its limit, what takes from that, step by step, and what comes out. */

import type { Figure } from '../catalogue/figure.js'
import type { MeasureName } from '../catalogue/measures.js'
import { type StateKey, stateKeys, stateLabel, states } from '../catalogue/states.js'
import { byHandOf } from '../kinds/hand.js'
import { cutsOf } from '../kinds/sealer/heads.js'
import type { SealerKeys } from '../kinds/sealer/keys.js'
import { has } from '../kinds/traits.js'
import { jamsOf } from '../scenario/jams.js'
import { outsideSize } from '../scenario/outside.js'
import type { Scenario } from '../scenario/schema.js'
import { gapNeeded, steadyRate } from '../trade/headway.js'
import type { Simulated } from './figures.js'
import {
  type LossesAsked,
  type LossStep,
  LossStudy,
  less,
  lost,
  plus,
  type Series,
  shareOf,
  sum,
  times,
} from './losses-study.js'
import { Routes } from './machine-routes.js'

export type { LossesAsked, LossStep } from './losses-study.js'

/** The steps of one machine: `could` less all `losses` is `leaves`, exactly. */
export interface MachineLosses {
  machine: string
  type: string
  /** Cases a second at its limit. */
  rate: number
  /** Where that rate comes from, in words. */
  how: string
  /** Cases of a shift at that rate, never standing. */
  could: number
  /** The same with its interval, where what is not known of the inputs moves it. */
  limit?: Figure
  losses: LossStep[]
  /** Cases that leave it, sealed or not. */
  leaves: Figure
  /** Its cases come to another one of these machines later, so that they are counted there. */
  isFollowed: boolean
}

/** What `leaves` the machines that are not followed, less all steps of the `line`, is `output`, exactly. */
export interface Losses {
  machines: MachineLosses[]
  line: LossStep[]
  output: Figure
}

/** In this order a shift is taken apart: breaks, what others do to the machine, its own stops. */
const order: readonly StateKey[] = [
  'on-break',
  ...stateKeys.filter((key) => !['work', 'break'].includes(states[key].group)),
]

/**
 * The losses of each sealer; of a line without one those of its bottleneck, if that takes a time for each case and all cases pass it. Null where there is
 * nothing to tell of. Every step is a sum over the numbers of a shift, so each has an interval of its own; what the controls move otherwise is put
 * on the one step that is a rest, so that all adds up. With them the numbers by shift behind each figure, by the name of its place. Limit of a sealer: planned run time of the cases that came, length and gap over belt
 * speed (`trade/headway`); of the others: places over mean time.
 */
export function lossesRead(
  simulated: Simulated,
  asked: LossesAsked,
): { losses: Losses | null; series: ReadonlyMap<string, Series> } {
  const study = new LossStudy(simulated, asked)
  return { losses: lossesIn(study, simulated, asked), series: study.told }
}

function lossesIn(study: LossStudy, { scenario }: Simulated, { bottleneck }: LossesAsked): Losses | null {
  const routes = new Routes(scenario)
  const sealers = Object.keys(scenario.line).filter((name) => has(scenario.line[name]!, 'tapes'))
  if (sealers.length > 0) {
    const machines = sealers.map((name) => sealerLosses(study, name, routes.isFollowed(name, sealers)))
    const last = sealers.filter((name) => !routes.isFollowed(name, sealers))
    return withLine(study, machines, { label: routes.restLabel(last), behind: routes.behind(last) })
  }
  if (bottleneck === null || !routes.allPass([bottleneck]) || routes.isOnLoop(bottleneck)) return null
  const rate = placeRate(scenario.line[bottleneck]!)
  if (rate === null) return null
  const behind = routes.behind([bottleneck])
  return withLine(study, [placeLosses(study, bottleneck, rate, behind)], { label: '', behind })
}

/** `figure` moved to `mean`, its interval with it. */
function movedTo(figure: Figure, mean: number): Figure {
  const by = mean - (figure.mean ?? 0)
  const moved = (value: number | null) => (value === null ? null : value + by)
  return { ...figure, mean, low: moved(figure.low), high: moved(figure.high) }
}

/** The losses by state of a machine that could put out so many cases. */
const stateSteps = (study: LossStudy, name: string, could: number): LossStep[] =>
  order.flatMap((key) => {
    const kinds = states[key].stop === 'jam' ? kindsOf(study.scenario, name) : []
    if (kinds.length > 0) return kinds.flatMap((kind) => jamStep(study, name, key, kind, could) ?? [])
    const path = `equipment.${name}.states.${key}` as const
    return (
      study.step(name, key, stepLabel(study.scenario, key), times(study.read(path), could), could, path) ?? []
    )
  })

/** Names of the kinds of jam of a piece; none where it has but one without a name. */
const kindsOf = ({ line }: Scenario, name: string): string[] =>
  jamsOf(line[name]!.jams).flatMap(({ name: kind }) => kind ?? [])

/** The part of a state of jams that one kind of jam takes. */
function jamStep(study: LossStudy, name: string, key: StateKey, jam: string, could: number): LossStep | null {
  const path = `equipment.${name}.jams.${jam}` as const
  const waiting = study.part(`${path}.wait`, 'value')
  const time = states[key].isWaitForCrew ? waiting : less(study.part(`${path}.stop`, 'value'), waiting)
  const label = `${stateLabel(key)} (${jam})`
  const step = study.step(
    `${name} ${jam}`,
    key,
    label,
    times(time, could / study.span),
    could,
    `${path}.stop`,
  )
  return step && { ...step, jam }
}

function stepLabel({ shift }: Scenario, key: StateKey): string {
  if (key === 'on-break') return 'breaks'
  const runsOn = shift.breaks.length > 0 && shift['breaks-stop'] !== 'everything'
  if (key === 'waiting') return runsOn ? 'starved, breaks included' : 'starved'
  return stateLabel(key)
}

function sealerLosses(study: LossStudy, name: string, isFollowed: boolean): MachineLosses {
  const at = `equipment.${name}` as const
  const all = study.part(`${at}.effectiveness.quality`, 'over')
  const planned = sum(study.part(`${at}.effectiveness.effectiveness`, 'value'))
  const rate = planned > 0 ? sum(all) / planned : limitOfShares(study.scenario, name)
  return machineLosses(study, name, {
    rate,
    how: `length and gap over belt speed, mean of ${planned > 0 ? 'the cases that came' : 'the cases by their shares'}`,
    handled: all,
    rest: { key: 'gaps', label: 'working with wide gaps: folding or cases far apart' },
    spoilt: spoiltAt(study, name),
    isFollowed,
  })
}

/** A sealer to which nothing came: the mix of the arrivals. */
function limitOfShares({ cases, line }: Scenario, name: string): number {
  const keys = line[name] as SealerKeys
  const speed = keys['belt-speed']
  const kinds = Object.values(cases)
  const length = sum(kinds.map((kind) => kind.share * outsideSize(kind).length))
  const shares = sum(kinds.map(({ share }) => share))
  return steadyRate(speed, length / shares, gapNeeded(keys['minimum-gap'], cutsOf(keys), speed))
}

/** Cases a second of a piece that takes a time for each case; null of others. */
function placeRate(keys: Scenario['line'][string]): number | null {
  const { places, stay } = byHandOf(keys)
  const [side, time] = [places(keys), stay(keys)]
  return side !== null && time > 0 ? side / time : null
}

function placeLosses(study: LossStudy, name: string, rate: number, behind: readonly string[]): MachineLosses {
  const keys = study.scenario.line[name]!
  const isStation = has(keys, 'hasPlaces')
  const hasPlaces = isStation && keys.servers > 1
  return machineLosses(study, name, {
    rate,
    how: isStation ? 'places / mean time per case' : '1 / mean time per case',
    // nothing counts what it has finished: all that leave the line have passed it, and those that are spoilt later
    handled: plus(
      study.read('measures.output'),
      study.read('measures.rejected'),
      ...[name, ...behind].map((each) => spoiltAt(study, each)),
    ),
    rest: {
      key: 'slower',
      label: `working below its limit: ${hasPlaces ? 'free places' : 'longer times'}, cases still in the line`,
    },
    spoilt: spoiltAt(study, name),
    isFollowed: false,
  })
}

interface Handled extends Pick<MachineLosses, 'rate' | 'how' | 'isFollowed'> {
  /** Cases that it has finished, spoilt ones included. */
  handled: Series
  rest: Pick<LossStep, 'key' | 'label'>
  spoilt: Series
}

function machineLosses(
  study: LossStudy,
  name: string,
  { handled, rest, spoilt, ...given }: Handled,
): MachineLosses {
  const at = `equipment.${name}` as const
  const could = given.rate * study.span
  const working = times(study.read(`${at}.states.working`), could)
  study.told.set(
    `${name} capacity`,
    working.map(() => could),
  )
  const leaves = study.figure(`${name} passed on`, `Cases passed on by ${name}`, less(handled, spoilt))
  const before = stateSteps(study, name, could)
  const last = study.step(name, 'spoilt', 'spoilt in jams', spoilt, could, `${at}.cases-lost`) ?? []
  const losses = [...before, ...[last].flat()]
  const wider = study.figure(`${name} ${rest.key}`, rest.label, less(working, handled))
  const cases = movedTo(wider, could - lost(losses) - (leaves.mean ?? 0))
  losses.splice(before.length, 0, { ...rest, cases, share: shareOf(cases, could) })
  const { rate, how, isFollowed } = given
  const { type } = study.scenario.line[name]!
  return { machine: name, type, rate, how, could, losses, leaves, isFollowed }
}

/** Cases that jams of a piece spoil. */
const spoiltAt = (study: LossStudy, name: string): Series =>
  study.read(`equipment.${name}.measures.cases-lost`)

/** What lies between the machines and the exit. */
interface Rest {
  /** What remains, in words; empty where nothing can. */
  label: string
  /** Pieces there, whose jams may spoil cases. */
  behind: readonly string[]
}

/** Adds the machines up, and goes on to the output of the line. */
function withLine(study: LossStudy, machines: MachineLosses[], { label: rest, behind }: Rest): Losses {
  const last = machines.filter(({ isFollowed }) => !isFollowed)
  const could = sum(last.map((machine) => machine.could))
  const leaves = sum(last.map((machine) => machine.leaves.mean ?? 0))
  const output = study.figure('line output', 'Good cases a shift', study.read('measures.output'))
  const [rejected, unsealed] = [study.read('measures.rejected'), study.read('measures.unsealed')]
  const jammed = behind.map((name) => spoiltAt(study, name))
  const spoilt = plus(times(rejected, 0), ...jammed)
  const steps: [key: string, label: string, cases: Series, of?: MeasureName][] = [
    ['spoilt', `spoilt in jams after ${last.length === 1 ? last[0]!.machine : 'them'}`, spoilt],
    ['rejected', 'left the line rejected', rejected, 'rejected'],
    ['unsealed', 'left the line unsealed and unnoticed', unsealed, 'unsealed'],
  ]
  const line = steps.flatMap(
    ([key, label, cases, of]) => study.step('line', key, label, cases, could, of) ?? [],
  )
  if (rest !== '') {
    const all = last.map(({ machine }) =>
      less(study.part(`equipment.${machine}.effectiveness.quality`, 'over'), spoiltAt(study, machine)),
    )
    const inside = less(
      plus(all[0]!, ...all.slice(1)),
      rejected,
      unsealed,
      study.read('measures.output'),
      spoilt,
    )
    const cases = movedTo(study.figure('line inside', rest, inside), leaves - lost(line) - (output.mean ?? 0))
    if (inside.some((value) => value !== 0))
      line.push({ key: 'inside', label: rest, cases, share: shareOf(cases, could) })
  }
  return { machines, line, output }
}
