/** Measures of the line as a whole: output, target, time in it, tape. */
import { massPerMetre } from '../trade/tape.js'
import type { Calendar } from './calendar.js'
import type { Exit } from './exit.js'
import type { Floor } from './floor.js'
import type { Measure } from './measure.js'
import type { Mechanism } from './mechanism.js'
import type { Taper } from './taper.js'

const at = (key: string): string[] => ['measures', key]

/** The measures under `measures` of the result, money left out. */
export function lineMeasures(
  floor: Floor,
  calendar: Calendar,
  exit: Exit,
  mechanisms: readonly Mechanism[],
): Measure[] {
  const tapers = mechanisms.flatMap((each) => each.taper() ?? [])
  const mayReject = mechanisms.some((each) => each.mayReject())
  return [
    ...timeMeasures(floor, exit),
    ...caseMeasures(floor, calendar, exit, mayReject),
    ...(tapers.length > 0 ? tapeMeasures(floor, exit, tapers) : []),
  ]
}

function timeMeasures(floor: Floor, exit: Exit): Measure[] {
  return [
    {
      path: at('throughput'),
      label: 'Good cases out over working time',
      unit: 'cases/s',
      kind: 'mean',
      value: () => exit.out / floor.counted.workingTime,
    },
    {
      path: at('output'),
      label: 'Good cases out a shift',
      unit: 'cases',
      kind: 'total',
      value: () => exit.out,
    },
    {
      path: at('time-in-system'),
      label: 'Time from arrival to exit, mean',
      unit: 's',
      kind: 'mean',
      value: () => exit.timeInSystem.mean(),
    },
    {
      path: at('time-in-system-p95'),
      label: 'Time from arrival to exit, not passed by 95 % of the cases',
      unit: 's',
      kind: 'mean',
      value: () => exit.timeInSystem.quantile(0.95),
    },
  ]
}

/** What became of the cases, as far as the scenario leaves it open. */
function caseMeasures(
  { scenario, campaign, counted }: Floor,
  calendar: Calendar,
  exit: Exit,
  mayReject: boolean,
): Measure[] {
  const measures: Measure[] = []
  if (scenario.target !== undefined)
    measures.push({
      path: at('target-held'),
      label: 'Share of shifts that reach the target',
      unit: 'share',
      // of a campaign it is a mean over its shifts, no longer one or none
      kind: campaign > 1 ? 'mean' : 'share',
      value: () => calendar.reached / counted.observed,
    })
  if (mayReject)
    measures.push({
      path: at('rejected'),
      label: 'Cases that left the line rejected, a shift',
      unit: 'cases',
      kind: 'count',
      value: () => exit.rejected,
    })
  const reopens = scenario.closure?.reopens
  if (reopens)
    measures.push({
      path: at('reopened'),
      label: 'Good cases whose closure opens later, expected, a shift',
      unit: 'cases',
      kind: 'total',
      value: () => reopens.chance * exit.out,
    })
  return measures
}

function tapeMeasures({ scenario }: Floor, exit: Exit, tapers: readonly Taper[]): Measure[] {
  const heads = tapers.flatMap((taper) => taper.heads)
  const sum = (of: (head: (typeof heads)[number]) => number) =>
    heads.reduce((total, head) => total + of(head), 0)
  const mass = massPerMetre(scenario.tape.width, scenario.tape.thickness)
  const used = () => sum((head) => head.used)
  return [
    {
      path: at('unsealed'),
      label: 'Unsealed cases that left the line unnoticed, a shift',
      unit: 'cases',
      kind: 'count',
      value: () => exit.escaped,
      ...(tapers.some((taper) => taper.mayLeaveOpen) ? {} : { isFixed: true }),
    },
    {
      path: at('tape-per-case'),
      label: 'Tape on a good case',
      unit: 'm/case',
      kind: 'ratio',
      value: () => exit.tape,
      over: () => exit.out,
    },
    {
      path: at('tape-lost-per-case'),
      label: 'Tape lost with the rolls and in breaks, a good case',
      unit: 'm/case',
      kind: 'ratio',
      value: () => sum((head) => head.lost + head.spoilt),
      over: () => exit.out,
    },
    {
      path: at('tape'),
      label: 'Tape used a shift, all heads, loss included',
      unit: 'm',
      kind: 'total',
      value: used,
    },
    {
      path: at('tape-mass'),
      label: 'Mass of that tape, without cores',
      unit: 'kg',
      kind: 'total',
      value: () => used() * mass,
    },
  ]
}
