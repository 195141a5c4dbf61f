/** What the plant's words mean: names that pieces have now, reasons of the scenario, and the rows that name two pieces. */
import { near } from '../scenario/nearest.js'
import { shown } from '../scenario/printable.js'
import type { RecordFile } from './format.js'
import type { Ledger } from './ledger.js'
import type { StopRow } from './read-stops.js'
import type { Meaning } from './record.js'

const tidy = (name: string): string => name.normalize('NFC').trim().replace(/\s+/g, ' ')

/** Knows the words of a record. */
export class Reasons {
  /** What a reason is anywhere. */
  private readonly anywhere = new Map<string, Meaning>()
  /** What it is at one piece. */
  private readonly atPiece = new Map<string, Map<string, Meaning>>()
  private readonly now: ReadonlyMap<string, string>
  private readonly met = new Set<string>()

  constructor({ means, same = {} }: Pick<RecordFile, 'means' | 'same'>) {
    this.now = new Map(Object.entries(same).map(([old, name]) => [tidy(old), tidy(name)]))
    for (const [key, value] of Object.entries(means))
      if (typeof value === 'string') this.anywhere.set(tidy(key), value)
      else {
        const own = Object.entries(value).map(([reason, meaning]): [string, Meaning] => [
          tidy(reason),
          meaning,
        ])
        this.atPiece.set(this.nameNow(tidy(key)), new Map(own))
      }
  }

  /** The name that a piece has now. */
  nameNow(piece: string): string {
    return this.now.get(piece) ?? piece
  }

  /** What a stop is; null: nothing says so. */
  meaningOf({ piece, reason }: Pick<StopRow, 'piece' | 'reason'>): Meaning | null {
    const own = this.atPiece.get(piece)?.get(reason)
    const found = own ?? this.anywhere.get(reason)
    if (found !== undefined) this.met.add(own === undefined ? reason : `${piece}: ${reason}`)
    return found ?? null
  }

  /** All that `means` names, each once, in its order. */
  get meanings(): Meaning[] {
    return [
      ...new Set([
        ...this.anywhere.values(),
        ...[...this.atPiece.values()].flatMap((own) => [...own.values()]),
      ]),
    ]
  }

  /** Pieces that `means` or `same` names. */
  get pieces(): string[] {
    return [...this.atPiece.keys(), ...this.now.values()]
  }

  /** Words of `means` that no row had. */
  get unmet(): string[] {
    const own = [...this.atPiece].flatMap(([piece, reasons]) =>
      [...reasons.keys()].map((reason) => `${piece}: ${reason}`),
    )
    return [...this.anywhere.keys(), ...own].filter((word) => !this.met.has(word))
  }
}

/** Rows under the names that their pieces have now; what is renamed is told. */
export function underNamesOfNow(
  rows: readonly StopRow[],
  reasons: Reasons,
  file: string,
  ledger: Ledger,
): StopRow[] {
  return rows.map((row) => {
    const piece = reasons.nameNow(row.piece)
    if (piece === row.piece) return row
    ledger.tell('renamed', { file, row: row.row, what: `\`${row.piece}\` is \`${piece}\`` })
    return { ...row, piece }
  })
}

/** What parts two pieces in one cell. */
const between = /\s*[+/&,;]\s*|\s+(?:und|and|et|y)\s+/

/** Whether a cell names two pieces or more: each part of it is a piece that is known by itself. */
export function severalPieces(rows: readonly StopRow[], reasons: Reasons): (piece: string) => boolean {
  const all = new Set(rows.map(({ piece }) => piece))
  const known = new Set([...[...all].filter((piece) => !between.test(piece)), ...reasons.pieces])
  const several = new Set(
    [...all].filter((piece) => {
      const parts = piece.split(between).map((part) => reasons.nameNow(part))
      return !known.has(piece) && parts.length > 1 && parts.every((part) => known.has(part))
    }),
  )
  return (piece) => several.has(piece)
}

/** Reasons that nothing explains and that are told one by one, those with the most time first. */
const mostUnknown = 50

/** Tells of the reasons that nothing explains, with their stops and their time; and of what is explained but never met. */
export function tellUnknown(
  stops: readonly (StopRow & { means: Meaning | null })[],
  reasons: Reasons,
  file: string,
  ledger: Ledger,
): void {
  const unmet = reasons.unmet
  const unknown = stops.filter(({ means }) => means === null)
  const seconds = new Map<string, number>()
  for (const { reason, begins, ends } of unknown)
    seconds.set(reason, (seconds.get(reason) ?? 0) + ends - begins)
  const first = [...seconds].sort(([, a], [, b]) => b - a).slice(0, mostUnknown)
  const mends = new Map(first.map(([reason]) => [reason, mendOf(reason, unmet)]))
  for (const { reason, row, begins, ends } of unknown) {
    const mend = mends.get(reason)
    const found = { file, row, seconds: ends - begins }
    if (mend === undefined) ledger.tell('more-unknown', { ...found, what: reason })
    else
      ledger.tell('unknown-reason', {
        ...found,
        group: reason,
        what: [reason === '' ? '(empty)' : reason, mend],
      })
  }
  for (const word of unmet) ledger.tell('never-occurs', { file, what: word })
}

function mendOf(reason: string, unmet: readonly string[]): string {
  const [meant] = near(reason.slice(0, 40), unmet)
  return meant === undefined
    ? 'add it under `means`, with a stop of the scenario or `other`'
    : `did you mean \`${shown(meant)}\`?`
}
