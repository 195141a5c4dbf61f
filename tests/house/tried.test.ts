/** The table "Tried, survived" of DEVELOPERS.md: each row is counted by the test that it names. */
import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { triedRows } from '../tried.js'

const rows = triedRows()

describe('what was tried and survived', () => {
  it('has a row for each kind of attack, once', () => {
    expect(rows.length).toBeGreaterThanOrEqual(12)
    expect(new Set(rows.map(({ attack }) => attack)).size).toBe(rows.length)
  })

  it.each(rows)('$attack: all survived, and counted by $test', ({ attack, tried, survived, test }) => {
    expect(survived).toBe(tried)
    expect(existsSync(test)).toBe(true)
    // the test holds the number against what it does
    expect(readFileSync(test, 'utf8')).toContain(`expectTried('${attack}'`)
  })
})
