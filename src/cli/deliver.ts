/** Hands a finished document over, whichever study it is of: printed as asked, and written with its report and pictures. */
import path from 'node:path'
import type { Answer } from '../answers/answer.js'
import type { ResultDocument } from '../questions/charts-of-document.js'
import { reportOf } from '../questions/report-of-document.js'
import { terminalReport } from '../report/terminal.js'
import { type Io, textStyle } from './io.js'
import type { SimulationOptions } from './options.js'
import { sayWhatIsNotCopied, shownPath } from './result-folder.js'
import type { CommandScenario } from './scenario.js'

/** Where to, and how. */
interface Delivery {
  folder: string
  loaded: CommandScenario
  options: Pick<SimulationOptions, 'json' | 'quiet' | 'files'>
  io: Io
}

/** What draws takes long to load: asked for early, it is loaded while threads simulate. */
export const loadFiles = ({ files }: Pick<SimulationOptions, 'files'>): void => {
  if (files) void import('./result-files.js')
}

/** Prints the document of an answer and writes its files. Throws `Fault` `file`; then what was there stays. */
export async function deliver(
  { document, rows }: Answer<ResultDocument>,
  { folder, loaded, options: { json, quiet, files }, io }: Delivery,
): Promise<void> {
  const isShown = !json && !quiet
  if (json) io.stdout.write(`${JSON.stringify(document, null, 2)}\n`)
  if (!isShown && !files) return
  const report = reportOf(document)
  if (isShown) io.stdout.write(terminalReport(report, textStyle(io)))
  if (!files) return
  const { writeResults } = await import('./result-files.js')
  await writeResults(folder, loaded, { rows, report, document })
  if (!quiet) sayWhatIsNotCopied(loaded, io)
  if (isShown) io.stdout.write(`\nReport: ${shownPath(path.join(folder, 'report.html'), io.cwd)}\n`)
}
