/** What a shift costs, element by element. What the scenario does not price is left out and named. */
import type { Scenario } from '../scenario/schema.js'
import { capitalPerShift, labourCost } from '../trade/money.js'
import type { Counted } from './counted.js'
import type { Measure } from './measure.js'
import type { Sealer } from './sealer.js'

const hour = 3600

interface Element {
  key: string
  label: string
  /** Money of the shift that has just ended; null where the scenario does not price it. */
  value: (() => number) | null
}

/** Elements of cost, and which of them the scenario does not price. */
export function costMeasures(
  scenario: Scenario,
  sealers: readonly Sealer[],
  counted: Readonly<Counted>,
  out: () => number,
): { measures: Measure[]; leftOut: string[] } {
  const elements = costElements(scenario, sealers, counted)
  const priced = elements.filter((element) => element.value !== null)
  const leftOut = elements.filter((element) => element.value === null).map((element) => element.label)
  if (priced.length === 0) return { measures: [], leftOut }
  const thousands = () => out() / 1000
  const measure = (key: string, label: string, value: () => number): Measure => ({
    path: ['measures', key],
    label,
    unit: 'money',
    kind: 'ratio',
    value,
    over: thousands,
  })
  return {
    measures: [
      measure('cost-per-1000', 'Cost of 1000 good cases', () =>
        priced.reduce((sum, element) => sum + element.value!(), 0),
      ),
      ...priced.map((element) =>
        measure(`cost-per-1000-${element.key}`, `of it ${element.label}`, element.value!),
      ),
    ],
    leftOut,
  }
}

function costElements(scenario: Scenario, sealers: readonly Sealer[], counted: Readonly<Counted>): Element[] {
  const { money, tape, crew, shift } = scenario
  const people = Object.values(crew).reduce((sum, group) => sum + group.people, 0)
  const paidTime = () => (shift.length + shift['run-out']) * counted.shifts
  const heads = sealers.flatMap((sealer) => sealer.heads)
  const { price } = tape
  const { labour, downtime } = money ?? {}
  const perShift = capitalPerShift(money ?? {})
  const standing = () =>
    sealers.reduce((sum, sealer) => sum + sealer.unit.stopTimes.reduce((total, time) => total + time, 0), 0)
  return [
    {
      key: 'tape',
      label: 'tape',
      value: price
        ? () => (heads.reduce((sum, head) => sum + head.used, 0) / tape.roll) * price.amount
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
      key: 'capital',
      label: 'capital recovery',
      value: perShift === null ? null : () => perShift * counted.shifts,
    },
  ]
}
