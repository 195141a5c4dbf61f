/** The first screen of a result document. */

import type { Screen } from '../report/screen.js'
import type { DocumentOf, ResultDocument } from './charts-of-document.js'
import { compareScreen } from './compare/first-screen.js'
import { fitScreen } from './fit/first-screen.js'
import { runScreen } from './run/first-screen.js'
import { sizeScreen } from './size/first-screen.js'
import { sweepScreen } from './sweep/first-screen.js'
import { validateScreen } from './validate/first-screen.js'

const screens: {
  [Command in ResultDocument['command']]: (document: DocumentOf<Command>) => Screen
} = {
  ...{ run: runScreen, compare: compareScreen, size: sizeScreen, sweep: sweepScreen },
  ...{ fit: fitScreen, validate: validateScreen },
}

/** Its first screen. */
export const screenOf = <Command extends ResultDocument['command']>(document: DocumentOf<Command>): Screen =>
  screens[document.command as Command](document)
