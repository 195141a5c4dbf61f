/** Whatever is done to a journal, what was altered is left out, and what is kept is as it was written. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import fc from 'fast-check'
import { afterAll, describe, expect, it } from 'vitest'
import { Journal } from '../../src/cli/journal.js'
import { lineOf, readLine } from '../../src/cli/journal-lines.js'
import { Fault } from '../../src/scenario/fault.js'
import { expectTried } from '../tried.js'
import { attack, changes, spoiltText, spoiltTree } from './mutate.js'

const folder = mkdtempSync(path.join(tmpdir(), 'tapeshift-fuzz-'))
const file = path.join(folder, 'journal.ndjson')
afterAll(() => rmSync(folder, { recursive: true }))

const owner = { version: '1', node: '20', seed: '1', scenario: 'abc' }
const numbers = Float64Array.from([1, Number.NaN, 0.1])
const shift = { values: numbers, controls: numbers, outputs: numbers, held: numbers }

/** A journal of two designs, as it is written. */
const written = (() => {
  const journal = Journal.open(folder, owner, false, () => {})
  for (const design of ['', 'other']) for (const number of [1, 2, 3]) journal.keep(design, number, [shift])
  journal.close()
  return readFileSync(file, 'utf8')
})()

let tried = 0

/** Goes on with the journal that `text` is; null where it is refused. */
function resumed(text: string): Map<number, unknown>[] | null {
  tried++
  writeFileSync(file, text)
  try {
    const journal = Journal.open(folder, owner, true, () => {})
    const known = ['', 'other'].map((design) => new Map(journal.knownOf(design)))
    journal.close()
    return known
  } catch (error) {
    if (!(error instanceof Fault)) throw error
    return null
  }
}

describe('a journal', () => {
  it('as it was written keeps its shifts', () => {
    expect(resumed(written)!.map(({ size }) => size)).toEqual([3, 3])
    tried = 0
  })

  it('with spoilt letters keeps what was not altered, and nothing else', async () => {
    await attack(
      fc.property(changes, (all) => {
        for (const known of resumed(spoiltText(written, all)) ?? [])
          for (const [number, kept] of known) {
            expect([1, 2, 3]).toContain(number)
            expect(kept).toEqual(shift)
          }
      }),
      400,
    )
  })

  it('whose lines were made by somebody else is refused or read, and never ends the program', async () => {
    const lines = written
      .trimEnd()
      .split('\n')
      .map((line) => readLine(line)!)
    await attack(
      fc.property(changes, (all) => {
        const made = spoiltTree(lines, all)
        resumed(
          made
            .filter((line) => typeof line === 'object' && line !== null)
            .map((line) => lineOf(line))
            .join(''),
        )
      }),
      400,
    )
  })

  it('each is counted', () => expectTried('mutants of journals', tried))
})
