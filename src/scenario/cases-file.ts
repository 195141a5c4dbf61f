/** Cases from a CSV file: its keys in a scenario, and its rows as cases. */
import * as z from 'zod'
import type { CaseKind } from './case-keys.js'
import { columnNamed, decimalOf } from './csv-columns.js'
import { type Finding, findingAt } from './finding.js'
import { findingsOf } from './issues.js'
import { assume, text, unitOf } from './kit.js'
import { shown } from './printable.js'
import { unitSize } from './quantity.js'
import type { ReadRows, RowTaker } from './recorded.js'
import { type Assumption, fillDefaults } from './walk.js'

/** More cases than this are no range of a plant, and their numbers would not fit. */
export const mostCases = 50_000

/** Faults of one file that are told; the rest are mostly of the same sort. */
const mostFaults = 20

/** Longest name of a case, in characters. */
const longestName = 40

const column = (doc: string) => text(doc, 200)

/** What stands under `cases` in place of the cases. */
export const casesFile = z
  .strictObject({
    file: text('CSV file beside the scenario with a header row and one row for each case', 1000),
    columns: z
      .strictObject({
        name: column('column of the names'),
        length: column('column of the outside length of the closed case, in the direction of travel'),
        width: column('column of the width'),
        height: column('column of the height'),
        share: column(
          'column of the share of the arrivals, or of the number of cases (default: all the same)',
        ).optional(),
        weight: column('column of the gross weight').optional(),
        'jam-factor': column('column of the factor on the chance of a jam (default: 1)').optional(),
      })
      .describe('names of the columns'),
    unit: unitOf('length', 'unit of the lengths'),
    'weight-unit': assume(unitOf('mass', 'unit of the weights'), 'kg'),
  })
  .describe('cases from a CSV file, one row each')

type CasesFile = z.output<typeof casesFile>

/** Whether what stands under `cases` names a file: a case of that name would be a map. */
export const namesFile = (cases: unknown): cases is Record<string, unknown> =>
  typeof cases === 'object' && cases !== null && typeof (cases as { file?: unknown }).file === 'string'

/** Does `work` with a tree that has no cases where a file has them: its keys are none of a case. */
export function withoutCasesOfFile<T>(tree: Record<string, unknown>, work: () => T): T {
  const { cases } = tree
  if (!namesFile(cases)) return work()
  tree.cases = {}
  try {
    return work()
  } finally {
    tree.cases = cases
  }
}

/** A reading: the cases, or why there are none. */
export interface ReadCases {
  cases: Record<string, CaseKind>
  assumed: Assumption[]
  findings: Finding[]
}

/** Reads files of cases; each once, however many designs have them. */
export class CaseFiles {
  private readonly known = new Map<string, CaseRows>()

  constructor(private readonly readRows: ReadRows | undefined) {}

  /** What the file that `spec` names holds; fills the defaults of `spec`, in place. */
  read(spec: Record<string, unknown>): ReadCases {
    const assumed = fillDefaults(casesFile, spec, ['cases'])
    const parsed = casesFile.safeParse(spec)
    if (!parsed.success) {
      const found = parsed.error.issues.flatMap((issue) => findingsOf(issue, casesFile, spec))
      const findings = found.map((each) => ({ ...each, path: ['cases', ...each.path] }))
      return { cases: {}, assumed, findings }
    }
    const key = JSON.stringify(parsed.data)
    let rows = this.known.get(key)
    if (!rows) {
      rows = new CaseRows(parsed.data)
      rows.read(this.readRows)
      this.known.set(key, rows)
    }
    return { cases: rows.cases, assumed, findings: rows.findings }
  }
}

type Key = keyof CasesFile['columns']

/** A number of a row: what it may be, and how it is said. */
interface NumberOf {
  size: number
  least: number
  most: number
  /** Above the least, and not at it. */
  isAbove?: true
  rule: string
}

/** One pass over one file. */
class CaseRows implements RowTaker {
  readonly cases: Record<string, CaseKind> = {}
  readonly findings: Finding[] = []
  private readonly at = new Map<Key, number>()
  private readonly rowOf = new Map<string, number>()
  private readonly numbers: Record<Exclude<Key, 'name'>, NumberOf>
  /** As a spreadsheet counts, the header being row 1. */
  private rowNumber = 1

