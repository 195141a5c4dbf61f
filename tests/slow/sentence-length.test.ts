/** What the studies print by default of every demo, and of a record: no sentence has more than 25 words. */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { expect, it } from 'vitest'
import { root } from '../manual/examples.js'
import { program } from '../manual/follow.js'
import { sentencesOf, tooLong } from '../words/sentences.js'

const scenarios = path.join(root, 'scenarios')
const record = path.join(scenarios, 'lindmoor-record')
const demos = [
  ...readdirSync(scenarios)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => path.join(scenarios, name)),
  path.join(record, 'line-4.yaml'),
]

const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-test-'))
/** Exit code 4 says that something asked for does not hold, 3 that a variant cannot work: both print an answer. */
function printed(argv: readonly string[]): string {
  try {
    return execFileSync(process.execPath, [program, ...argv], { cwd, encoding: 'utf8', stdio: 'pipe' })
  } catch (error) {
    const { status, stdout } = error as { status: number; stdout: string }
    expect([argv.join(' '), [3, 4].includes(status), stdout !== '']).toEqual([argv.join(' '), true, true])
    return stdout
  }
}

const few = ['--shifts', '4', '--inputs', 'fixed', '--workers', '1', '--no-files']

/** The first conveyor of a demo: studies need something to vary. */
const conveyor = (text: string): string => /^ {2}([\w-]+):\s*\{type: conveyor/m.exec(text)?.[1] ?? 'infeed'

it.each(demos)('%s', { timeout: 120_000 }, (demo) => {
  const length = `line.${conveyor(readFileSync(demo, 'utf8'))}.length`
  const range = `${length}=4..12/4 m`
  const often = ['--holds', '6 cases/min in 80 % of shifts within 10 %']
  for (const argv of [
    ['run', demo, ...few],
    ['compare', demo, '--what-if', `long: ${length}=15 m`, ...few],
    ['sweep', demo, '--vary', range, ...few],
    ['sweep', demo, '--each', '--vary', `${length}=4..12 m`, ...few],
    ['size', demo, '--choose', range, ...often, ...few],
  ]) {
    const out = printed(argv)
    expect([argv[0], sentencesOf(out).length > 5, tooLong(out)]).toEqual([argv[0], true, []])
  }
})

it('drawn inputs', { timeout: 120_000 }, () => {
  const drawn = ['--shifts', '12', '--draws', '10', '--workers', '1', '--no-files']
  expect(tooLong(printed(['run', path.join(scenarios, 'pet-food.yaml'), ...drawn]))).toEqual([])
})

it('a fit and a validation', { timeout: 120_000 }, () => {
  const rows = path.join(record, 'record.yaml')
  expect(tooLong(printed(['fit', rows, '--hold-out', '30 %', '--out', 'kept']))).toEqual([])
  const against = ['--margin', '1 %', '--held-out', 'kept/fitted.yaml', '--runs', '39', '--no-files']
  const model = path.join(record, 'line-4-half-the-jams.yaml')
  expect(tooLong(printed(['validate', model, rows, ...against]))).toEqual([])
})
