/** The figures that hand foretells, one by one: in the words of the catalogue, where the hand figure is of nothing less. */

import type { CauseKey } from '../catalogue/causes.js'
import type { CostElement } from '../catalogue/costs.js'
import { costKey } from '../catalogue/costs.js'
import type { FigurePath } from '../catalogue/measures.js'
import { type HeadKey, ofHeads, type PieceKey, pieceRow } from '../catalogue/of-equipment.js'
import { type JamKey, ofJams } from '../catalogue/of-jams.js'
import { type MeasureKey, ofLine } from '../catalogue/of-line.js'
import { type CrewKey, ofCrew } from '../catalogue/of-people.js'
import type { Unit } from '../catalogue/row.js'
import type { CountedStop, HandStop } from '../kinds/by-hand.js'
import { byHandOf } from '../kinds/hand.js'
import { pricedMoney } from '../scenario/capital.js'
import type { Scenario } from '../scenario/schema.js'
import { capitalPerShift, energyCost, labourCost, maintenancePerShift } from '../trade/money.js'
import { waitForBusy } from './busy.js'
import type { LineHand } from './line.js'
import { firstWith } from './pace.js'
import type { CrewLoad } from './people.js'
import { stopsPerShift, workingShare } from './stop-counts.js'
import type { TapeUse } from './tape-use.js'

/** One figure that a run measures too. */
export interface HandRow {
  /** Its place in the result of a run. */
  measure: FigurePath
  label: string
  value: number
  /** SI. */
  unit: Unit
  /** How the figure comes about. */
  how: string
}

function handRow(measure: FigurePath, label: string, unit: Unit, value: number, how: string): HandRow {
  return { measure, label, value, unit, how }
}

const ofLineRow = (key: MeasureKey, value: number, how: string, label = ofLine[key].label): HandRow =>
  handRow(`measures.${key}`, label, ofLine[key].unit, value, how)

/** All that a run measures too. */
export const handRows = (
  scenario: Scenario,
  line: LineHand,
  tape: TapeUse | null,
  crews: readonly CrewLoad[],
): HandRow[] => [
  ...lineRows(scenario, line),
  ...pieceRows(scenario, line),
  ...(tape ? tapeRows(tape) : []),
  ...costRows(scenario, line, tape),
  ...crews.flatMap(crewRows),
]

function crewRows({ name, busy, other }: CrewLoad): HandRow[] {
  const row = (key: CrewKey, label: string, value: number, how: string) =>
    handRow(`crew.${name}.${key}`, label, 'share', value, how)
  const rows = [row('busy', `Busy walking and working, ${name}`, busy, 'stops x (walk + work)')]
  if (other > 0)
    rows.push(row('other-work', ofCrew['other-work'].label(name, ''), other, 'its time / time between'))
  return rows
}

function lineRows(scenario: Scenario, line: LineHand): HandRow[] {
  const how = line.admitted < 1 ? 'capacity of the bottleneck after its stops' : 'arrivals minus losses'
  return [
    ofLineRow('throughput', line.throughput, how),
    ofLineRow('output', line.throughput * line.working, how),
    ofLineRow('time-in-system', transit(scenario, line), 'travel and work, without waiting'),
  ]
}

/** How long stops of one kind wait for somebody whom other work keeps, on average over them, s; none where no other work does. */
function waitRow(scenario: Scenario, line: LineHand, piece: string, stops: readonly CountedStop[]): number[] {
  const waits = stops.flatMap(({ skill, count }) => {
    const crew = skill === null ? null : firstWith(scenario, skill)
    if (skill === null || crew === null || !scenario.crew[crew.name]!['other-work']) return []
    return [{ count, wait: crew.walk + waitForBusy(scenario, line, skill, piece) }]
  })
  const count = waits.reduce((sum, each) => sum + each.count, 0)
  return count === 0 ? [] : [waits.reduce((sum, each) => sum + each.count * each.wait, 0) / count]
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
    const { name } = piece
    const keys = scenario.line[name]!
    const row = (key: PieceKey, value: number, how: string): HandRow => {
      const { label, unit } = pieceRow(key)
      return handRow(`equipment.${name}.measures.${key}`, label(name, `on ${name}`), unit, value, how)
    }
    const own = byHandOf(keys).figure(keys, {
      ...piece,
      working: workingShare(line, piece, keys),
      span: line.span,
    })
    const rows: HandRow[] = []
    if (own?.key === 'working') {
      const label = `Share of the shift in which ${name} works`
      rows.push(handRow(`equipment.${name}.states.working`, label, 'share', own.value, own.how))
    } else if (own) rows.push(row(own.key, own.value, own.how))
    const counted = stopsPerShift(scenario, line, piece)
    const counts = new Map<HandStop, number>()
    for (const { key, count } of counted) counts.set(key, (counts.get(key) ?? 0) + count)
    const stops = [...counts].map(([key, count]) =>
      row(
        key,
        count,
        key === 'roll-changes' ? 'strips / strips per roll, each head' : 'cases or time x frequency',
      ),
    )
    // how long somebody is waited for is told where other work decides it
    const waits = [...counts.keys()].flatMap((key) =>
      waitRow(
        scenario,
        line,
        name,
        counted.filter((stop) => stop.key === key && stop.count > 0),
      ).map((wait) =>
        row(`${key as CauseKey}-wait`, wait, 'walk + chance of other work x its remaining time'),
      ),
    )
    return [...rows, ...stops, ...waits, ...counted.flatMap((stop) => jamRows(name, stop))]
  })
}

