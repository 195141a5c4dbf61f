/** Small records in folders of their own, for the command line. */
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { line, type Stop, shiftRows, stopRows } from '../questions/fits.js'
import { recordText } from '../record/texts.js'
import { call } from './in-process.js'

/** A folder with a small record; texts by the name of their file. */
export function folderOf(files: Readonly<Record<string, string | Uint8Array>> = {}): string {
  const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-fit-'))
  const stops = Array.from(
    { length: 24 },
    (_, n): Stop => [1 + (n % 8), 22_000 + 1000 * n, 40 + ((n * 29) % 61)],
  )
  const all = {
    'plant.yaml': recordText({ times: 'iso', 'rounded-to': '0 s' }),
    'shifts.csv': shiftRows(8),
    'stops.csv': stopRows(stops),
    'line.yaml': line,
    ...files,
  }
  for (const [name, text] of Object.entries(all)) writeFileSync(path.join(cwd, name), text)
  return cwd
}

/** `tapeshift fit` of it. */
export const fitted = (cwd: string, ...options: string[]) => call(['fit', 'plant.yaml', ...options], { cwd })
