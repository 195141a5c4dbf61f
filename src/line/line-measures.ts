/** Measures of the line as a whole: output, target, time in it, tape. */
import { massPerMetre } from '../trade/tape.js'
import type { Calendar } from './calendar.js'
import type { Exit } from './exit.js'
import type { Floor } from './floor.js'
import { lineMeasure, type Measure } from './measure.js'
import type { Sealer } from './sealer.js'

/** The measures under `measures` of the result, money left out. */
export function lineMeasures(
  floor: Floor,
  calendar: Calendar,
  exit: Exit,
  sealers: readonly Sealer[],
): Measure[] {
  const { scenario } = floor
  const measures = [
    lineMeasure('throughput', () => exit.out / floor.counted.workingTime),
    lineMeasure('output', () => exit.out),
    lineMeasure('time-in-system', () => exit.timeInSystem.mean()),
    lineMeasure('time-in-system-p95', () => exit.timeInSystem.quantile(0.95)),
  ]
  if (scenario.target !== undefined)
    measures.push({
      ...lineMeasure('target-held', () => calendar.reached / floor.counted.observed),
      // of a campaign it is a mean over its shifts, no longer one or none
      ...(floor.campaign > 1 ? { kind: 'mean' } : {}),
    })
  if (Object.values(scenario.line).some(({ type }) => type === 'inspect'))
    measures.push(lineMeasure('rejected', () => exit.rejected))
  const reopens = scenario.closure?.reopens
  if (reopens) measures.push(lineMeasure('reopened', () => reopens.chance * exit.out))
  if (sealers.length === 0) return measures
  const heads = sealers.flatMap((sealer) => sealer.heads)
  const sum = (of: (head: (typeof heads)[number]) => number) =>
    heads.reduce((total, head) => total + of(head), 0)
  const mass = massPerMetre(scenario.tape.width, scenario.tape.thickness)
  const used = () => sum((head) => head.used)
  const over = () => exit.out
  const mayLeaveOpen = sealers.some((sealer) => sealer.mayLeaveOpen)
  return [
    ...measures,
    lineMeasure('unsealed', () => exit.escaped, mayLeaveOpen ? {} : { isFixed: true }),
    lineMeasure('tape-per-case', () => exit.tape, { over }),
    lineMeasure('tape-lost-per-case', () => sum((head) => head.lost + head.spoilt), { over }),
    lineMeasure('tape', used),
    lineMeasure('tape-mass', () => used() * mass),
  ]
}
