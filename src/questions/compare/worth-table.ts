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

/** Where inputs were drawn more shifts need not show it. */
const openWords = (isDrawn: boolean) =>
  isDrawn ? 'whether it pays is not shown' : 'whether it pays these shifts do not show'

/** `Bought for 3 500 EUR more, it saves 900 ± 200 EUR a year ...`; empty where nothing is known in money. */
export function worthText({ worth }: DesignResult, { currency, drawn }: CompareResult): string {
  if (!worth?.yearlySaving || worth.yearlySaving.mean === null) return ''
  const { investment, yearlySaving, yearlyCases, years, interest, netPresentValue, payback } = worth
  if (yearlySaving.low === null) return 'What it saves a year is not told: too few shifts differ.'
  const isSaved = worth.yearlySaving.mean > 0
  const size = intervalText(isSaved ? yearlySaving : turned(yearlySaving), currency)
  const bought =
    investment === null || investment === 0
      ? ''
      : investment > 0
        ? `Bought for ${amountText(investment, currency)} more, it `
        : `Bought for ${amountText(-investment, currency)} less, it `
  const yearly = `${bought || 'It '}${isSaved ? 'saves' : 'costs'} ${size} a year${isSaved ? '' : ' more'} to run, at ${grouped(yearlyCases!, 0)} cases`
  const judged = verdict(netPresentValue)
  if (judged === null) return `${yearly}.`
  const over = `over ${years} years at ${percentText(interest!)} it is worth ${intervalText(netPresentValue!, currency)} now`
  const paid =
    judged === 'pays' && payback?.mean ? `, and has paid after ${yearsParts(payback).join(' ')}` : ''
  const open = openWords(drawn !== undefined)
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
  if (found.high <= 0) return 'Its tape pays without sparing any closure that opens later.'
  const needed = `For its tape to pay, ${intervalText(found, '')} of 1000 closures fewer must open later`
  if (found.spared === null) return `${needed}; how many it spares the scenario does not say.`
  const judged =
    found.spared >= found.high
      ? 'so it pays'
      : found.spared <= found.low
        ? 'so it does not pay'
        : 'which is too near to tell'
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
    title: 'What each design is worth against the base',
    note: `Savings leave capital recovery out and hold for as many cases as the base puts out a year: working time that a faster design spares is counted as spared cost, what it could put out beyond that is not.${over} The figures hold together with the differences.`,
    columns: [
      ...words('design'),
      ...figures('bought for more', 'saves a year', 'has paid after', 'net present value'),
      ...figures('closures to be spared for its tape to pay'),
    ],
    rows,
  }
}
