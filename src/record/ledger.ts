/** What is found while a record is read, gathered as it is found and told at the end: nothing is dropped or changed without an entry. */
import { shown } from '../scenario/printable.js'
import type { Account } from './record.js'
import { saidOf, type Told } from './saying.js'
import { type Code, sayings } from './sayings.js'

/** Rows and names of an entry that are told; the others are counted. */
const mostShown = 5

export interface Found {
  file: string
  /** The header is row 1. */
  row?: number
  /** Time that it moves, s. */
  seconds?: number
  /** Names and figures that its sentence needs. */
  what?: string | readonly string[]
  /** What has a group of its own has an entry of its own. */
  group?: string
  /** It stands for so many; one where nobody says. */
  count?: number
}

interface Entry extends Told {
  code: Code
  file: string
  /** The row that was told last: two cells of one row are one row. */
  latest: number | undefined
  rows: number[]
  what: string[]
}

export class Ledger {
  private readonly entries = new Map<string, Entry>()

  /** Notes one more of what `code` says. */
  tell(code: Code, { file, row, seconds = 0, what, group = '', count = 1 }: Found): void {
    const key = JSON.stringify([code, file, group])
    let entry = this.entries.get(key)
    if (!entry) {
      entry = { code, file, latest: undefined, rows: [], what: [], count: 0, seconds: 0 }
      this.entries.set(key, entry)
    }
    const isSameRow = row !== undefined && row === entry.latest
    entry.latest = row
    entry.count += isSameRow ? 0 : count
    entry.seconds += seconds
    if (row !== undefined && !isSameRow && entry.rows.length < mostShown) entry.rows.push(row)
    if (what === undefined || entry.what.length >= mostShown) return
    for (const text of [what].flat().map((each) => shown(each, 200)))
      if (entry.what.length < mostShown && !entry.what.includes(text)) entry.what.push(text)
  }

  /** Something makes the record unusable. */
  get isRefused(): boolean {
    return [...this.entries.values()].some(({ code }) => sayings[code].did === 'refused')
  }

  /** All entries: what is refused first, then in the order in which they were found. */
  account(): Account[] {
    const all = [...this.entries.values()].map((entry): Account => {
      const { did, words, fix } = sayings[entry.code]
      const { code, file, count, seconds } = entry
      const rows = entry.rows.sort((a, b) => a - b)
      return { code, did, file, words: saidOf(words, entry), rows, count, seconds, fix: saidOf(fix, entry) }
    })
    return [...all.filter(({ did }) => did === 'refused'), ...all.filter(({ did }) => did !== 'refused')]
  }
}
