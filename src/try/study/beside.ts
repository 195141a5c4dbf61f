/** CSV texts that travel with a scenario, read as the command line reads them from the disk. */
import { parse } from 'csv-parse/browser/esm/sync'
import { columnNamed } from '../../scenario/csv-columns.js'
import { hashOfText } from '../../scenario/hash.js'
import type { Beside } from '../../scenario/read.js'
import type { Files } from './messages.js'

/** What a scenario draws on beside its text. */
export function besideOf(files: Files): Beside {
  const used = new Map<string, string>()
  const read = (name: string): string => {
    if (!Object.hasOwn(files, name))
      throw new Error(`\`${name}\` is not in this page: open it together with the scenario`)
    const text = files[name]!
    if (!used.has(name)) used.set(name, hashOfText(text))
    return text
  }
  const rowsOf = (name: string): string[][] => {
    const text = read(name)
    try {
      return parse(text, { skip_empty_lines: true, trim: true, bom: true })
    } catch (error) {
      throw new Error(`\`${name}\` is not a CSV file: ${(error as Error).message}`)
    }
  }
  return {
    readColumn(name, column) {
      const [names, ...cells] = rowsOf(name)
      if (!names) return []
      const found = columnNamed(names, column, name)
      if (found.rule !== undefined) throw new Error(found.rule)
      return cells.map((row) => row[found.index]!)
    },
    readRows(name, taker) {
      const [names, ...rows] = rowsOf(name)
      if (!names) return
      taker.header(names)
      for (const row of rows) if (!taker.row(row)) return
    },
    hashes: () => [...used],
  }
}
