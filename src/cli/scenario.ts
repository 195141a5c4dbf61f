/** Loads the scenario of a command: its file, and the CSV files beside it. */
import path from 'node:path'
import { parse } from 'csv-parse/sync'
import { delimiterOf } from '../record/dialect.js'
import { columnNamed } from '../scenario/csv-columns.js'
import { misuse } from '../scenario/fault.js'
import { type ReadScenario, readScenario, type ScenarioAsked } from '../scenario/read.js'
import { FilesBeside, type ReadLog, readText } from './files.js'
import type { Io } from './io.js'

export interface CommandScenario extends ReadScenario {
  /** Stem for the names of what is written. */
  stem: string
  /** As it stands in its file. */
  text: string
  /** CSV files that it draws on, by the name that it gives them; those that are put here are read from here. */
  files: Map<string, string>
  /** Recorded logs that it replays, by the name that it gives them. */
  logs: ReadonlyMap<string, ReadLog>
}

/** Reads and validates. Throws `Fault` `file`, `asked` or `scenario`. */
export async function loadForCommand(name: string, asked: ScenarioAsked, io: Io): Promise<CommandScenario> {
  const text = await readText(name, 'the scenario file', io)
  const beside = new FilesBeside(name === '-' ? io.cwd : path.dirname(path.resolve(io.cwd, name)))
  const read = readScenario(
    text,
    { ...asked, name },
    {
      readColumn: (file, column) => columnOf(beside.read(file), file, column),
      readRows: (file, taker) => beside.readRows(file, taker),
      hashes: () => beside.hashes(),
    },
  )
  return { ...read, text, stem: stemOf(name), files: beside.texts, logs: beside.logs }
}

/** Values of a column at most: a law of so many times is known as well as it will ever be, and they are kept in memory. */
const mostValues = 1_000_000

function columnOf(text: string, file: string, column: string): string[] {
  let found: ReturnType<typeof columnNamed> | undefined
  const cells: string[] = []
  try {
    parse(text, {
      delimiter: delimiterOf(text),
      skip_empty_lines: true,
      trim: true,
      bom: true,
      to: mostValues + 2,
      // of rows nothing is kept but that cell
      on_record(row: string[]) {
        if (found === undefined) found = columnNamed(row, column, file)
        else if (found.rule === undefined) cells.push(row[found.index]!)
        return null
      },
    })
  } catch (error) {
    throw new Error(`\`${file}\` is not a CSV file: ${(error as Error).message}`)
  }
  if (found?.rule !== undefined) throw new Error(found.rule)
  if (cells.length > mostValues)
    throw new Error(`\`${file}\` has more than ${mostValues / 1e6} million rows: keep a part of them`)
  return cells
}

/** The name of a file without its folder and ending: what its results are called by. Throws `Fault` `asked` where it has none. */
export function stemOf(name: string): string {
  if (name === '-') return 'stdin'
  const stem = path.basename(name).replace(/\.(ya?ml)$/i, '')
  if (stem === '') throw misuse(`${name} is not a file name`)
  return stem
}
