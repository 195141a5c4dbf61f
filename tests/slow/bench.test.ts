/** What `npm run bench` begins comes to its end and prints figures; how fast anything is is no matter of a test. */
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))

/** What a program of the bench prints, briefly, in its sections. */
function printed(program: string): string[] {
  const env = { ...process.env, BENCH_BRIEF: '1' }
  const { stdout, stderr, status } = spawnSync('node', [program], { cwd: root, env, encoding: 'utf8' })
  expect(status, stderr).toBe(0)
  expect(stdout).not.toMatch(/NaN|undefined|Infinity/)
  return stdout.trim().split('\n\n')
}

it('the bench measures lines, twins, lengths, threads and whole commands', () => {
  const [machine, ...sections] = printed('.build/bench/bench.js')
  expect(machine).toMatch(/^Node\.js v\d/)
  expect(sections.map((section) => section.split('\n').length - 1)).toEqual([6, 3, 12, 2, 5, 5, 2, 2, 3])
  for (const section of sections) expect(section.split('\n').at(-1)).toMatch(/\d/)
})

it.runIf(existsSync('/usr/bin/chromium') || process.env.CI)('and the page in a browser', () => {
  expect(printed('tests/bench/try-page.mjs').join('\n')).toMatch(/\d/)
})
