/** The hand calculation: figures of the line without simulation, each with the measure of a run that it foretells. */

import { pricedMoney } from '../scenario/capital.js'
import type { Scenario } from '../scenario/schema.js'
import { capitalPerShift, energyCost, labourCost, maintenancePerShift } from '../trade/money.js'
import { type BufferHand, buffersOf, type MachineBuffer, machineBuffers } from './buffers.js'
import { type Curve, curvesOf } from './curve.js'
import { type Expected, expectedOutput } from './expected.js'
import { type LineHand, lineByHand } from './line.js'
import { rideOf } from './pace.js'
import { type BufferedPair, bufferedPairs } from './pairs.js'
import { type CrewLoad, crewLoads } from './people.js'
import { stayOf } from './series.js'
import { stopsPerShift, workingShare } from './stop-counts.js'
import { type TapeUse, tapeUse } from './tape-use.js'

/** Units of a row, SI, as results name them. */
type RowUnit =
  | 'cases/s'
  | 'cases'
  | 's'
  | 'share'
  | 'count'
  | 'm'
  | 'm/case'
  | 'kg'
  | 'rolls'
  | 'money'

/** One figure that a run measures too. */
export interface HandRow {
  /** Dotted path of the measure in the result of a run, such as `equipment.sealer.states.working`. */
  measure: string
  label: string
  value: number
  unit: RowUnit
  /** How the figure comes about. */
  how: string
}

/** All that pencil and paper say of a scenario. */
export interface HandCalculation {
  line: LineHand
  rows: HandRow[]
  buffers: BufferHand[]
  machineBuffers: MachineBuffer[]
  pairs: BufferedPair[]
  curves: Curve[]
  crews: CrewLoad[]
  tape: TapeUse | null
  /** Output that stops and buffers leave. Worked out when it is first asked for: it takes longer than all the rest. */
  readonly expected: Expected
}

/** Works the scenario out by hand. Mixed cases by their shares: mean headway, not the headway of a mean case. */
export function handCalculation(scenario: Scenario): HandCalculation {
  const line = lineByHand(scenario)
  const buffers = buffersOf(scenario, line)
  const tape = line.pieces.some(({ type }) => type === 'sealer') ? tapeUse(scenario, line) : null
  const crews = crewLoads(scenario, line)
  let expected: Expected | null = null
  return {
    get expected() {
      expected ??= expectedOutput(scenario, line, buffers)
      return expected
    },
    line,
    rows: [
      ...lineRows(scenario, line),
      ...pieceRows(scenario, line),
      ...(tape ? tapeRows(tape) : []),
      ...costRows(scenario, line, tape),
      ...crews.map(
        (crew): HandRow => ({
          measure: `crew.${crew.name}.busy`,
          label: `Busy walking and working, ${crew.name}`,
          value: crew.busy,
          unit: 'share',
          how: 'stops x (walk + work)',
        }),
      ),
    ],
    buffers,
    machineBuffers: machineBuffers(scenario, line, buffers),
    pairs: bufferedPairs(scenario, line, buffers),
    curves: curvesOf(scenario, line),
    crews,
    tape,
  }
}

function lineRows(scenario: Scenario, line: LineHand): HandRow[] {
  const how =
    line.admitted < 1 ? 'what the bottleneck leaves after its stops' : 'what arrives, less what is lost'
  return [
    {
      measure: 'measures.throughput',
      label: 'Good cases out over working time',
      value: line.throughput,
      unit: 'cases/s',
      how,
    },
    {
      measure: 'measures.output',
      label: 'Good cases out a shift',
      value: line.throughput * line.working,
      unit: 'cases',
      how,
    },
    {
      measure: 'measures.time-in-system',
      label: 'Time from arrival to exit, mean',
      value: transit(scenario, line),
      unit: 's',
      how: 'rides and work, without any waiting',
    },
  ]
}

/** Time on the way through the pieces, a case, s. */
function transit(scenario: Scenario, line: LineHand): number {
  if (line.perShift === 0) return 0
  const visits = (flow: number) => flow / line.arriving
  return line.pieces.reduce(
    (total, piece) => total + visits(piece.flow) * stayOf(scenario.line[piece.name]!),
    0,
  )
}

