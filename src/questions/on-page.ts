/** What the programs of a page are given of its document, whichever command made it: what they draw. */
import type { DocumentOf, ResultDocument } from './charts-of-document.js'
import { compareOnPage } from './compare/on-page.js'
import { runOnPage } from './run/on-page.js'

const whole = <Of>(document: Of): Of => document

const held: {
  [Command in ResultDocument['command']]: (document: DocumentOf<Command>) => DocumentOf<Command>
} = {
  ...{ run: runOnPage, compare: compareOnPage, size: whole, sweep: whole, fit: whole, validate: whole },
}

/** The document as its page holds it: whole, where it is of usual size. */
export const onPage = <Command extends ResultDocument['command']>(
  document: DocumentOf<Command>,
): DocumentOf<Command> => held[document.command as Command](document)
