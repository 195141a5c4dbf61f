/** Where the files of a result may be written, and how a person is told of them. */

import path from 'node:path'
import { misuse } from '../scenario/fault.js'
import { printable } from '../scenario/printable.js'
import type { Io } from './io.js'
import type { CommandScenario } from './scenario.js'
import { ownFiles } from './written.js'

/** A recorded log longer than this is not copied beside the report, bytes. */
export const mostCopied = 10_000_000

/** No input may lie where a result is written, nor bear the name of one: it would be lost. */
export function refuseToOverwrite(folder: string, name: string, loaded: CommandScenario, io: Io): void {
  const home = name === '-' ? io.cwd : path.dirname(path.resolve(io.cwd, name))
  const copied = [...loaded.files.keys(), ...loaded.logs.keys()]
  for (const file of copied)
    if (ownFiles.includes(path.normalize(file)) || path.normalize(file).startsWith(`charts${path.sep}`))
      throw misuse(
        `the scenario reads \`${printable(file)}\`, but the results use this name: rename that file, or add --no-files`,
      )
  const inputs = [
    ...(name === '-' ? [] : [path.resolve(io.cwd, name)]),
    ...copied.map((file) => path.resolve(home, file)),
  ]
  const outputs = new Set([...ownFiles, ...copied].map((file) => path.join(folder, file)))
  const lost = inputs.find((input) => outputs.has(input))
  if (lost !== undefined)
    throw misuse(`the results would overwrite ${printable(shownPath(lost, io.cwd))}: choose another --out`)
}

/** The logs that are longer. */
export const longLogsOf = (logs: CommandScenario['logs']) =>
  [...logs].filter(([, { bytes }]) => bytes > mostCopied)

/** A long log stays where it is: said, because the scenario beside the report asks for it, and where there `isTryPage` otherwise, the page carries it. */
export function sayWhatIsNotCopied({ logs }: CommandScenario, isTryPage: boolean, io: Io): void {
  const long = longLogsOf(logs)
  for (const [name, { bytes }] of long)
    io.stderr.write(
      `note: ${printable(name)} (${Math.ceil(bytes / 1e6)} MB) was not copied: put it beside scenario.yaml before you simulate that scenario\n`,
    )
  if (isTryPage && long.length > 0)
    io.stderr.write(
      `note: try.html was not written: a page carries logs of at most ${mostCopied / 1e6} MB; cut the log to fewer days for one\n`,
    )
}

/** A file as a person finds it: from the folder that they stand in, where it lies below that. */
export function shownPath(file: string, cwd: string): string {
  const relative = path.relative(cwd, file)
  return relative.startsWith('..') ? file : relative
}
