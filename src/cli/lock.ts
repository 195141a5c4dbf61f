/** One study at a time in a folder: a lock that names its process, and that a killed process does not leave shut. */
import {
  closeSync,
  constants,
  fstatSync,
  openSync,
  readFileSync,
  readSync,
  renameSync,
  rmSync,
  writeSync,
} from 'node:fs'
import { hostname } from 'node:os'
import { Fault, isFault, misuse } from '../scenario/fault.js'
import { reason } from './reason.js'

/** Who holds a lock: `begun` tells one process of a number from a later one, where the system says so. */
interface Holder {
  pid: number
  host: string
  begun: string | null
}

/** When the process began, in ticks since the machine did (proc(5), field 22 of stat); null where the system does not say. */
function begunOf(pid: number): string | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8')
    // the name in brackets may hold anything
    return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? null
  } catch {
    return null
  }
}

function isRunning({ pid, host, begun }: Holder): boolean {
  // of another machine nothing is known
  if (host !== hostname()) return true
  try {
    process.kill(pid, 0)
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM'
  }
  return begun === null || begun === begunOf(pid)
}

/** Time that a process may take between making its lock and writing into it, ms. */
const patience = 500

/** What a lock says; null where nobody wrote into it, as after a crash in the instant in which it was made: one that is just being made is waited for. */
function holderOf(file: string): Holder | null {
  const holder = readHolder(file)
  if (holder !== null) return holder
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, patience)
  return readHolder(file)
}

function readHolder(file: string): Holder | null {
  // a pipe would wait for somebody to write into it
  const descriptor = openSync(file, constants.O_RDONLY | constants.O_NONBLOCK)
  try {
    if (!fstatSync(descriptor).isFile())
      throw misuse(`${file} is not a file: choose another --out, or delete it`)
    const buffer = Buffer.alloc(1000)
    const { pid, host, begun } = JSON.parse(buffer.toString('utf8', 0, readSync(descriptor, buffer)))
    return Number.isInteger(pid) && typeof host === 'string' ? { pid, host, begun: begun ?? null } : null
  } catch (error) {
    if (error instanceof SyntaxError) return null
    throw error
  } finally {
    closeSync(descriptor)
  }
}

/** Makes the lock; false where there is one. */
function make(file: string): boolean {
  // before it is there: until it is written into nobody knows whose it is
  const holder: Holder = { pid: process.pid, host: hostname(), begun: begunOf(process.pid) }
  let descriptor: number
  try {
    descriptor = openSync(file, 'wx')
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false
    throw error
  }
  try {
    writeSync(descriptor, `${JSON.stringify(holder)}\n`)
  } catch (error) {
    rmSync(file, { force: true })
    throw error
  } finally {
    closeSync(descriptor)
  }
  return true
}

/** Takes the lock `file`; gives what lets it go. Throws `Fault` `asked` where a process holds it that runs yet, and `Fault` `file`. */
export function lock(file: string): () => void {
  try {
    if (!make(file)) takeOver(file)
  } catch (error) {
    if (isFault(error, 'asked')) throw error
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') throw justBegun(file)
    throw new Fault('file', `cannot write ${file}: ${reason(error)}`)
  }
  return () => rmSync(file, { force: true })
}

/** In place of a process that ended without letting it go. */
function takeOver(file: string): void {
  const holder = holderOf(file)
  if (holder !== null && isRunning(holder))
    throw misuse(
      `another study is running in this folder: process ${holder.pid} on ${holder.host} (${file}). Wait for it or choose another --out; if it has ended, delete that file`,
    )
  // aside first: of several who find it left, one moves it, and a new one that came in its place is put back
  const aside = `${file}.${process.pid}`
  renameSync(file, aside)
  const moved = holderOf(aside)
  const isTheSame = JSON.stringify(moved) === JSON.stringify(holder)
  if (!isTheSame) renameSync(aside, file)
  else rmSync(aside)
  if (!isTheSame || !make(file)) throw justBegun(file)
}

const justBegun = (file: string) =>
  misuse(`another study has just started in this folder (${file}): choose another --out`)
