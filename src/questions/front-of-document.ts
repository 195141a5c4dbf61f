/** What the page of a result document shows on its first screen, whichever command made it. */

import type { Front, Shown } from '../report/front.js'
import type { DocumentOf, ResultDocument } from './charts-of-document.js'
import { compareFront } from './compare/front.js'
import { fitFront } from './fit/front.js'
import { runFront } from './run/front.js'
import { screenOf } from './screen-of-document.js'
import { sizeFront } from './size/front.js'
import { sweepFront } from './sweep/front.js'
import { validateFront } from './validate/front.js'

const fronts: {
  [Command in ResultDocument['command']]: (document: DocumentOf<Command>) => Shown
} = {
  ...{ run: runFront, compare: compareFront, size: sizeFront, sweep: sweepFront },
  ...{ fit: fitFront, validate: validateFront },
}

/** Its first screen, with the sentences of the terminal's. */
export const frontOf = <Command extends ResultDocument['command']>(document: DocumentOf<Command>): Front => ({
  screen: screenOf(document),
  ...fronts[document.command as Command](document),
})
