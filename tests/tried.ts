/** The table "Tried, survived" of DEVELOPERS.md: each attack, how often it is tried, and by which test, which says so itself. */
import { readFileSync } from 'node:fs'
import { expect } from 'vitest'

interface Row {
  attack: string
  tried: number
  survived: number
  test: string
}

/** Rows of the table, in their order. */
export const triedRows = (): Row[] =>
  [...readFileSync('DEVELOPERS.md', 'utf8').matchAll(/^\| ([^|]+) \| (\d+) \| (\d+) \| `([^`]+)` \|$/gm)].map(
    ([, attack, tried, survived, test]) => ({
      attack: attack!,
      tried: Number(tried),
      survived: Number(survived),
      test: test!,
    }),
  )

/** The table says of this attack how often it was tried just now; where more is asked of the fuzzers it is told instead. */
export function expectTried(attack: string, times: number): void {
  console.log(`tried, survived: ${attack}: ${times}`)
  if (process.env.FUZZ_RUNS !== undefined) return
  expect(triedRows().find((row) => row.attack === attack)?.tried, attack).toBe(times)
}
