/** Whatever is done to a CSV file that a scenario draws on, it is refused with findings, or read as numbers that are none but decimal. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import fc from 'fast-check'
import { afterAll, describe, expect, it } from 'vitest'
import { readRowsOf } from '../../src/cli/rows.js'
import { ScenarioError } from '../../src/scenario/problems.js'
import { readScenario } from '../../src/scenario/read.js'
import { smallLine } from '../cli/in-process.js'
import { expectTried } from '../tried.js'
import { attack, breathe, changes, spoiltTable, spoiltText } from './mutate.js'

const folder = mkdtempSync(path.join(tmpdir(), 'tapeshift-fuzz-'))
afterAll(() => rmSync(folder, { recursive: true }))

const arrivals = smallLine.replace(
  'time-between: {exponential: {mean: 6 s}}',
  'log: {file: a.csv, time: at, case: kind, unit: s}',
)
const cases = smallLine.replace(
  /^cases: .*$/m,
  'cases: {file: a.csv, columns: {name: kind, length: l, width: w, height: h, share: n}, unit: mm}',
)
const arrived = `at,kind\n${Array.from({ length: 12 }, (_, row) => `${row * 7.5},a`).join('\n')}\n`
const listed = `kind,l,w,h,n\n${Array.from({ length: 6 }, (_, row) => `c${row},${400 + row},300,250,${row + 1}`).join('\n')}\n`

function read(scenario: string, table: string) {
  const file = path.join(folder, 'a.csv')
  writeFileSync(file, table)
  try {
    return readScenario(scenario, {}, { readRows: (name, taker) => readRowsOf(file, name, taker, () => {}) })
      .scenario
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error
    for (const { rule, code } of error.problems) {
      // a size that the file may have, and the line cannot take, is a conflict of the two
      expect(['file', 'conflict'], rule).toContain(code)
      expect(rule).not.toMatch(/undefined|\[object/)
    }
    return null
  }
}

let tried = 0

function readArrivals(table: string): void {
  const log = read(arrivals, table)?.arrivals.p?.log
  if (!log) return
  expect(
    log.times.every((time, row) => time >= 0 && time < Infinity && time >= (log.times[row - 1] ?? 0)),
  ).toBe(true)
}

function readCases(table: string): void {
  const kinds = Object.values(read(cases, table)?.cases ?? {})
  expect(
    kinds.every(({ length, width, height, share }) => [length, width, height, share].every(Number.isFinite)),
  ).toBe(true)
}

describe('a CSV file', () => {
  it('as it is can be read', () => {
    expect(read(arrivals, arrived)!.arrivals.p!.log!.times).toHaveLength(12)
    expect(Object.keys(read(cases, listed)!.cases)).toHaveLength(6)
  })

  it('with spoilt cells', async () => {
    await attack(
      fc.asyncProperty(changes, async (all) => {
        tried += 2
        readArrivals(spoiltTable(arrived, ',', all))
        readCases(spoiltTable(listed, ',', all))
        await breathe()
      }),
      150,
    )
  })

  it('with spoilt letters', async () => {
    await attack(
      fc.asyncProperty(changes, async (all) => {
        tried += 2
        readArrivals(spoiltText(arrived, all))
        readCases(spoiltText(listed, all))
        await breathe()
      }),
      100,
    )
  })

  it('each is counted', () => expectTried('mutants of CSV files', tried))
})