  constructor(private readonly spec: CasesFile) {
    const size = unitSize('length', spec.unit)
    const inUnit = (metres: number) => `${Number((metres / size).toPrecision(3))} ${spec.unit}`
    const side = { size, least: 0.01, most: 10, rule: `a length from ${inUnit(0.01)} to ${inUnit(10)}` }
    const plain = { size: 1, least: 0, most: 1e9, rule: 'a number that is not negative' }
    this.numbers = {
      ...{ length: side, width: side, height: side },
      ...{ share: plain, 'jam-factor': { ...plain, most: 1000, rule: 'a number from 0 to 1000' } },
      weight: {
        ...{ size: unitSize('mass', spec['weight-unit']), least: 0, most: 1e6, isAbove: true },
        rule: `a weight above 0 ${spec['weight-unit']}`,
      },
    }
  }

  read(readRows: ReadRows | undefined): void {
    if (!readRows) {
      this.fault(['file'], 'files cannot be read here', 'name the cases in the scenario')
      return
    }
    try {
      readRows(this.spec.file, this)
    } catch (error) {
      this.fault(
        ['file'],
        error instanceof Error ? error.message : 'cannot be read',
        'check the name and the file; it stays in the folder of the scenario',
      )
    }
    if (this.findings.length === 0 && this.rowOf.size === 0)
      this.fault(['file'], 'the file holds no rows', 'add a row for each case below the header line')
  }

  header(names: readonly string[]): void {
    const trimmed = names.map((each) => each.trim())
    for (const [key, name] of Object.entries(this.spec.columns) as [Key, string | undefined][]) {
      if (name === undefined) continue
      const found = columnNamed(trimmed, name, this.spec.file)
      this.at.set(key, found.index)
      if (found.rule !== undefined) this.fault(['columns', key], found.rule, found.fix)
    }
  }

  row(cells: readonly string[]): boolean {
    if (this.findings.some(({ path }) => path.length < 3 || this.at.get(path[2] as Key) === -1)) return false
    this.rowNumber++
    const name = this.nameIn(cells)
    const sides = {
      length: this.number('length', cells),
      width: this.number('width', cells),
      height: this.number('height', cells),
    }
    const weight = this.at.has('weight') ? { weight: this.number('weight', cells) } : {}
    const share = this.at.has('share') ? this.number('share', cells) : 1
    const jams = this.at.has('jam-factor') ? this.number('jam-factor', cells) : 1
    this.cases[name] = { ...sides, ...weight, share, 'jam-factor': jams }
    if (this.rowOf.size > mostCases)
      this.fault(
        ['file'],
        `more than ${mostCases} cases`,
        'keep the most frequent cases, or one for many that are similar',
      )
    if (this.findings.length < mostFaults) return this.rowOf.size <= mostCases
    this.fault(
      ['file'],
      `the rows below row ${this.rowNumber} were not checked: at most ${mostFaults} errors are listed`,
      'correct these, then read the file again',
    )
    return false
  }

  private nameIn(cells: readonly string[]): string {
    const name = cells[this.at.get('name')!]!.trim()
    const before = this.rowOf.get(name)
    if (name === '' || name.length > longestName || shown(name) !== name)
      this.fault(
        ['columns', 'name'],
        `${this.place('name')} is not a valid name: \`${shown(name, 20)}\``,
        `1 to ${longestName} characters that can be printed`,
      )
    else if (before !== undefined)
      this.fault(
        ['columns', 'name'],
        `${this.place('name')} repeats the name of row ${before}: \`${shown(name)}\``,
        'one row for each case; add the shares, or give each row its own name',
      )
    this.rowOf.set(name, before ?? this.rowNumber)
    return name
  }

  private number(key: Exclude<Key, 'name'>, cells: readonly string[]): number {
    const cell = cells[this.at.get(key)!]!.trim()
    const { size, least, most, isAbove, rule } = this.numbers[key]
    const value = decimalOf(cell) * size
    if (!(value >= least && value <= most) || (isAbove && value === least))
      this.fault(
        ['columns', key],
        `${this.place(key)} is not ${rule}: \`${shown(cell, 20)}\``,
        cell.includes(',') ? 'write decimals with a point, such as `12.5`' : 'correct the row, or remove it',
      )
    return value
  }

  private place = (key: Key): string => `row ${this.rowNumber} of column ${shown(this.spec.columns[key])}`

  private fault(within: readonly string[], rule: string, fix: string): void {
    this.findings.push(findingAt(['cases', ...within], 'file', rule, fix))
  }
}
