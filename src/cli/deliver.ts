/** Hands a finished document over, whichever study it is of: printed as asked, and written with its report and pictures. */

import path from 'node:path'
import type { Answer } from '../answers/made.js'
import type { Warned } from '../answers/warning.js'
import { errorsOf, titleOf } from '../answers/warnings.js'
import type { ResultDocument } from '../questions/charts-of-document.js'
import { reportOf, screenOf } from '../questions/report-of-document.js'
import type { Report } from '../report/report.js'
import { screenText } from '../report/screen-text.js'
import { terminalReport } from '../report/terminal.js'
import { exits, type Io, screenStyle, textStyle } from './io.js'
import type { SimulationOptions } from './options.js'
import { sayWhatIsNotCopied, shownPath } from './result-folder.js'
import type { CommandScenario } from './scenario.js'
import { isWrittenBy } from './written.js'

/** Where to, and how. */
interface Delivery {
  folder: string
  loaded: CommandScenario
  options: Pick<SimulationOptions, 'json' | 'quiet' | 'files' | 'full'>
  io: Io
}

/** Prints the document of an answer and writes its files. Throws `Fault` `file`; then what was there stays. */
export async function deliver(
  { document, rows }: Answer<ResultDocument>,
  { folder, loaded, options, io }: Delivery,
): Promise<void> {
  const report = print(document, options, io)
  if (!options.files) return
  const { filesOfStudy, writeResults } = await import('./result-files.js')
  // questions about one line as it is, or beside its like: what is seen there can be tried
  const isTried = isWrittenBy('try.html', document.command)
  const pageOf = isTried ? (await import('./make-try.js')).pageOf : null
  await writeResults(folder, {
    ...{ document, report, others: () => filesOfStudy(rows, loaded) },
    tryPage: (script) => pageOf?.(loaded, script) ?? null,
  })
  if (!options.quiet) sayWhatIsNotCopied(loaded, isTried, io)
  sayWhere(folder, options, io)
}

/** Prints a document as asked: as JSON, or all tables of its report, or the first screen. Returns how to have the report. */
export function print(
  document: ResultDocument,
  { json, quiet, full }: Delivery['options'],
  io: Io,
): () => Report {
  const whole = full && !json && !quiet ? reportOf(document) : null
  if (json) io.stdout.write(`${JSON.stringify(document, null, 2)}\n`)
  else if (whole) io.stdout.write(terminalReport(whole, textStyle(io)))
  else if (!quiet) io.stdout.write(`${screenText(screenOf(document), screenStyle(io))}All tables: --full.\n`)
  return () => whole ?? reportOf(document)
}

/** Says where the report is, unless nothing but errors is to be printed. */
export function sayWhere(
  folder: string,
  { json, quiet, full }: Delivery['options'],
  { stdout, cwd }: Io,
): void {
  if (json || quiet) return
  stdout.write(`${full ? '\n' : ''}Report: ${shownPath(path.join(folder, 'report.html'), cwd)}\n`)
}

/**
 * The exit code of an answer: 3 where what it is about cannot work as described, unless the user wants the figures anyway, which is said
 * on standard error, also where no answer is printed.
 */
export function exitOf(
  { document, isMet, cannotWork }: Answer<Warned>,
  { anyway }: { anyway?: boolean },
  { stderr }: Io,
): number {
  if (!cannotWork || anyway) return isMet ? exits.done : exits.requirement
  const errors = errorsOf(document)
  const named = errors.map(({ code }) => code).join(', ')
  stderr.write(
    `error: ${titleOf(errors).replace(/\.$/, '')} (${named}). With --anyway the exit code ignores this.\n`,
  )
  return exits.scenario
}
