/** Reading and writing files: nothing half-written, every failure with the file's name and what to do. */

import { createHash } from 'node:crypto'
import { readFileSync, realpathSync, statSync } from 'node:fs'
import { copyFile, open, readdir, rename, rm, writeFile } from 'node:fs/promises'
import path from 'node:path'
import type { Readable } from 'node:stream'
import type { LogTaker } from '../record/dialect.js'
import { Fault, isFault, misuse } from '../scenario/fault.js'
import { hashOfText } from '../scenario/hash.js'
import type { RowTaker } from '../scenario/recorded.js'
import { makeFolder } from './folder.js'
import type { Io } from './io.js'
import { reason } from './reason.js'
import { readLogOf, readRowsOf } from './rows.js'

/** What is read, with the bytes of it at most; of a scenario file the format itself allows fewer. No result comes near a tenth of its bound. */
const mostBytes = {
  'the scenario file': 4_000_000,
  'the record file': 4_000_000,
  'the result.json': 60_000_000,
  'what a fit wrote': 4_000_000,
}

/** The text of a scenario or a result, from its file or, for `-`, from standard input. */
export async function readText(
  name: string,
  what: keyof typeof mostBytes,
  { cwd, stdin }: Pick<Io, 'cwd' | 'stdin'>,
): Promise<string> {
  const most = mostBytes[what]
  if (name === '-') return readAll(stdin, most)
  let handle: Awaited<ReturnType<typeof open>>
  const file = path.resolve(cwd, name)
  try {
    handle = await open(file, 'r')
  } catch (error) {
    throw new Fault('file', `cannot read ${name}: ${reason(error)}`)
  }
  try {
    const stat = await handle.stat()
    if (stat.isDirectory()) throw misuse(`${name} is a folder: give the path of ${what} in it`)
    // a pipe ends with whoever writes into it; what a device gives may have no end
    if (!stat.isFile() && !stat.isFIFO()) throw misuse(`${name} is not a file: give the path of ${what}`)
    // of text that is too long the loader says what is wrong with it
    if (what === 'the result.json' && stat.isFile() && stat.size > most)
      throw misuse(
        `${name} is longer than ${most / 1e6} MB, far more than any result: give the path of ${what}`,
      )
    return await readAll(handle.createReadStream({ autoClose: false }), most)
  } catch (error) {
    if (isFault(error, 'asked') || isFault(error, 'file')) throw error
    throw new Fault('file', `cannot read ${name}: ${reason(error)}`)
  } finally {
    await handle.close()
  }
}

async function readAll(stream: Readable, most: number): Promise<string> {
  const parts: Buffer[] = []
  let bytes = 0
  for await (const part of stream) {
    const chunk = Buffer.isBuffer(part) ? part : Buffer.from(String(part))
    parts.push(chunk)
    bytes += chunk.length
    if (bytes > most) break
  }
  return Buffer.concat(parts)
    .toString('utf8')
    .replace(/^\uFEFF/, '')
}

/** Of a CSV file whose columns are kept, bytes at most; logs are read in parts and may be longer. */
const mostKept = 30_000_000

/** A recorded log that was read: where it lies, how long it is and what it holds. */
export interface ReadLog {
  file: string
  bytes: number
  sha256: string
}

/** Reads files beside a scenario or a record: relative to its folder, and not outside it. Keeps what it read. */
export class FilesBeside {
  /** Text by the name that the scenario gives. */
  readonly texts = new Map<string, string>()
  /** What is known of recorded logs, which are not kept, by the name that the scenario gives. */
  readonly logs = new Map<string, ReadLog>()

  /** Hashes of the texts: a search hashes its scenario for each of its designs. */
  private readonly textHashes = new Map<string, string>()

  /** `what` names the file beside which they lie in messages. */
  constructor(
    private readonly folder: string,
    private readonly what: 'scenario' | 'record' = 'scenario',
  ) {}

  /** Name and hash of each file that was read. */
  hashes(): [name: string, sha256: string][] {
    return [
      ...this.textHashes,
      ...[...this.logs].map(([name, { sha256 }]): [string, string] => [name, sha256]),
    ]
  }

  /** Reads `name`; throws with a plain message. Links that lead out of the folder are refused too. */
  read(name: string): string {
    const known = this.texts.get(name)
    if (known !== undefined) return known
    const real = this.locate(name)
    let text: string
    try {
      if (statSync(real).size > mostKept)
        throw new Error(
          `it is longer than ${mostKept / 1e6} MB; keep only the columns and rows that the scenario uses`,
        )
      text = readFileSync(real, 'utf8')
    } catch (error) {
      throw new Error(`\`${name}\` cannot be read: ${reason(error)}`)
    }
    this.texts.set(name, text)
    this.textHashes.set(name, hashOfText(text))
    return text
  }

