/** Lines of a journal: JSON, each ended by a checksum of its text, so that one that was altered is told from one that was kept. */
import { closeSync, constants, fstatSync, openSync, readSync } from 'node:fs'
import { crc32 } from 'node:zlib'
import { Fault, misuse } from '../scenario/fault.js'
import { reason } from './reason.js'

/** Longest line that is read, bytes: far beyond what any design or shift takes. */
const longest = 64_000_000
const part = 1 << 20

const checksum = (text: string): string => crc32(text).toString(16).padStart(8, '0')

/** The line of an object, its end included; the checksum stands last in it. */
export function lineOf(entry: object): string {
  const text = JSON.stringify(entry)
  return `${text.slice(0, -1)},"crc32":"${checksum(text)}"}\n`
}

const ending = /,"crc32":"([0-9a-f]{8})"\}$/

/** The object of a line, without its end; null where it is none, or not as it was written. */
export function readLine(line: string): Record<string, unknown> | null {
  const found = ending.exec(line)
  if (!found) return null
  const text = `${line.slice(0, found.index)}}`
  if (checksum(text) !== found[1]) return null
  try {
    const value: unknown = JSON.parse(text)
    return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : null
  } catch {
    return null
  }
}

/** What was read of a file of lines. */
interface Lines {
  /** Bytes of all whole lines. */
  size: number
  /** How what comes after them begins; empty where nothing does. */
  torn: string
}

/**
 * Hands each whole line of a file to `take`, without its end; null where there is no file. A link is not followed: what it leads to
 * is not of the folder, and would be written over.
 */
export function readLines(file: string, take: (line: string) => void): Lines | null {
  let descriptor: number
  try {
    // a pipe would wait for somebody to write into it
    descriptor = openSync(file, constants.O_RDONLY | constants.O_NONBLOCK | constants.O_NOFOLLOW)
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException
    if (code === 'ENOENT' || code === 'ENOTDIR') return null
    if (code === 'ELOOP') throw misuse(`${file} is a link, not a file: choose another --out, or delete it`)
    throw new Fault('file', `cannot read ${file}: ${reason(error)}`)
  }
  try {
    if (!fstatSync(descriptor).isFile())
      throw misuse(`${file} is not a file: choose another --out, or delete it`)
    return takeAll(descriptor, file, take)
  } finally {
    closeSync(descriptor)
  }
}

function takeAll(descriptor: number, file: string, take: (line: string) => void): Lines {
  const buffer = Buffer.alloc(part)
  let parts: Buffer[] = []
  let pending = 0
  let whole = 0
  for (let count = readSync(descriptor, buffer); count > 0; count = readSync(descriptor, buffer)) {
    let from = 0
    for (let end = buffer.indexOf(10); end >= 0 && end < count; end = buffer.indexOf(10, from)) {
      const line = Buffer.concat([...parts, buffer.subarray(from, end)])
      take(line.toString('utf8'))
      whole += line.length + 1
      parts = []
      pending = 0
      from = end + 1
    }
    parts.push(Buffer.from(buffer.subarray(from, count)))
    pending += count - from
    if (pending > longest)
      throw misuse(`${file} is not a journal of this program: choose another --out, or delete it`)
  }
  return { size: whole, torn: Buffer.concat(parts).toString('utf8', 0, 100) }
}
