/** The example of the manual for programs runs as it stands, against the built package. */
import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))

it('prints a difference with its interval, and a page', () => {
  expect(existsSync(`${root}/.build/cli/node.js`), 'npm run build').toBe(true)
  const guide = readFileSync(`${root}/src/manual/texts/from-a-program.md`, 'utf8')
  const [, example] = /```ts\n([\s\S]*?)```/.exec(guide) as unknown as [string, string]
  const told = example
    .replace(/^(answer\.difference\(.*?\)).*$/m, 'console.log(JSON.stringify($1))')
    .replace(/^(toPage\(.*?\)).*$/m, 'console.log($1.slice(0, 15))')
  const out = execFileSync(process.execPath, ['--input-type=module', '--eval', told], {
    cwd: root,
    encoding: 'utf8',
  })
  const [difference, page] = out.trim().split('\n') as [string, string]
  const { mean, low, high, unit } = JSON.parse(difference)
  expect(low).toBeLessThan(mean)
  expect(high).toBeGreaterThan(mean)
  expect(unit).toBe('cases/s')
  expect(page).toBe('<!doctype html>')
})
