/** The reference line with ten thousand kinds of cases in a CSV file, as a range of a plant has them. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parse, stringify } from 'yaml'
import { referenceFile } from './lines.js'

/** Writes the scenario and its file of cases of `count` kinds; returns the path of the scenario, whose folder is for whoever asks to remove. */
export function lineOfKinds(count: number): string {
  const folder = mkdtempSync(join(tmpdir(), 'kinds-'))
  const rows = Array.from({ length: count }, (_, kind) => {
    const [length, width, height] = [
      300 + ((kind * 37) % 200),
      250 + ((kind * 53) % 100),
      200 + ((kind * 71) % 150),
    ]
    return `kind ${kind},${length},${width},${height},${1 + (kind % 97)}`
  })
  writeFileSync(join(folder, 'sizes.csv'), ['name,L,W,H,n', ...rows, ''].join('\n'))
  const columns = { name: 'name', length: 'L', width: 'W', height: 'H', share: 'n' }
  const cases = { file: 'sizes.csv', unit: 'mm', columns }
  const file = join(folder, `${count}-kinds.yaml`)
  writeFileSync(file, stringify({ ...parse(readFileSync(referenceFile, 'utf8')), cases }))
  return file
}
