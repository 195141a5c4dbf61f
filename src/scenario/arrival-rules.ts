/** Rules between the keys of a source, and between them and the rest of the scenario. */
import { ways } from './arrivals.js'
import { type Report, reportUnknown } from './finding.js'
import { meanOf } from './law.js'
import type { Scenario } from './schema.js'
import type { Path } from './walk.js'

/** More cases than this in one shift and a study would not end in useful time. */
const mostCasesPerShift = 20_000_000

type Source = Scenario['arrivals'][string]

/** Reports every breach in the source `name`. */
export function checkSource(scenario: Scenario, name: string, source: Source, report: Report): void {
  const path = ['arrivals', name]
  const { batch, rate } = source
  if (source['time-between'])
    checkTimeBetween(scenario, [...path, 'time-between'], source['time-between'], batch, report)
  if (rate !== undefined && rate * scenario.shift.length > mostCasesPerShift)
    tooMany([...path, 'rate'], 'use a lower rate or a shorter shift', report)
  if (source['by-hour']) checkHours(scenario, [...path, 'by-hour', 'cases'], source['by-hour'].cases, report)
  if (source.orders) checkOrders(scenario, [...path, 'orders'], source.orders, report)
  if (source.log) checkLog(scenario, [...path, 'log'], source.log, report)
  const way = ways.find((each) => source[each] !== undefined)
  if (batch > 1 && (way === 'orders' || way === 'log'))
    report(
      [...path, 'batch'],
      'conflict',
      `\`${way}\` brings cases one by one`,
      way === 'log' ? 'remove `batch`: cases of one batch have the same time in the log' : 'take `batch` out',
    )
}

function tooMany(path: Path, fix: string, report: Report): void {
  report(path, 'out-of-range', `more than ${mostCasesPerShift} cases in a shift`, fix)
}

function checkTimeBetween(
  scenario: Scenario,
  path: Path,
  between: NonNullable<Source['time-between']>,
  batch: number,
  report: Report,
): void {
  const mean = meanOf(between)
  if (mean <= 0)
    report(path, 'out-of-range', 'the mean time between arrivals must be above 0', 'such as `4 s`')
  else if ((scenario.shift.length / mean) * batch > mostCasesPerShift)
    tooMany(path, 'use a longer time between arrivals or a shorter shift', report)
}

function checkHours(scenario: Scenario, path: Path, rates: readonly number[], report: Report): void {
  const hours = rates.slice(0, Math.ceil(scenario.shift.length / 3600))
  if (hours.every((rate) => rate === 0))
    report(
      path,
      'conflict',
      'no case arrives: the rate is 0 in every hour of the shift',
      'give at least one hour of the shift a rate above 0',
    )
  for (const [index, rate] of hours.entries())
    if (rate * scenario.shift.length > mostCasesPerShift)
      tooMany([...path, index], 'use a lower rate or a shorter shift', report)
}

function checkOrders(
  scenario: Scenario,
  path: Path,
  orders: NonNullable<Source['orders']>,
  report: Report,
): void {
  const kinds = Object.keys(scenario.cases)
  for (const [index, order] of orders.entries()) {
    if (!kinds.includes(order.case))
      reportUnknown(report, [...path, index, 'case'], order.case, kinds, 'is not the name of a case')
    checkTimeBetween(scenario, [...path, index, 'time-between'], order['time-between'], 1, report)
  }
}

function checkLog(scenario: Scenario, path: Path, log: NonNullable<Source['log']>, report: Report): void {
  const first = log.times[0]
  if (first !== undefined && first >= scenario.shift.length)
    report(
      [...path, 'time'],
      'conflict',
      `the first case arrives ${first} s after the start, when the shift is over: times count from the start of the shift`,
      'subtract the start of the shift from each time, or correct `unit`',
    )
}
