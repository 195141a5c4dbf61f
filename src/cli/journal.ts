/** The journal of a study: each finished shift as a line of JSON, so that an interrupt or a crash loses none of them. */

import { closeSync, ftruncateSync, openSync, rmSync, writeSync } from 'node:fs'
import path from 'node:path'
import type { ShiftResult } from '../line/line.js'
import { Fault, isFault, misuse } from '../scenario/fault.js'
import type { Keeper } from '../shifts/simulation.js'
import { runtime, version } from '../version.js'
import { makeFolder } from './folder.js'
import type { Io } from './io.js'
import { lineOf, readLine, readLines } from './journal-lines.js'
import { lock } from './lock.js'
import { reason } from './reason.js'

/** What a journal belongs to: all that the results of its shifts depend on. */
export interface JournalOwner {
  version: string
  node: string
  seed: string
  /** Hash of what the shifts of the scenario depend on. */
  scenario: string
}

/** The journal of a study in `folder`; `course`: a hash of all that its shifts depend on but the seed. Throws `Fault` `asked` and `file`. */
export const openJournal = (
  folder: string,
  course: string,
  seed: string,
  isResumed: boolean,
  { stderr }: Io,
): Journal =>
  Journal.open(folder, { version, node: runtime, seed, scenario: course }, isResumed, (text) =>
    stderr.write(`note: ${text}\n`),
  )

const format = 'tapeshift-journal/2'

const series = ['values', 'controls', 'outputs', 'held'] as const

/** One shift as it stands in a journal, with the key of its design where the study has several: numbers to the last digit, null for one that is not known. */
type Entry = { design?: string; shift: number; stops?: number[] } & Record<
  (typeof series)[number],
  (number | null)[]
>

export class Journal implements Keeper {
  private constructor(
    readonly file: string,
    private readonly descriptor: number,
    /** Bytes that are whole lines. */
    private size: number,
    /** What was kept before. */
    private readonly kept: Kept,
    /** Lets another study begin in its folder. */
    private readonly release: () => void,
  ) {}

  /** Shifts of the design of that key that were kept before, by their number. */
  knownOf(design: string): ReadonlyMap<number, ShiftResult> {
    return this.kept.shifts.get(design) ?? new Map()
  }

  /** Whether it keeps anything from before. */
  get isEmpty(): boolean {
    return isNothing(this.kept)
  }

  /** What came of the design of that key, kept before; undefined where it is not known. */
  outcomeOf(design: string): unknown {
    return this.kept.outcomes.get(design)
  }

  /** Keeps what came of a design, in place of its shifts. */
  keepOutcome(design: string, outcome: unknown): void {
    // what came from it stands in it
    if (!this.kept.outcomes.has(design)) this.write(lineOf({ design, outcome }))
  }

  /**
   * Begins the journal in `folder`, or with `isResumed` goes on with the one there; a torn end is cut off. One of
   * another study is refused when resumed and else replaced, after `note` was told. Throws `Fault` `asked` where kept shifts of this
   * very study would be lost or mixed with another's, and `Fault` `file`.
   */
  static open(
    folder: string,
    owner: JournalOwner,
    isResumed: boolean,
    note: (text: string) => void,
  ): Journal {
    const file = path.join(folder, 'journal.ndjson')
    makeFolder(folder)
    const release = lock(path.join(folder, 'journal.lock'))
    try {
      return Journal.openLocked(file, owner, isResumed, note, release)
    } catch (error) {
      release()
      throw error
    }
  }

  private static openLocked(
    file: string,
    owner: JournalOwner,
    isResumed: boolean,
    note: (text: string) => void,
    release: () => void,
  ): Journal {
    const found = readKept(file)
    if (found?.owner) refuseToLose(file, found, found.owner, owner, isResumed, note)
    if (isResumed && (found === null || isNothing(found)))
      note(`there are no saved shifts in ${file}: the study begins with the first shift`)
    const kept = isResumed && found?.owner ? found : nothingKept()
    if (kept.altered > 0)
      note(
        `${kept.altered} ${kept.altered === 1 ? 'line' : 'lines'} of ${file} are damaged: their shifts are simulated again`,
      )
    try {
      const descriptor = openSync(file, kept.owner ? 'r+' : 'w')
      const journal = new Journal(file, descriptor, kept.size, kept, release)
      ftruncateSync(descriptor, journal.size)
      if (!kept.owner) journal.write(lineOf({ format, ...owner }))
      return journal
    } catch (error) {
      if (isFault(error, 'file')) throw error
      throw new Fault('file', `cannot write ${file}: ${reason(error)}`)
    }
  }

  /** Keeps shifts of a design that have just been simulated, `from` the first of them. Throws `Fault` `file`; what was kept stays. */
  keep(design: string, from: number, results: readonly ShiftResult[]): void {
    this.write(results.map((result, index) => lineOfShift(design, from + index, result)).join(''))
  }

  private write(text: string): void {
    const bytes = Buffer.from(text)
    try {
      let written = 0
      while (written < bytes.length)
        written += writeSync(this.descriptor, bytes, written, bytes.length - written, this.size + written)
      this.size += bytes.length
    } catch (error) {
      try {
        ftruncateSync(this.descriptor, this.size)
      } catch {
        // a torn end is cut off when the journal is read
      }
      throw new Fault('file', `cannot write ${this.file}: ${reason(error)}`)
    }
  }

