/** A small line with a variant that is better by far, and how tests compare them in this process. */
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import type { CompareResult } from '../../src/questions/compare/document.js'
import { call, smallLine } from './in-process.js'

export const one = ['--full', '--workers', '1']

/** The base is slow at its end, which passes 6.67 cases/min: starting empty it misses its target by a hair; `quick` is better by far, `longer` is not told from the base. */
export const text = `${smallLine.replace('time: 3 s', 'time: 9 s').replace('target: 9', 'target: 6.6')}money: {currency: EUR, labour: 30 EUR/h}
variants:
  quick: {note: a quick end, set: {line.end.time: 3 s}}
  longer: {note: a longer infeed, set: {line.infeed.length: 7 m}}
`

/** A folder with it. */
export function folder(written = text): string {
  const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-compare-'))
  writeFileSync(path.join(cwd, 'line.yaml'), written)
  return cwd
}

/** Compares in this process, without files. */
export const compare = (argv: string[] = [], written = text) =>
  call(['compare', '-', '--no-files', ...one, ...argv], { stdin: written })

/** The same as a document. */
export async function json(argv: string[] = [], written = text) {
  const { code, out, err } = await compare(['--json', ...argv], written)
  return { code, err, out, result: JSON.parse(out) as CompareResult }
}