function pieceRows(scenario: Scenario, line: LineHand): HandRow[] {
  return line.pieces.flatMap((piece) => {
    const keys = scenario.line[piece.name]!
    const at = `equipment.${piece.name}`
    const rows: HandRow[] = []
    if (keys.type === 'sealer')
      rows.push({
        measure: `${at}.states.working`,
        label: `Share of the shift in which ${piece.name} works`,
        value: workingShare(line, piece),
        unit: 'share',
        how: 'cases x (headway + free folding)',
      })
    if (keys.type === 'station')
      rows.push({
        measure: `${at}.measures.utilisation`,
        label: `Share of its places at work, ${piece.name}`,
        value: (piece.perShift * piece.cycle) / line.span,
        unit: 'share',
        how: 'cases x time a case, over places',
      })
    if (keys.type === 'conveyor')
      rows.push({
        measure: `${at}.measures.held`,
        label: `Cases on ${piece.name}, mean over time`,
        value: (piece.perShift * rideOf(keys)) / line.span,
        unit: 'cases',
        how: 'cases x ride, nothing waiting (Little)',
      })
    for (const { key, words, count } of stopsPerShift(scenario, line, piece))
      rows.push({
        measure: `${at}.measures.${key}`,
        label: `${words.charAt(0).toUpperCase()}${words.slice(1)} a shift, ${piece.name}`,
        value: count,
        unit: 'count',
        how: key === 'roll-changes' ? 'strips over strips a roll, each head' : 'cases or time x frequency',
      })
    return rows
  })
}

function tapeRows(tape: TapeUse): HandRow[] {
  const row = (measure: string, label: string, value: number, how: string, unit: RowUnit = 'm'): HandRow => ({
    measure,
    label,
    value,
    unit,
    how,
  })
  return [
    row(
      'measures.tape',
      'Tape used a shift, all heads',
      tape.used,
      'strips, and what is lost with the rolls',
    ),
    row('measures.tape-per-case', 'Tape on a good case', tape.perCase, 'one strip a head', 'm/case'),
    row(
      'measures.tape-lost-per-case',
      'Tape lost, a good case',
      tape.lostPerCase,
      'threading, stubs, breaks',
      'm/case',
    ),
    row(
      'measures.tape-mass',
      'Mass of that tape, without cores',
      tape.mass,
      'length x width x areal mass',
      'kg',
    ),
    ...tape.heads.flatMap((head) => {
      const at = `equipment.${head.machine}.heads.${head.head}`
      const of = `${head.machine} ${head.head} head`
      return [
        row(`${at}.tape`, `Tape used a shift, ${of}`, head.used, 'strips and losses'),
        row(
          `${at}.tape-per-case`,
          `Tape a strip, ${of}`,
          head.strip,
          '(length + 2 legs) / (1 + stretch)',
          'm/case',
        ),
        row(`${at}.rolls`, `Rolls used a shift, ${of}`, head.rolls, 'tape used over the roll', 'rolls'),
        row(
          `${at}.changes`,
          `Roll changes a shift, ${of}`,
          head.changes,
          'strips over strips a roll',
          'count',
        ),
      ]
    }),
  ]
}

function costRows(scenario: Scenario, line: LineHand, tape: TapeUse | null): HandRow[] {
  const { money, crew, closure } = scenario
  const thousands = (line.throughput * line.working) / 1000
  if (thousands <= 0) return []
  const rows: HandRow[] = []
  const add = (key: string, label: string, value: number, how: string) =>
    rows.push({ measure: `measures.cost-per-1000-${key}`, label, value, unit: 'money', how })
  if (tape && tape.costPerThousand !== null)
    add('tape', 'Tape for 1000 good cases', tape.costPerThousand, 'rolls used x price of a roll')
  const people = Object.values(crew).reduce((total, each) => total + each.people, 0)
  if (money?.labour)
    add(
      'labour',
      'Labour for 1000 good cases',
      labourCost(people, money.labour.amount, line.span) / thousands,
      'people x paid hours x wage',
    )
  const watts = Object.values(money?.power ?? {}).reduce((total, each) => total + each, 0)
  if (money?.energy && money.power)
    add(
      'energy',
      'Energy for 1000 good cases',
      energyCost(watts, money.energy.amount, line.span) / thousands,
      'mean power x paid hours x price',
    )
  const maintenance = maintenancePerShift(pricedMoney(scenario))
  if (maintenance !== null)
    add(
      'maintenance',
      'Maintenance for 1000 good cases',
      maintenance / thousands,
      'share of what was bought over the shifts of a year',
    )
  const { chance = 0, cost, repair } = closure?.reopens ?? {}
  if (cost)
    add('failures', 'Closures of 1000 that open later', 1000 * chance * cost.amount, 'chance x cost of one')
  if (repair !== undefined && money?.labour)
    add(
      'failure-repair',
      'Closing those of 1000 again',
      1000 * chance * labourCost(1, money.labour.amount, repair),
      'chance x work x wage',
    )
  const capital = capitalPerShift(pricedMoney(scenario))
  if (capital !== null)
    add(
      'capital',
      'Capital recovery for 1000 good cases',
      capital / thousands,
      'annuity over the shifts of a year',
    )
  return rows
}