  /** Another study may begin in its folder. */
  close(): void {
    closeSync(this.descriptor)
    this.release()
  }

  /** The results are written: the journal is not needed any more. */
  remove(): void {
    rmSync(this.file, { force: true })
  }
}

function lineOfShift(design: string, shift: number, result: ShiftResult): string {
  const numbers = Object.fromEntries(series.map((name) => [name, Array.from(result[name])]))
  const stops = result.stops && { stops: Array.from(result.stops) }
  return lineOf({ ...(design === '' ? {} : { design }), shift, ...numbers, ...stops })
}

/** What a journal holds: whose it is, null where not even that is whole; its shifts; the length of its whole lines, and how many of these are not as they were written. */
interface Kept {
  owner: JournalOwner | null
  /** By the key of their design and by their number. */
  shifts: Map<string, Map<number, ShiftResult>>
  /** What came of designs, by their key. */
  outcomes: Map<string, unknown>
  size: number
  altered: number
}

const nothingKept = (): Kept => ({ owner: null, shifts: new Map(), outcomes: new Map(), size: 0, altered: 0 })

const isNothing = ({ shifts, outcomes }: Kept): boolean => shifts.size + outcomes.size === 0

/** Whether a first line that was torn may be that of a journal: a disk may have filled it up with zeros. */
function isTornHeader(torn: string): boolean {
  const begin = `{"format":"${format}"`
  const left = torn.replace(/\0[\s\S]*$/, '')
  return begin.startsWith(left) || left.startsWith(begin)
}

/** Reads a journal; null where there is none. A torn end is none of its lines, and what was altered is left out. */
function readKept(file: string): Kept | null {
  const kept = nothingKept()
  const foreign = () => misuse(`${file} is not a journal of this program: choose another --out, or delete it`)
  const read = readLines(file, (text) => {
    const line = readLine(text)
    if (kept.owner === null) {
      if (line?.format !== format) throw foreign()
      kept.owner = line as unknown as JournalOwner
    } else if (line === null || !takeLine(line, kept)) kept.altered++
  })
  if (read === null) return null
  if (kept.owner === null && !isTornHeader(read.torn)) throw foreign()
  return { ...kept, size: read.size }
}

/** Takes what a line keeps; false where it is none of ours. */
function takeLine(line: Record<string, unknown>, kept: Kept): boolean {
  if (typeof line.design === 'string' && line.outcome !== undefined) {
    kept.outcomes.set(line.design, line.outcome)
    return true
  }
  const entry = line as unknown as Entry
  const { stops = [] } = entry
  if (!Number.isInteger(entry.shift) || entry.shift < 1 || !areNumbers(stops)) return false
  if (!series.every((name) => areNumbers(entry[name]))) return false
  const design = entry.design ?? ''
  kept.shifts.set(design, (kept.shifts.get(design) ?? new Map()).set(entry.shift, resultOf(entry)))
  return true
}

/**
 * Throws `Fault` `asked` where kept shifts of this very study would be lost or mixed with another's; those of another study are
 * replaced, after `note` was told.
 */
function refuseToLose(
  file: string,
  kept: Kept,
  keptFor: JournalOwner,
  owner: JournalOwner,
  isResumed: boolean,
  note: (text: string) => void,
): void {
  const others = differences(keptFor, owner)
  if (isResumed) {
    if (others === null) return
    throw misuse(
      `${file} is from another study: it was made with ${others.kept}; this one is ${others.wanted}. Simulate that study, choose another --out, or leave out --resume to start again`,
    )
  }
  if (isNothing(kept)) return
  const { size } = kept.outcomes
  const count =
    size > 0
      ? `${size} designs`
      : `${[...kept.shifts.values()].reduce((sum, each) => sum + each.size, 0)} shifts`
  if (others === null)
    throw misuse(
      `${file} has ${count} of this same study: add --resume to continue with them, or delete the file to start again`,
    )
  note(`the journal of another unfinished study (${others.kept}; ${count}) is replaced`)
}

const areNumbers = (value: unknown): boolean =>
  Array.isArray(value) && value.every((each) => each === null || typeof each === 'number')

const resultOf = (entry: Entry): ShiftResult => ({
  ...(Object.fromEntries(
    series.map((name) => [name, Float64Array.from(entry[name], (value) => value ?? Number.NaN)]),
  ) as Record<(typeof series)[number], Float64Array>),
  ...(Array.isArray(entry.stops) ? { stops: Float64Array.from(entry.stops) } : {}),
})

const words: Record<keyof JournalOwner, string> = {
  scenario: 'sha256 of the scenario without its study',
  seed: 'seed',
  version: 'tapeshift',
  node: 'Node',
}

/** In what two studies differ, in the words of each; null where they are the same. */
function differences(kept: JournalOwner, wanted: JournalOwner): { kept: string; wanted: string } | null {
  const other = (Object.keys(words) as (keyof JournalOwner)[]).filter((key) => kept[key] !== wanted[key])
  if (other.length === 0) return null
  const named = (owner: JournalOwner) =>
    other.map((key) => `${words[key]} ${shownValue(key, owner[key])}`).join(', ')
  return { kept: named(kept), wanted: named(wanted) }
}

const shownValue = (key: keyof JournalOwner, value: unknown) =>
  key === 'scenario' ? String(value).slice(0, 12) : key === 'seed' ? JSON.stringify(value) : String(value)
