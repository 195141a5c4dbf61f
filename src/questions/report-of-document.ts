/** What is told of a result document, whichever command made it: its report, its first screens, and what its page holds. */

import { headOf } from '../answers/warnings.js'
import type { Shown } from '../report/front.js'
import type { Report } from '../report/report.js'
import type { Screen } from '../report/screen.js'
import type { DocumentOf, ResultDocument } from './charts-of-document.js'
import { compareScreen } from './compare/first-screen.js'
import { compareFront } from './compare/front.js'
import { compareOnPage } from './compare/on-page.js'
import { compareReport } from './compare/report.js'
import { fitScreen } from './fit/first-screen.js'
import { fitFront } from './fit/front.js'
import { fitReport } from './fit/report.js'
import { runScreen } from './run/first-screen.js'
import { runFront } from './run/front.js'
import { runOnPage } from './run/on-page.js'
import { runReport } from './run/report.js'
import { sizeScreen } from './size/first-screen.js'
import { sizeFront } from './size/front.js'
import { sizeReport } from './size/report.js'
import { sweepScreen } from './sweep/first-screen.js'
import { sweepFront } from './sweep/front.js'
import { sweepReport } from './sweep/report.js'
import { validateScreen } from './validate/first-screen.js'
import { validateFront } from './validate/front.js'
import { validateReport } from './validate/report.js'

/** What a question says of its document. */
interface Told<Document> {
  report: (document: Document) => Report
  /** The first screen of the terminal, and what that of the page shows beside its sentences. */
  screen: (document: Document) => Screen
  front: (document: Document) => Shown
  /** What its page holds, where that is less than the document. */
  onPage?: (document: Document) => Document
}

const told: { [Command in ResultDocument['command']]: Told<DocumentOf<Command>> } = {
  run: { report: runReport, screen: runScreen, front: runFront, onPage: runOnPage },
  compare: { report: compareReport, screen: compareScreen, front: compareFront, onPage: compareOnPage },
  size: { report: sizeReport, screen: sizeScreen, front: sizeFront },
  sweep: { report: sweepReport, screen: sweepScreen, front: sweepFront },
  fit: { report: fitReport, screen: fitScreen, front: fitFront },
  validate: { report: validateReport, screen: validateScreen, front: validateFront },
}

/** Commands whose documents have a report. */
export const reported = Object.keys(told)

/** Its report, headed by what must be known before its figures are read. */
export function reportOf<Command extends ResultDocument['command']>(document: DocumentOf<Command>): Report {
  const head = headOf(document)
  const { report, front } = told[document.command as Command]
  return {
    ...report(document),
    ...(head ? { head } : {}),
    // the page says the sentences of the terminal's first screen
    front: { screen: screenOf(document), ...front(document) },
  }
}

/** Its first screen. */
export const screenOf = <Command extends ResultDocument['command']>(document: DocumentOf<Command>): Screen =>
  told[document.command as Command].screen(document)

/** The document as its page holds it, for the programs that draw there: whole, where it is of usual size. */
export const onPage = <Command extends ResultDocument['command']>(
  document: DocumentOf<Command>,
): DocumentOf<Command> => told[document.command as Command].onPage?.(document) ?? document
