/** The record of the demo held against the line that truly made it, against what a fit of its other days says, and against a line with half the jams. */
import { copyFileSync, cpSync, mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'
import { call } from '../cli/in-process.js'
import { demoFolder } from '../demo.js'

const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-validate-'))
cpSync(`${demoFolder}lindmoor-record`, cwd, { recursive: true })
copyFileSync(fileURLToPath(new URL('../record/truth.yaml', import.meta.url)), path.join(cwd, 'truth.yaml'))

/** Runs are 39: what decides is how the days differ. The seed is another than that of the record, whose shifts would be among the runs. */
async function validated(scenario: string, ...more: string[]) {
  const flags = ['--runs', '39', '--set', 'study.seed=held against', '--no-files', '--json', '--workers', '1']
  const { code, out } = await call(['validate', scenario, 'record.yaml', ...flags, ...more], { cwd })
  return { code, ...JSON.parse(out) }
}

it('the truth is shown within 3 % on days that a fit would keep back, and no cause differs', async () => {
  const { code, good, ranks, days, causes } = await validated(
    'truth.yaml',
    '--margin',
    '3 %',
    '--hold-out',
    '30 %',
  )
  expect([code, good.verdict, days.length]).toEqual([0, 'within', 19])
  // fewer than 15 of 19 in 2 of 1000 records
  expect(ranks.inside).toBeGreaterThanOrEqual(15)
  expect(
    causes.filter(({ stops, seconds }: (typeof causes)[number]) => stops.isShown || seconds.isShown),
  ).toEqual([])
})

it('so is what the fit of the other days says', async () => {
  const fit = ['--hold-out', '30 %', '--into', 'line-4.yaml', '--write', 'fitted-line.yaml', '--quiet']
  expect((await call(['fit', 'record.yaml', ...fit], { cwd })).code).toBe(0)
  const held = ['--held-out', 'out/record-fit/fitted.yaml']
  const { code, good, days, isCalibration } = await validated('fitted-line.yaml', '--margin', '3 %', ...held)
  expect([code, good.verdict, days.length, isCalibration]).toEqual([0, 'within', 19, false])
})

it('half the jams are refused on all days, for their jams', async () => {
  const asked = ['--margin', '1 %', '--unseen']
  const { code, good, explains } = await validated('line-4-half-the-jams.yaml', ...asked)
  expect(code).toBe(4)
  expect(good.verdict).not.toBe('within')
  expect(explains).toMatchObject({ path: 'line.sealer.jams', isShown: true, isAlong: true })
  const { plant, model } = explains
  expect(model / plant).toBeGreaterThan(0.4)
  expect(model / plant).toBeLessThan(0.6)
})
