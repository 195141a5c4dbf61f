/** What a shift costs, element by element. What the scenario does not price is left out and named. */
import { type CostElement, costElementKeys, costElements, costKey } from '../catalogue/costs.js'
import { pricedMoney } from '../scenario/capital.js'
import type { Scenario } from '../scenario/schema.js'
import { capitalPerShift, energyCost, labourCost, maintenancePerShift } from '../trade/money.js'
import type { Counted } from './counted.js'
import { lineMeasure, type Measure } from './measure.js'
import type { Taper } from './taper.js'

const hour = 3600

/** Money of what is counted of the shift or campaign that has just ended, by element; null where the scenario does not price it. */
type Costs = Record<CostElement, (() => number) | null>

/** Elements of cost, and which of them the scenario does not price. */
export function costMeasures(
  scenario: Scenario,
  sealers: readonly Taper[],
  counted: Readonly<Counted>,
  out: () => number,
): { measures: Measure[]; leftOut: string[] } {
  const costs = costsOf(scenario, sealers, counted, out)
  const priced = costElementKeys.flatMap((key) => {
    const value = costs[key]
    return value === null ? [] : [{ key, value }]
  })
  const leftOut = costElementKeys.filter((key) => costs[key] === null).map((key) => costElements[key].words)
  if (priced.length === 0) return { measures: [], leftOut }
  const over = () => out() / 1000
  const all = () => priced.reduce((sum, { value }) => sum + value(), 0)
  const yearly = scenario.money?.shifts
  const measures = [
    lineMeasure('cost-per-1000', all, { over }),
    ...priced.map(({ key, value }) => lineMeasure(costKey(key), value, { over })),
    ...(yearly === undefined ? [] : [lineMeasure('cost-per-year', () => all() * yearly)]),
  ]
  return { measures, leftOut }
}

function costsOf(
  scenario: Scenario,
  sealers: readonly Taper[],
  counted: Readonly<Counted>,
  out: () => number,
): Costs {
  const { money, tape, crew, shift, closure } = scenario
  const people = Object.values(crew).reduce((sum, group) => sum + group.people, 0)
  const paidTime = () => (shift.length + shift['run-out']) * counted.shifts
  const heads = sealers.flatMap((sealer) => sealer.heads)
  const { labour, downtime, energy, power } = money ?? {}
  const watts = power && Object.values(power).reduce((sum, each) => sum + each, 0)
  const { reopens } = closure ?? {}
  const opened = (each: number) => () => reopens!.chance * out() * each
  const ofEachShift = (amount: number | null) => (amount === null ? null : () => amount * counted.shifts)
  const standing = () =>
    sealers.reduce((sum, sealer) => sum + sealer.unit.stopTimes.reduce((total, time) => total + time, 0), 0)
  return {
    tape: tape.price
      ? () => (heads.reduce((sum, head) => sum + head.used, 0) / tape.roll) * tape.price!.amount
      : null,
    labour: labour ? () => labourCost(people, labour.amount, paidTime()) : null,
    downtime: downtime ? () => (downtime.amount * standing()) / hour : null,
    energy: energy && watts !== undefined ? () => energyCost(watts, energy.amount, paidTime()) : null,
    maintenance: ofEachShift(maintenancePerShift(pricedMoney(scenario))),
    capital: ofEachShift(capitalPerShift(pricedMoney(scenario))),
    failures: reopens?.cost ? opened(reopens.cost.amount) : null,
    'failure-repair':
      reopens?.repair !== undefined && labour ? opened(labourCost(1, labour.amount, reopens.repair)) : null,
  }
}
