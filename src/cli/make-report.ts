/** The work of `tapeshift report`: read a result, make its page, write it. */

import { existsSync, realpathSync } from 'node:fs'
import path from 'node:path'
import { reportPage } from '../page/html.js'
import { chartsOf, type ResultDocument } from '../questions/charts-of-document.js'
import { onPage, reported, reportOf } from '../questions/report-of-document.js'
import { faultIn } from '../questions/shape-of-document.js'
import { renderAll } from '../report/png.js'
import { Fault, misuse } from '../scenario/fault.js'
import { shown } from '../scenario/printable.js'
import { readText, writeWhole } from './files.js'
import { exits, type Io } from './io.js'
import { programs } from './page-script.js'
import { shownPath } from './result-folder.js'
import { isWrittenBy } from './written.js'

/** The format of the documents that this program makes. */
const format = 'tapeshift-result/1'

export interface ReportOptions {
  /** Page to write. */
  out?: string
}

/** Makes the page of the result `name`; returns the exit code. */
export async function makeReport(name: string, options: ReportOptions, io: Io): Promise<number> {
  if (options.out === '') throw misuse('--out needs the name of a file')
  const folder = name === '-' ? io.cwd : path.dirname(path.resolve(io.cwd, name))
  const file =
    options.out === undefined ? path.join(folder, 'report.html') : path.resolve(io.cwd, options.out)
  if (name !== '-' && isSame(file, path.resolve(io.cwd, name)))
    throw misuse(`the report would overwrite ${name}: choose another --out`)
  const said = name === '-' ? 'standard input' : name
  const document = documentOf(await readText(name, 'the result.json', io), said)
  await writeWhole(file, await pageOf(document, said, existsSync(path.join(path.dirname(file), 'try.html'))))
  io.stdout.write(`Report: ${shownPath(file, io.cwd)}\n`)
  return exits.done
}

/** The page of a document, the same as the command that made it has written. */
async function pageOf(document: ResultDocument, said: string, hasTryPage: boolean): Promise<string> {
  try {
    const pictures = await renderAll(chartsOf(document))
    return reportPage(reportOf(document), pictures, {
      ...{ document: onPage(document), script: programs().page },
      ...(hasTryPage && isWrittenBy('try.html', document.command) ? { tryPage: 'try.html' } : {}),
    })
  } catch (error) {
    if (!(error instanceof TypeError || error instanceof RangeError)) throw error
    throw notWhole(said, document.command, 'its parts contradict each other')
  }
}

/** The document that a text holds, whole. Throws `Fault` `file` where it is none of which there is a report. */
function documentOf(text: string, said: string): ResultDocument {
  let document: Partial<ResultDocument> | null
  try {
    document = JSON.parse(text)
  } catch {
    throw new Fault('file', `cannot read ${said}: it is not JSON; give the path of a result.json`)
  }
  if (document?.format !== format) {
    const found = document?.format === undefined ? 'no format' : `format ${shown(document.format)}`
    throw new Fault('file', `cannot read ${said}: it has ${found}, but this version reads ${format}`)
  }
  if (!(reported as readonly unknown[]).includes(document.command))
    throw new Fault(
      'file',
      `cannot read ${said}: it is a result of the command ${shown(document.command)}; reports exist for ${reported.join(', ')}`,
    )
  const made = document as ResultDocument
  const fault = faultIn(made, made.command)
  if (fault !== null) throw notWhole(said, made.command, fault)
  return made
}

/** What has been altered or cut off is not mended: the study makes it again. */
const notWhole = (said: string, command: string, fault: string): Fault =>
  new Fault(
    'file',
    `cannot make a report of ${said}: the document is damaged: ${fault}; make the result again with \`tapeshift ${command}\``,
  )

/** One and the same file, by whatever name. */
function isSame(a: string, b: string): boolean {
  if (a === b) return true
  try {
    return realpathSync(a) === realpathSync(b)
  } catch {
    return false
  }
}
