/** The hand calculation: figures of the line without simulation, each with the measure of a run that it foretells. */

import { byHandOf } from '../kinds/hand.js'
import { pricedMoney } from '../scenario/capital.js'
import type { Scenario } from '../scenario/schema.js'
import { capitalPerShift, energyCost, labourCost, maintenancePerShift } from '../trade/money.js'
import { type BufferHand, buffersOf, type MachineBuffer, machineBuffers } from './buffers.js'
import { type Curve, curvesOf } from './curve.js'
import { type Expected, expectedOutput } from './expected.js'
import { type LineHand, lineByHand } from './line.js'
import { hasSealer } from './pace.js'
import { type BufferedPair, bufferedPairs } from './pairs.js'
import { type CrewLoad, crewLoads } from './people.js'
import { stopsPerShift, workingShare } from './stop-counts.js'
import { type TapeUse, tapeUse } from './tape-use.js'

/** Units of a row, SI, as results name them. */
export type RowUnit =
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
  const tape = hasSealer(scenario) ? tapeUse(scenario, line) : null
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
      ...crews.map(({ name, busy }) =>
        row(`crew.${name}.busy`, `Busy walking and working, ${name}`, busy, 'stops x (walk + work)', 'share'),
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

const row = (measure: string, label: string, value: number, how: string, unit: RowUnit): HandRow => ({
  measure,
  label,
  value,
  unit,
  how,
})

function lineRows(scenario: Scenario, line: LineHand): HandRow[] {
  const { throughput, working, admitted } = line
  const stay = transit(scenario, line)
  const how = admitted < 1 ? 'what the bottleneck leaves after its stops' : 'what arrives, less what is lost'
  const unhindered = 'rides and work, without any waiting'
  return [
    row('measures.throughput', 'Good cases out over working time', throughput, how, 'cases/s'),
    row('measures.output', 'Good cases out a shift', throughput * working, how, 'cases'),
    row('measures.time-in-system', 'Time from arrival to exit, mean', stay, unhindered, 's'),
  ]
}

/** Time on the way through the pieces, a case, s. */
function transit(scenario: Scenario, line: LineHand): number {
  if (line.perShift === 0) return 0
  const visits = (flow: number) => flow / line.arriving
  return line.pieces.reduce((total, { name, flow }) => {
    const keys = scenario.line[name]!
    return total + visits(flow) * byHandOf(keys).stay(keys)
  }, 0)
}

function pieceRows(scenario: Scenario, line: LineHand): HandRow[] {
  return line.pieces.flatMap((piece) => {
    const keys = scenario.line[piece.name]!
    const at = `equipment.${piece.name}`
    const own = byHandOf(keys).row(keys, { ...piece, working: workingShare(line, piece), span: line.span })
    const stops = stopsPerShift(scenario, line, piece).map(({ key, words, count }) => {
      const label = `${words.charAt(0).toUpperCase()}${words.slice(1)} a shift, ${piece.name}`
      const how =
        key === 'roll-changes' ? 'strips over strips a roll, each head' : 'cases or time x frequency'
      return row(`${at}.measures.${key}`, label, count, how, 'count')
    })
    return own ? [{ ...own, measure: `${at}.${own.measure}` }, ...stops] : stops
  })
}

function tapeRows(tape: TapeUse): HandRow[] {
  const { used, perCase, lostPerCase, mass } = tape
  const use = 'strips, and what is lost with the rolls'
  return [
    row('measures.tape', 'Tape used a shift, all heads', used, use, 'm'),
    row('measures.tape-per-case', 'Tape on a good case', perCase, 'one strip a head', 'm/case'),
    row(
      'measures.tape-lost-per-case',
      'Tape lost, a good case',
      lostPerCase,
      'threading, stubs, breaks',
      'm/case',
    ),
    row('measures.tape-mass', 'Mass of that tape, without cores', mass, 'length x width x areal mass', 'kg'),
    ...tape.heads.flatMap((head) => {
      const at = `equipment.${head.machine}.heads.${head.head}`
      const of = `${head.machine} ${head.head} head`
      const strip = '(length + 2 legs) / (1 + stretch)'
      return [
        row(`${at}.tape`, `Tape used a shift, ${of}`, head.used, 'strips and losses', 'm'),
        row(`${at}.tape-per-case`, `Tape a strip, ${of}`, head.strip, strip, 'm/case'),
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
    rows.push(row(`measures.cost-per-1000-${key}`, label, value, how, 'money'))
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
