/** A small line whose end is too slow unless it has a second place, and how tests size it in this process. */
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { expect } from 'vitest'
import type { SizeResult } from '../../src/questions/size/document.js'
import { call, smallLine } from './in-process.js'

export const one = ['--full', '--workers', '1']

/** The end is slow, so that the target is missed, unless it has a second place; its price is per place by way of the crew. */
export const text = `${smallLine.replace('time: 3 s', 'time: {exponential: {mean: 7 s}}, run-by: people')}crew: {packer: {people: 1, does: [jams, roll-change]}}
money: {currency: EUR, labour: 30 EUR/h, life: 10 yr, interest: 0 %, shifts: 480 per yr, capital: {line.infeed: 600 EUR/m}}
variants:
  doubled: {note: a second place at the end, set: {line.end.servers: 2}}
`

export const choose = ['--choose', 'line.end.servers=1,2', '--choose', 'line.infeed.length=2..10/4 m']
export const holds = ['--holds', '9 cases/min in 60 % of shifts within 15 %']

export const size = (argv: string[], written = text) =>
  call(['size', '-', '--no-files', ...one, ...argv], { stdin: written })

export async function json(argv: string[], written = text) {
  const { code, out, err } = await size(['--json', ...argv], written)
  expect([0, 4], err).toContain(code)
  return { code, out, err, result: JSON.parse(out) as SizeResult }
}

export function folder(written = text): string {
  const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-size-'))
  writeFileSync(path.join(cwd, 'line.yaml'), written)
  return cwd
}
