/** Loads the scenario of a command: file, overrides, and the CSV files beside it. */
import { createHash } from 'node:crypto'
import path from 'node:path'
import { parse } from 'csv-parse/sync'
import { type Loaded, loadScenario, type Resolved, type Variant } from '../scenario/load.js'
import { shown } from '../scenario/problems.js'
import { Beside, type ReadLog, readScenarioText } from './files.js'
import { type Io, UsageError } from './io.js'
import type { ScenarioOptions, SimulationOptions } from './options.js'
import { questionOf } from './question.js'

export interface CommandScenario extends Loaded {
  variants: (Variant & { shiftsSha256: string })[]
  /** Stem for the names of what is written. */
  stem: string
  sha256: string
  /**
   * The same of what its shifts depend on: without `study`, for more of them or another confidence change none, and
   * without other variants. Their seed is in `scenario.study.seed`.
   */
  shiftsSha256: string
  /** `shiftsSha256` of the scenario with other values. */
  shiftsHash: (resolved: Resolved) => string
  /** CSV files that it draws on, by the name that it gives them. */
  files: ReadonlyMap<string, string>
  /** Recorded logs that it replays, by the name that it gives them. */
  logs: ReadonlyMap<string, ReadLog>
  /** What the first comments of the file ask; null where they ask nothing. */
  question: string | null
}

/** Reads and validates. Throws `FileError`, `UsageError` or `ScenarioError`. */
export async function loadForCommand(
  name: string,
  options: ScenarioOptions & Partial<SimulationOptions> & { whatIf?: readonly string[] },
  io: Io,
): Promise<CommandScenario> {
  const text = await readScenarioText(name, io.cwd, io.stdin)
  const beside = new Beside(name === '-' ? io.cwd : path.dirname(path.resolve(io.cwd, name)))
  const overrides = [
    { path: 'study.shifts', value: options.shifts, source: '--shifts' },
    { path: 'study.seed', value: options.seed, source: '--seed' },
    { path: 'study.confidence', value: options.confidence, source: '--confidence' },
  ].filter(({ value }) => value !== undefined)
  const loaded = loadScenario(text, {
    file: name === '-' ? 'standard input' : name,
    sets: options.set,
    overrides,
    ...(options.variant === undefined ? {} : { variant: options.variant }),
    whatIfs: options.whatIf ?? [],
    readColumn: (file, column) => columnOf(beside.read(file), file, column),
    readRows: (file, taker) => beside.readRows(file, taker),
  })
  const shiftsHash = ({ resolved }: Resolved) => hashOf({ ...resolved, study: null, variants: null }, beside)
  return {
    ...loaded,
    variants: loaded.variants.map((variant) => ({ ...variant, shiftsSha256: shiftsHash(variant) })),
    stem: stemOf(name),
    sha256: hashOf(loaded.resolved, beside),
    shiftsSha256: shiftsHash(loaded),
    shiftsHash,
    files: beside.texts,
    logs: beside.logs,
    question: questionOf(text),
  }
}

/** Hash of a scenario as resolved and of what the files hold that it draws on. */
function hashOf(resolved: Record<string, unknown>, beside: Beside): string {
  const digest = (text: string) => createHash('sha256').update(text).digest('hex')
  const files = [
    ...[...beside.texts].map(([name, text]) => [name, digest(text)]),
    ...[...beside.logs].map(([name, log]) => [name, log.sha256]),
  ].sort(([a], [b]) => (a! < b! ? -1 : 1))
  return digest(JSON.stringify(resolved) + files.map((file) => JSON.stringify(file)).join(''))
}

function columnOf(text: string, file: string, column: string): string[] {
  let rows: Record<string, string>[]
  try {
    rows = parse(text, { columns: true, skip_empty_lines: true, trim: true, bom: true }) as Record<
      string,
      string
    >[]
  } catch (error) {
    throw new Error(`\`${file}\` is no CSV: ${(error as Error).message}`)
  }
  if (rows.length > 0 && !Object.hasOwn(rows[0]!, column))
    throw new Error(
      `\`${file}\` has no column \`${column}\`; it has ${shown(Object.keys(rows[0]!).join(', '), 200)}`,
    )
  return rows.map((row) => row[column]!)
}

function stemOf(name: string): string {
  if (name === '-') return 'stdin'
  const stem = path.basename(name).replace(/\.(ya?ml)$/i, '')
  if (stem === '') throw new UsageError(`${name} is no name of a file`)
  return stem
}
