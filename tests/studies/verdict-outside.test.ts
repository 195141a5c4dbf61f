/**
 * Whether `validate` shows a model to be wrong that has half of the jams, where jams decide the output: line 4 of the demo record with poor board, that jams
 * at one case in a hundred. Records of 20 days, margin 3 %, as for the demo line in `verdicts.test.ts`, which makes up for most of its few jams.
 * Of 60 records each: half the jams outside in 60, named as what explains it in 60; the truth within in 32, not shown in 28.
 */
import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { loadScenario, type ValidateResult } from '../../src/index.js'
import { datedShifts } from '../record/make-record.js'
import { daysOfEach, poolOf, recordOf } from './held-against.js'

const truth = readFileSync(new URL('../record/truth.yaml', import.meta.url), 'utf8')
const withJams = (chance: string) => truth.replace('chance: 2 per 1000 cases', `chance: ${chance}`)
const poorBoard = withJams('10 per 1000 cases')
const half = withJams('5 per 1000 cases')

const plants = 20
const recordsOfEach = 3

it('shows half the jams to lie outside in at least 80 % of the records, the truth in no more than one of twenty', async () => {
  expect(new Set([truth, poorBoard, half]).size).toBe(3)
  const { scenario: plant } = loadScenario(poorBoard)
  const [isTrue, isHalf] = [await poolOf(poorBoard), await poolOf(half)]
  const found: Record<'truth' | 'half', ValidateResult[]> = { truth: [], half: [] }
  for (let number = 1; number <= plants; number++) {
    const seed = `poor board ${number}`
    // its scanner was lent for a month: without it all days are simulated alike
    const shifts = datedShifts(seed, plant).map((shift) => ({ ...shift, cases: [] }))
    for (let from = 0; from < recordsOfEach * daysOfEach; from += daysOfEach) {
      const read = recordOf(shifts.slice(from, from + daysOfEach), seed)
      found.truth.push(await isTrue(read))
      found.half.push(await isHalf(read))
    }
  }
  const count = (of: keyof typeof found, verdict: string) =>
    found[of].filter(({ good }) => good.verdict === verdict).length
  const records = plants * recordsOfEach
  expect(found.half).toHaveLength(records)
  expect(count('truth', 'outside')).toBeLessThanOrEqual(0.05 * records)
  expect(count('half', 'outside')).toBeGreaterThanOrEqual(0.8 * records)
  expect(count('half', 'within')).toBe(0)
}, 5_400_000)