/** Of a kind of jam that has a name: how many, and how long. */
function jamRows(piece: string, { jam, count, time }: CountedStop): HandRow[] {
  if (jam === undefined) return []
  const row = (key: JamKey, value: number, how: string): HandRow => {
    const { label, unit } = ofJams[key]
    return handRow(`equipment.${piece}.jams.${jam}.${key}`, label(`${piece}, ${jam}`, ''), unit, value, how)
  }
  return [
    row('stops', count, 'cases x chance'),
    row('time', count * time, 'cases x chance x (walk + isolating + clearing)'),
  ]
}

const tapeRows = (tape: TapeUse): HandRow[] => [
  ofLineRow('tape', tape.used, 'strips + losses of each roll', 'Tape used a shift, all heads'),
  ofLineRow('tape-per-case', tape.perCase, 'one strip a head'),
  ofLineRow('tape-lost-per-case', tape.lostPerCase, 'threading, stubs, breaks', 'Tape lost, a good case'),
  ofLineRow('tape-mass', tape.mass, 'length x width x areal mass'),
  ...tape.heads.flatMap(({ machine, head, ...of }) => {
    const row = (key: HeadKey, value: number, how: string): HandRow => {
      const { label, unit } = ofHeads[key]
      const words = `${machine} ${head} head`
      return handRow(`equipment.${machine}.heads.${head}.${key}`, label(words, words), unit, value, how)
    }
    return [
      row('tape', of.used, 'strips + losses'),
      row('tape-per-case', of.strip, '(length + 2 legs) / (1 + stretch)'),
      row('rolls', of.rolls, 'tape used / roll length'),
      row('changes', of.changes, 'strips / strips per roll'),
    ]
  }),
]

function costRows(scenario: Scenario, line: LineHand, tape: TapeUse | null): HandRow[] {
  const { money, crew, closure } = scenario
  const thousands = (line.throughput * line.working) / 1000
  if (thousands <= 0) return []
  const rows: HandRow[] = []
  const add = (element: CostElement, label: string, value: number, how: string) =>
    rows.push(ofLineRow(costKey(element), value, how, label))
  /** What is paid by the shift, where it is priced. */
  const addShare = (element: CostElement, label: string, perShift: number | null, how: string) => {
    if (perShift !== null) add(element, `${label} for 1000 good cases`, perShift / thousands, how)
  }
  if (tape && tape.costPerThousand !== null)
    add('tape', 'Tape for 1000 good cases', tape.costPerThousand, 'rolls used x price of a roll')
  const people = Object.values(crew).reduce((total, each) => total + each.people, 0)
  const { labour, energy, power } = money ?? {}
  addShare(
    'labour',
    'Labour',
    labour ? labourCost(people, labour.amount, line.span) : null,
    'people x paid hours x wage',
  )
  const watts = Object.values(power ?? {}).reduce((total, each) => total + each, 0)
  addShare(
    'energy',
    'Energy',
    energy && power ? energyCost(watts, energy.amount, line.span) : null,
    'mean power x paid hours x price',
  )
  addShare(
    'maintenance',
    'Maintenance',
    maintenancePerShift(pricedMoney(scenario)),
    'share of the purchase price / shifts a year',
  )
  const { chance = 0, cost, repair } = closure?.reopens ?? {}
  if (cost)
    add('failures', 'Closures of 1000 that open later', 1000 * chance * cost.amount, 'chance x cost of one')
  if (repair !== undefined && labour)
    add(
      'failure-repair',
      'Closing those of 1000 cases again',
      1000 * chance * labourCost(1, labour.amount, repair),
      'chance x work x wage',
    )
  addShare('capital', 'Capital recovery', capitalPerShift(pricedMoney(scenario)), 'annuity / shifts a year')
  return rows
}
