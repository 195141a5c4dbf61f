/** Small records for tests of fits: shifts from 6 to 14 o'clock on the days of January, stops by the second, and what a fit says of them. */
import { expect } from 'vitest'
import { parse } from 'yaml'
import type { FitOptions } from '../../src/questions/fit/asked.js'
import type { FittedInput } from '../../src/questions/fit/document.js'
import { type FitAnswer, fitRecord } from '../../src/questions/fit/study.js'
import type { Known } from '../../src/scenario/known.js'
import { loadScenario } from '../../src/scenario/load.js'
import { recordOf, type Written } from '../record/texts.js'

/** A stop: its day of January, when it began, s since midnight, how long it was, s, and what it was. */
export type Stop = readonly [day: number, at: number, lasts: number, reason?: string, piece?: string]

const two = (number: number) => `${Math.floor(number)}`.padStart(2, '0')
const clock = (day: number, at: number) =>
  `2026-01-${two(day)} ${two(at / 3600)}:${two((at / 60) % 60)}:${two(at % 60)}`

/** Shifts on the first `days` of January, each of 4000 good cases. */
export const shiftRows = (days: number): string =>
  `Beginn;Ende;Gut\n${Array.from({ length: days }, (_, n) => `${clock(n + 1, 21_600)};${clock(n + 1, 50_400)};4000\n`).join('')}`

export const stopRows = (stops: readonly Stop[]): string =>
  `Von;Bis;Anlage;Grund\n${stops.map(([day, at, lasts, reason = 'Stau', piece = 'Kleber']) => `${clock(day, at)};${clock(day, at + lasts)};${piece};${reason}\n`).join('')}`

/** Times are exact, and every stop is logged, where `keys` do not say otherwise. */
export const written = (days: number, stops: readonly Stop[], keys: Written['keys'] = {}): Written => ({
  shifts: shiftRows(days),
  stops: stopRows(stops),
  keys: { times: 'iso', 'rounded-to': '0 s', ...keys },
})

export const fitOf = (record: Written, options: FitOptions = {}): FitAnswer =>
  fitRecord({ record: recordOf(record), name: 'plant.yaml', sha256: '0', files: [] }, options)

export function inputOf({ document }: FitAnswer, path: string): FittedInput {
  const found = document.inputs.find((each) => each.path === path)
  expect(found, `${path} among ${document.inputs.map((each) => each.path)}`).toBeDefined()
  return found!
}

export const codesOf = ({ remarks }: FittedInput): string[] => remarks.map(({ code }) => code)
export const wordsOf = ({ remarks }: FittedInput, code: string): string =>
  remarks.find((each) => each.code === code)?.text ?? ''

/** A line with a place for all that records say. */
export const line = `title: line 2
cases: {box: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {packing: {time-between: 6 s}}
line:
  sealer:
    type: sealer
    jams: {chance: 1 per 1000 cases, clear: 60 s}   # a guess
    breakdowns: {after: 40 h, repair: 10 min}
    tape-breaks: {chance: 0.1 per 1000, fix: 60 s}
shift: {length: 8 h}
`

/** What a scenario takes the value of an input for: by the place at which it stands there. */
export function evidenceOf({ observed }: FitAnswer, { path, value }: FittedInput): [at: string, Known][] {
  const { evidence } = loadScenario(line, {
    overrides: [{ path, value: parse(value!) as unknown, source: 'the fit' }],
    readColumn: (file) => observed.get(file)!.trim().split('\n').slice(1),
  })
  return evidence.map(({ at, known }) => [at.join('.'), known])
}