  /** Hands the rows of the log `name` to `taker` as they are read; throws as `read` does. */
  readRows(name: string, taker: RowTaker): void {
    this.readParts(name, (file, seen) => readRowsOf(file, name, taker, seen))
  }

  /** The same of a log however a plant has written it. */
  readLog(name: string, taker: LogTaker): void {
    this.readParts(name, (file, seen) => readLogOf(file, name, taker, seen))
  }

  private readParts(name: string, read: (file: string, seen: (part: Uint8Array) => void) => void): void {
    const file = this.locate(name)
    const hash = createHash('sha256')
    let bytes = 0
    try {
      read(file, (part) => {
        hash.update(part)
        bytes += part.length
      })
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === undefined) throw error
      throw new Error(`\`${name}\` cannot be read: ${reason(error)}`)
    }
    this.logs.set(name, { file, bytes, sha256: hash.digest('hex') })
  }

  /** The place of `name` on the disk, links followed; throws with a plain message where it may not be read. */
  private locate(name: string): string {
    const file = path.resolve(this.folder, name)
    const isInside = (inner: string, outer: string) =>
      inner.startsWith(outer.endsWith(path.sep) ? outer : outer + path.sep)
    if (path.isAbsolute(name) || !isInside(file, path.resolve(this.folder)))
      throw new Error(`\`${name}\` is outside the folder of the ${this.what}`)
    let real: string
    let isFile: boolean
    try {
      real = realpathSync(file)
      isFile = statSync(real).isFile()
    } catch (error) {
      throw new Error(`\`${name}\` cannot be read: ${reason(error)}`)
    }
    if (!isInside(real, realpathSync(this.folder)))
      throw new Error(`\`${name}\` leads outside the folder of the ${this.what}`)
    if (!isFile) throw new Error(`\`${name}\` is not a file`)
    return real
  }
}

/** What is to be written: text or bytes, or a copy of another file; a long text is made when its turn comes, and is not kept. */
export type Content = string | Uint8Array | { copyOf: string } | (() => string)

/**
 * Writes files so that a reader never sees half of one, nor some new and some old ones: all are written under temporary
 * names, and renamed when the last of them is whole. Throws `Fault` `file`; then what was there stays.
 */
export async function writeTogether(files: ReadonlyMap<string, Content>): Promise<void> {
  const temporary = (file: string) => `${file}.${process.pid}.tmp`
  let at = ''
  try {
    await sweep(new Set(files.keys()))
    for (const [file, content] of files) {
      at = file
      makeFolder(path.dirname(file))
      await writeContent(temporary(file), content)
    }
    for (const file of files.keys()) {
      at = file
      // before the first is renamed, which would stay new beside old ones
      if (statSync(file, { throwIfNoEntry: false })?.isDirectory())
        throw new Fault('file', `cannot write ${file}: it is a folder`)
    }
    for (const file of files.keys()) {
      at = file
      await rename(temporary(file), file)
    }
  } catch (error) {
    for (const file of files.keys()) await rm(temporary(file), { force: true }).catch(() => {})
    // what the file system says has a code; all else is none of a disk
    if (isFault(error, 'file') || (error as NodeJS.ErrnoException).code === undefined) throw error
    throw new Fault('file', `cannot write ${at}: ${reason(error)}`)
  }
}

function writeContent(file: string, content: Content): Promise<void> {
  if (typeof content === 'function') return writeFile(file, content())
  if (typeof content === 'object' && 'copyOf' in content) return copyFile(content.copyOf, file)
  return writeFile(file, content)
}

/** Removes what a run that was killed while it wrote these files has left beside them. */
async function sweep(files: ReadonlySet<string>): Promise<void> {
  for (const folder of new Set([...files].map((file) => path.dirname(file))))
    for (const name of await readdir(folder).catch(() => [])) {
      const left = /^(.+)\.\d+\.tmp$/.exec(name)
      if (left && files.has(path.join(folder, left[1]!))) await rm(path.join(folder, name), { force: true })
    }
}

/** Writes one file, as `writeTogether` does. */
export const writeWhole = (file: string, content: Content): Promise<void> =>
  writeTogether(new Map([[file, content]]))

/** Writes a new file, whole or not at all; refuses when there is one already. */
export async function writeNew(file: string, content: string): Promise<void> {
  let handle: Awaited<ReturnType<typeof open>> | undefined
  try {
    handle = await open(file, 'wx')
    await handle.writeFile(content)
  } catch (error) {
    // half of it would be in the way of the next attempt
    if (handle) await rm(file, { force: true }).catch(() => {})
    throw new Fault('file', `cannot write ${file}: ${reason(error)}`)
  } finally {
    await handle?.close()
  }
}
