/** Whatever is done to a record and its logs, all of it is accounted for: refused with findings, or read with times that are numbers. */
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { parse, stringify } from 'yaml'
import { isUsable, readRecord } from '../../src/record/read.js'
import { ScenarioError } from '../../src/scenario/problems.js'
import { logsOf } from '../record/texts.js'
import { expectTried } from '../tried.js'
import { attack, breathe, changes, spoiltTable, spoiltText, spoiltTree } from './mutate.js'

const folder = 'scenarios/lindmoor-record'
const text = readFileSync(`${folder}/record.yaml`, 'utf8')
const tree = parse(text) as { record: Record<string, unknown> }
/** The first rows of each log, by its name. */
const logs = Object.fromEntries(
  ['shifts.csv', 'stops.csv', 'cases.csv'].map((name) => [
    name,
    `${readFileSync(`${folder}/${name}`, 'latin1').split(/\r?\n/).slice(0, 25).join('\n')}\n`,
  ]),
)
const names = Object.keys(logs)
const delimiterOf = (log: string) => (log.split('\n')[0]!.includes(';') ? ';' : ',')

// of every row longer or shorter than the header the parser makes an error, and to write the stack of each takes most of the time
const { stackTraceLimit } = Error
beforeAll(() => {
  Error.stackTraceLimit = 0
})
afterAll(() => {
  Error.stackTraceLimit = stackTraceLimit
})

let tried = 0

function read(record: string, of: Readonly<Record<string, string>>): void {
  tried++
  let clean: ReturnType<typeof readRecord>
  try {
    clean = readRecord(record, { name: 'record', readLog: logsOf(of) })
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error
    expect(error.problems.length).toBeGreaterThan(0)
    return
  }
  for (const { words, fix } of clean.account) expect(words + fix).not.toMatch(/undefined|\bNaN\b|\[object/)
  if (!isUsable(clean)) return
  for (const { begins, ends } of [...clean.shifts, ...clean.stops])
    expect([begins, ends].every(Number.isFinite) && ends >= begins).toBe(true)
}

describe('a record', () => {
  it('as it is can be read', () => {
    expect(isUsable(readRecord(text, { name: 'record', readLog: logsOf(logs) }))).toBe(true)
  })

  it('with spoilt keys', async () => {
    await attack(
      fc.asyncProperty(changes, async (all) => {
        read(stringify(spoiltTree(tree, all)), logs)
        await breathe()
      }),
      40,
    )
  })

  it('with spoilt tables', async () => {
    await attack(
      fc.asyncProperty(fc.constantFrom(...names), changes, async (name, all) => {
        read(text, { ...logs, [name]: spoiltTable(logs[name]!, delimiterOf(logs[name]!), all) })
        await breathe()
      }),
      60,
    )
  })

  it('with spoilt letters', async () => {
    await attack(
      fc.asyncProperty(fc.constantFrom(...names), changes, async (name, all) => {
        read(text, { ...logs, [name]: spoiltText(logs[name]!, all) })
        await breathe()
      }),
      60,
    )
  })

  it('each is counted', () => expectTried('mutants of records', tried))
})
