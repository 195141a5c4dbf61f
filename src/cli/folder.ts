/** Makes the folder of results, and what it lies in, one after the other: never without end, as a system may let that of the library do. */
import { mkdirSync, statSync } from 'node:fs'
import path from 'node:path'
import { Fault } from '../scenario/fault.js'
import { reason } from './reason.js'

/** Throws `Fault` `file` where it cannot be made, and says which part of its path is in the way. */
export function makeFolder(folder: string): void {
  if (isMade(folder)) return
  const parent = path.dirname(folder)
  if (parent !== folder) makeFolder(parent)
  if (!isMade(folder)) throw new Fault('file', `cannot make the folder ${folder}: choose another --out`)
}

/** Whether it is there now; false where what it would lie in is not. */
function isMade(folder: string): boolean {
  try {
    mkdirSync(folder)
    return true
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException
    if (code === 'ENOENT' || code === 'ENOTDIR') return false
    if (code !== 'EEXIST') throw new Fault('file', `cannot make the folder ${folder}: ${reason(error)}`)
    if (statSync(folder, { throwIfNoEntry: false })?.isDirectory()) return true
    throw new Fault('file', `${folder} is a file, but results need a folder: choose another --out`)
  }
}
