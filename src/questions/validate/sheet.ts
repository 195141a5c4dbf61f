/** Reports of shifts for those who know the line, some of the plant and some of the model: can they tell which is which? */
import { Stream } from '../../engine/stream.js'
import { csvText } from '../../report/csv.js'
import { binomialAtMost } from '../../statistics/quantile.js'
import type { Cause, Stopped } from './causes.js'

/** A report that is to be made: of which day, and of which run of it; null: of the plant. */
export interface Drawn {
  day: number
  run: number | null
}

/** A report, and what it is of. */
export interface SheetRow {
  day: string
  run: number | null
  good: number
  stops: readonly Stopped[]
}

/** Each of another day, by lot; a coin says whether it is of the plant: so nobody can count what must be left. */
export function drawnSheets(count: number, days: number, runs: number, seed: string): Drawn[] {
  const lot = new Stream('validate', 'sheets')
  lot.begin(seed, 1)
  return Array.from({ length: days }, (_, day) => ({ day, place: lot.next() }))
    .sort((a, b) => a.place - b.place)
    .slice(0, count)
    .map(({ day }) => ({ day, run: lot.next() < 0.5 ? null : Math.floor(lot.next() * runs) }))
}

/**
 * Fewest that must be told right to show that the two can be told apart, at 5 %, and the chance of as many by guessing. Schruben,
 * Operations Research 28 (1980) 1090-1101 (from memory).
 */
export function sheetTest(count: number): { count: number; right: number; p: number } {
  let right = count
  while (right > 0 && chanceOf(right - 1, count) <= 0.05) right--
  return { count, right, p: chanceOf(right, count) }
}

const chanceOf = (right: number, count: number) => binomialAtMost(count - right, count, 0.5)

/** The reports without a sign of what they are, and the key to them. Stops without a named cause are left out: a log need not hold them all. */
export function sheetCsv(rows: readonly SheetRow[], causes: readonly Cause[]): [sheet: string, key: string] {
  const named = causes.flatMap(({ path }, place) => (path === null ? [] : [place]))
  const minutes = (seconds: number) => Math.round(seconds / 6) / 10
  const head = named.flatMap((place) => {
    const { words } = causes[place]!
    return [`${words}: stops`, `${words}: minutes`]
  })
  const sheet = rows.map(({ good, stops }, index) => [
    index + 1,
    good,
    ...named.flatMap((place) => [stops[place]!.stops, minutes(stops[place]!.seconds)]),
    '',
  ])
  const key = rows.map(({ day, run }, index) => [
    index + 1,
    run === null ? 'plant' : 'model',
    day,
    run === null ? '' : run + 1,
  ])
  return [
    csvText([['report', 'good cases', ...head, 'plant or model?'], ...sheet]),
    csvText([['report', 'is of', 'day', 'run'], ...key]),
  ]
}
