/** What a design is worth in money against the base: in a sentence and in a table. */

import { type Interval, turned } from '../../answers/difference-figure.js'
import { figures, words } from '../../report/cell.js'
import { figureParts, grouped, type Parts, percentText } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import type { CompareResult, DesignResult } from './document.js'

/** An interval of money or years as a figure is printed. */
const intervalParts = ({ mean, low, high }: Interval, unit: string): Parts =>
  figureParts({ mean, low, high, unit }, 'metric')
const intervalText = (of: Interval, unit: string): string => intervalParts(of, unit).join(' ')

const amountText = (amount: number, currency: string) => `${grouped(amount, 0)} ${currency}`

/** Whether it pays over its life, judged by the whole interval. */
function verdict(value: Interval | null): 'pays' | 'does not pay' | 'not shown' | null {
  if (value === null || value.low === null || value.high === null) return null
  return value.low > 0 ? 'pays' : value.high < 0 ? 'does not pay' : 'not shown'
}

/** `Bought for 3 500 EUR more, it saves 900 ± 200 EUR a year ...`; empty where nothing is known in money. */
export function worthText({ worth }: DesignResult, { currency, drawn }: CompareResult): string {
  if (!worth?.yearlySaving || worth.yearlySaving.mean === null) return ''
  const { investment, yearlySaving, yearlyCases, years, interest, netPresentValue, payback } = worth
  if (yearlySaving.low === null) return 'The saving a year is not known: too few shifts differ.'
  const isSaved = worth.yearlySaving.mean > 0
  const size = intervalText(isSaved ? yearlySaving : turned(yearlySaving), currency)
  const bought = investment
    ? `It costs ${amountText(Math.abs(investment), currency)} ${investment > 0 ? 'more' : 'less'} to buy and `
    : ''
  const yearly = `${bought || 'It '}${isSaved ? 'saves' : 'costs'} ${size} a year${isSaved ? '' : ' more'} to run, at ${grouped(yearlyCases!, 0)} cases`
  const judged = verdict(netPresentValue)
  if (judged === null) return `${yearly}.`
  const over = `over ${years} years at ${percentText(interest!)} its net present value is ${intervalText(netPresentValue!, currency)}`
  const paid =
    judged === 'pays' && payback?.mean ? `, and its payback time is ${yearsParts(payback).join(' ')}` : ''
  // where inputs were drawn more shifts need not show it
  const open = drawn ? 'whether it pays is not shown' : 'these shifts do not show whether it pays'
  const words = judged === 'not shown' ? `: ${open}` : `: it ${judged}`
  return `${yearly}; ${over}${words}${paid}.`
}

/** `1.9 (1.6 to 2.4) years`; an end that is never reached is said. */
const yearsParts = (of: Interval): Parts =>
  of.high === null ? [`${Number(of.mean!.toPrecision(2))} years or never`] : intervalParts(of, 'years')

/** By how much failures must fall for the tape to pay; empty where that is not asked. */
export function breakEvenText({ worth }: DesignResult): string {
  const found = worth?.breakEven
  if (!found || found.mean === null || found.low === null || found.high === null) return ''
  if (found.high <= 0) return 'Its tape pays even if it prevents no closure from opening.'
  const needed = `Its tape pays if ${intervalText(found, '')} fewer of 1000 closures open later`
  if (found.spared === null) return `${needed}; the scenario does not say how many it prevents.`
  const judged =
    found.spared >= found.high
      ? 'so it pays'
      : found.spared <= found.low
        ? 'so it does not pay'
        : 'which is too close to tell'
  return `${needed}; the scenario says ${Number(found.spared.toPrecision(3))} fewer, ${judged}.`
}

/** A row a variant. */
export function worthTable({ variants, currency }: CompareResult): Table {
  const rows = Object.entries(variants).flatMap(([name, { worth }]) => {
    if (!worth) return []
    const { investment, yearlySaving, netPresentValue, payback, breakEven } = worth
    return [
      [
        name,
        investment === null ? null : amountText(investment, currency),
        yearlySaving && intervalParts(yearlySaving, currency),
        yearlySaving?.low === null ? null : payback?.mean ? yearsParts(payback) : payback && 'never',
        netPresentValue && intervalParts(netPresentValue, currency),
        breakEven && intervalParts(breakEven, 'of 1000'),
      ],
    ]
  })
  const [first] = Object.values(variants).flatMap(({ worth }) => worth ?? [])
  const over =
    first?.years && first.interest !== null
      ? ` Net present value over ${first.years} years at ${percentText(first.interest)}.`
      : ''
  return {
    title: 'Money: each design against the base',
    note: `Savings are without capital recovery, for the number of cases that the base makes a year. Working time saved by a faster design counts as saved cost; additional output does not count.${over} The confidence covers these figures and the differences together.`,
    columns: [
      ...words('design'),
      ...figures('extra purchase price', 'saves a year', 'payback time', 'net present value'),
      ...figures('closures to be prevented for its tape to pay'),
    ],
    rows,
  }
}
