/** Measures of the line as a whole: output, target, time in it, tape. */
import { massPerMetre } from '../trade/tape.js'
import type { Calendar } from './calendar.js'
import type { Exit } from './exit.js'
import type { Floor } from './floor.js'
import { lineMeasure, type Measure } from './measure.js'
import type { Mechanism } from './mechanism.js'
import type { Taper } from './taper.js'

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
    lineMeasure('throughput', () => exit.out / floor.counted.workingTime),
    lineMeasure('output', () => exit.out),
    lineMeasure('time-in-system', () => exit.timeInSystem.mean()),
    lineMeasure('time-in-system-p95', () => exit.timeInSystem.quantile(0.95)),
    ...caseMeasures(floor, calendar, exit, mayReject),
    ...(tapers.length > 0 ? tapeMeasures(floor, exit, tapers) : []),
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
      ...lineMeasure('target-held', () => calendar.reached / counted.observed),
      // of a campaign it is a mean over its shifts, no longer one or none
      ...(campaign > 1 ? { kind: 'mean' } : {}),
    })
  if (mayReject) measures.push(lineMeasure('rejected', () => exit.rejected))
  const reopens = scenario.closure?.reopens
  if (reopens) measures.push(lineMeasure('reopened', () => reopens.chance * exit.out))
  return measures
}

function tapeMeasures({ scenario }: Floor, exit: Exit, tapers: readonly Taper[]): Measure[] {
  const heads = tapers.flatMap((taper) => taper.heads)
  const sum = (of: (head: (typeof heads)[number]) => number) =>
    heads.reduce((total, head) => total + of(head), 0)
  const mass = massPerMetre(scenario.tape.width, scenario.tape.thickness)
  const used = () => sum((head) => head.used)
  const over = () => exit.out
  const isFixed = !tapers.some((taper) => taper.mayLeaveOpen)
  return [
    lineMeasure('unsealed', () => exit.escaped, { isFixed }),
    lineMeasure('tape-per-case', () => exit.tape, { over }),
    lineMeasure('tape-lost-per-case', () => sum((head) => head.lost + head.spoilt), { over }),
    lineMeasure('tape', used),
    lineMeasure('tape-mass', () => used() * mass),
  ]
}
