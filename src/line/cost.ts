/** What a shift costs, element by element. What the scenario does not price is left out and named. */
import { pricedMoney } from '../scenario/capital.js'
import type { Scenario } from '../scenario/schema.js'
import { capitalPerShift, energyCost, labourCost, maintenancePerShift } from '../trade/money.js'
import type { Counted } from './counted.js'
import type { Measure } from './measure.js'
import type { Taper } from './taper.js'

const hour = 3600

interface Element {
  key: string
  label: string
  /** Money of what is counted of the shift or campaign that has just ended; null where the scenario does not price it. */
  value: (() => number) | null
}

/** Elements of cost, and which of them the scenario does not price. */
export function costMeasures(
  scenario: Scenario,
  sealers: readonly Taper[],
  counted: Readonly<Counted>,
  out: () => number,
): { measures: Measure[]; leftOut: string[] } {
  const elements = costElements(scenario, sealers, counted, out)
  const priced = elements.filter((element) => element.value !== null)
  const leftOut = elements.filter((element) => element.value === null).map((element) => element.label)
  if (priced.length === 0) return { measures: [], leftOut }
  const thousands = () => out() / 1000
  const all = () => priced.reduce((sum, element) => sum + element.value!(), 0)
  const measure = (key: string, label: string, value: () => number): Measure => ({
    path: ['measures', key],
    label,
    unit: 'money',
    kind: 'ratio',
    value,
    over: thousands,
  })
  const measures = [
    measure('cost-per-1000', 'Cost of 1000 good cases', all),
    ...priced.map(({ key, label, value }) => measure(`cost-per-1000-${key}`, `of it ${label}`, value!)),
  ]
  const yearly = scenario.money?.shifts
  if (yearly !== undefined)
    measures.push({
      path: ['measures', 'cost-per-year'],
      label: 'Cost of a year, all that is priced',
      unit: 'money/yr',
      kind: 'total',
      value: () => all() * yearly,
    })
  return { measures, leftOut }
}

function costElements(
  scenario: Scenario,
  sealers: readonly Taper[],
  counted: Readonly<Counted>,
  out: () => number,
): Element[] {
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
  return [
    {
      key: 'tape',
      label: 'tape',
      value: tape.price
        ? () => (heads.reduce((sum, head) => sum + head.used, 0) / tape.roll) * tape.price!.amount
        : null,
    },
    {
      key: 'labour',
      label: 'labour',
      value: labour ? () => labourCost(people, labour.amount, paidTime()) : null,
    },
    {
      key: 'downtime',
      label: 'stops of the sealers',
      value: downtime ? () => (downtime.amount * standing()) / hour : null,
    },
    {
      key: 'energy',
      label: 'energy',
      value: energy && watts !== undefined ? () => energyCost(watts, energy.amount, paidTime()) : null,
    },
    {
      key: 'maintenance',
      label: 'maintenance',
      value: ofEachShift(maintenancePerShift(pricedMoney(scenario))),
    },
    { key: 'capital', label: 'capital recovery', value: ofEachShift(capitalPerShift(pricedMoney(scenario))) },
    {
      key: 'failures',
      label: 'closures that open later',
      value: reopens?.cost ? opened(reopens.cost.amount) : null,
    },
    {
      key: 'failure-repair',
      label: 'closing those again',
      value:
        reopens?.repair !== undefined && labour ? opened(labourCost(1, labour.amount, reopens.repair)) : null,
    },
  ]
}
