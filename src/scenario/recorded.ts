/** Fills the recorded arrivals of every `log` from its CSV file, row by row, into typed arrays. */
import type { RecordedLog } from './arrivals.js'
import { columnNamed, decimalOf } from './csv-columns.js'
import { type Finding, findingAt } from './finding.js'
import { nearest } from './nearest.js'
import { shown } from './printable.js'
import { unitSize } from './quantity.js'
import type { Scenario } from './schema.js'

/** Takes the rows of a CSV file as they are read. */
export interface RowTaker {
  header(names: readonly string[]): void
  /** Takes the cells of the next row; false: no more of them. */
  row(cells: readonly string[]): boolean
}

/** Reads a CSV file beside the scenario part by part and hands over its rows; throws with a plain message when it cannot. */
export type ReadRows = (file: string, taker: RowTaker) => void

/** More rows than this and a study would not end in useful time. */
export const mostRows = 20_000_000

/** Faults of one file that are told; the others are mostly their echo. */
const mostFaults = 5
const partLength = 2 ** 16

interface Fault {
  key: 'file' | 'time' | 'case'
  rule: string
  fix: string
}

/** Reads logs; each file once, however many variants replay it. */
export class Recordings {
  private readonly known = new Map<string, Reading>()

  constructor(private readonly readRows: ReadRows | undefined) {}

  /** Fills all logs of `scenario`, in place; returns what was wrong with them. */
  fill(scenario: Scenario): Finding[] {
    const kinds = Object.keys(scenario.cases)
    return Object.entries(scenario.arrivals).flatMap(([name, { log }]) => {
      if (!log) return []
      const reading = this.read(log, kinds)
      log.times = reading.times
      log.kinds = reading.kinds
      return reading.faults.map(({ key, rule, fix }) =>
        findingAt(['arrivals', name, 'log', key], 'file', rule, fix),
      )
    })
  }

  private read(log: RecordedLog, kinds: readonly string[]): Reading {
    const key = JSON.stringify([log.file, log.time, log.case, log.unit, kinds])
    let reading = this.known.get(key)
    if (!reading) {
      reading = new Reading(log, kinds)
      this.known.set(key, reading)
      reading.read(this.readRows)
    }
    return reading
  }
}

/** One pass over one file. */
class Reading implements RowTaker {
  times: Float64Array = new Float64Array(0)
  kinds: Uint16Array | null = null
  readonly faults: Fault[] = []
  private timeParts: Float64Array[] = []
  private kindParts: Uint16Array[] = []
  private rows = 0
  private latest = 0
  private timeAt = -1
  private caseAt = -1
  private readonly kindOf: ReadonlyMap<string, number>
  private readonly unit: number

  constructor(
    private readonly log: RecordedLog,
    kinds: readonly string[],
  ) {
    this.kindOf = new Map(kinds.map((name, kind) => [name, kind]))
    this.unit = unitSize('time', log.unit)
  }

  read(readRows: ReadRows | undefined): void {
    if (!readRows) {
      this.fault('file', 'files cannot be read here', 'give the arrivals in another way')
      return
    }
    try {
      readRows(this.log.file, this)
    } catch (error) {
      this.fault(
        'file',
        error instanceof Error ? error.message : 'cannot be read',
        'check the name and the file; it must be in the folder of the scenario',
      )
    }
    if (this.faults.length === 0 && this.rows === 0)
      this.fault('file', 'the file holds no rows', 'record at least one case below the header line')
    if (this.faults.length > 0) return
    this.times = joined(this.timeParts, this.rows, Float64Array)
    this.timeParts = []
    if (this.log.case !== undefined) this.kinds = joined(this.kindParts, this.rows, Uint16Array)
    this.kindParts = []
  }

  private fault(key: Fault['key'], rule: string, fix: string): void {
    this.faults.push({ key, rule, fix })
  }

  header(names: readonly string[]): void {
    const place = (key: 'time' | 'case', name: string) => {
      const found = columnNamed(names, name, this.log.file)
      if (found.rule !== undefined) this.fault(key, found.rule, found.fix)
      return found.index
    }
    this.timeAt = place('time', this.log.time)
    if (this.log.case !== undefined) this.caseAt = place('case', this.log.case)
  }

  row(cells: readonly string[]): boolean {
    if (this.timeAt < 0 || (this.caseAt < 0 && this.log.case !== undefined)) return false
    const index = this.rows % partLength
    if (index === 0) {
      this.timeParts.push(new Float64Array(partLength))
      if (this.caseAt >= 0) this.kindParts.push(new Uint16Array(partLength))
    }
    this.timeParts.at(-1)![index] = this.timeOf(cells[this.timeAt]!)
    if (this.caseAt >= 0) this.kindParts.at(-1)![index] = this.kindIn(cells[this.caseAt]!)
    this.rows++
    if (this.rows > mostRows) this.fault('file', `more than ${mostRows} rows`, 'use a part of the log')
    return this.faults.length < mostFaults && this.rows <= mostRows
  }

  /** The row in hand as a spreadsheet counts, the header being row 1. */
  private get place(): string {
    return `row ${this.rows + 2} of column ${shown(this.log.time)}`
  }

  private timeOf(cell: string): number {
    const time = decimalOf(cell) * this.unit
    if (!(time >= 0 && time < Infinity))
      this.fault(
        'time',
        `${this.place} is not a time: \`${shown(cell, 20)}\``,
        'each row needs a number of 0 or more',
      )
    else if (time < this.latest)
      this.fault(
        'time',
        `${this.place} is earlier than the row before: \`${shown(cell, 20)}\``,
        'sort the rows by time; a log is one shift, with times from the start of the shift',
      )
    else this.latest = time
    return time
  }

  private kindIn(cell: string): number {
    const kind = this.kindOf.get(cell)
    if (kind === undefined)
      this.fault(
        'case',
        `row ${this.rows + 2} of column ${shown(this.log.case)} does not name a case: \`${shown(cell, 40)}\``,
        nearest(cell.slice(0, 40), [...this.kindOf.keys()]),
      )
    return kind ?? 0
  }
}

/** The first `length` numbers of `parts` in one array that threads can share, where there are such. */
function joined<T extends Float64Array | Uint16Array>(
  parts: readonly T[],
  length: number,
  Kind: { new (memory: ArrayBufferLike): T; BYTES_PER_ELEMENT: number },
): T {
  const bytes = length * Kind.BYTES_PER_ELEMENT
  const memory =
    typeof SharedArrayBuffer === 'function' ? new SharedArrayBuffer(bytes) : new ArrayBuffer(bytes)
  const whole = new Kind(memory)
  for (const [index, part] of parts.entries()) {
    const from = index * partLength
    whole.set(part.subarray(0, Math.min(partLength, length - from)), from)
  }
  return whole
}
