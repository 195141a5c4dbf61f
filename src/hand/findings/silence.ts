/** Findings on what the scenario does not say: stops that are not named, and checks that could not be made. */

import { headsOf } from '../../kinds/sealer/heads.js'
import { has } from '../../kinds/traits.js'
import type { Scenario } from '../../scenario/schema.js'
import type { Rule } from '../finding.js'
import { hasSealer } from '../pace.js'
import { unnamedStops } from '../unnamed.js'
import { certificateOf } from './case.js'

/** Names of one thing that are told; of more than twice as many the rest is counted. */
const mostNamed = 5

const named = (names: readonly string[]): string =>
  names.length > 2 * mostNamed
    ? `${named(names.slice(0, mostNamed))} and ${names.length - mostNamed} others`
    : names.map((name) => `\`${name}\``).join(', ')

export const interlockFindings: Rule = ({ scenario }, tell) => {
  const driven = Object.entries(scenario.line).filter(
    ([, piece]) => has(piece, 'tapes') || (has(piece, 'conveys') && piece.carries !== 'gravity'),
  )
  const conveyor = driven.find(([, piece]) => has(piece, 'conveys'))
  if (!conveyor || Object.keys(scenario.line).length < 2) return
  tell.note(
    'interlock',
    ['line', conveyor[0]],
    `The model stops each of ${named(driven.map(([name]) => name))} when the piece after it stops. Wire them in the same way: no conveyor may feed a stopped one.`,
    'ILO code of practice on conveyors',
    'interlock each conveyor with the piece after it',
  )
}

export const unnamedStopFindings: Rule = ({ scenario }, tell) => {
  const missing = unnamedStops(scenario).map(({ stop, pieces }) => `${stop} ${named(pieces)}`)
  if (missing.length > 0)
    tell.note(
      'stops-not-named',
      ['line'],
      `The scenario names no ${missing.join('; no ')}. None happen, here or in a run.`,
      'definition of the format',
      'add the stops that your line has',
    )
}

/** What could not be checked, each with the key that is missing. */
export const uncheckedFindings: Rule = ({ scenario }, tell) => {
  const missing = [
    ...(scenario.target === undefined ? ['whether a target is reached (target)'] : []),
    ...uncheckedCases(scenario),
    ...some(
      scenario.line,
      (piece) => has(piece, 'conveys') && piece['roller-pitch'] === undefined,
      (names) => `rollers under the shortest case on ${names} (roller-pitch)`,
    ),
    ...(hasSealer(scenario) ? uncheckedTaping(scenario) : []),
  ]
  if (missing.length > 0)
    tell.note(
      'not-checked',
      [],
      `Not checked, because the scenario does not say: ${missing.join('; ')}.`,
      'keys that may be left out',
      'add what you know',
    )
}

/** `what` is said of the names of the entries of which something is so, where there are such. */
function some<Entry>(
  all: Readonly<Record<string, Entry>>,
  is: (entry: Entry) => boolean,
  what: (names: string) => string,
): string[] {
  const names = Object.entries(all).flatMap(([name, entry]) => (is(entry) ? [name] : []))
  return names.length > 0 ? [what(named(names))] : []
}

const uncheckedCases = ({ cases }: Scenario): string[] => [
  ...some(
    cases,
    (kind) => certificateOf(kind) === null,
    (names) => `what the board of ${names} allows (board: wall, and ect or burst)`,
  ),
  ...some(
    cases,
    ({ weight }) => weight === undefined,
    (names) => `weights of ${names} (weight)`,
  ),
]

/** Where something tapes. */
function uncheckedTaping({ cases, closure, line, site, tape }: Scenario): string[] {
  const unknown: [isUnknown: boolean, what: string][] = [
    [!closure?.reference, 'the closure index (closure: reference)'],
    [
      closure?.['seam-gap'] === undefined || closure['centring-error'] === undefined,
      'tape on the weaker flap (closure: seam-gap and centring-error)',
    ],
    [
      !site?.temperature || !tape['applies-at'],
      'temperature of the site against the tape (site: temperature; tape: applies-at)',
    ],
    [tape.elongation === undefined, 'stretch against elongation (tape: elongation)'],
    [
      tape.tensile === undefined || !closure?.load || !('newtons' in closure.load),
      'load against the strength of a strip (tape: tensile; closure: load as a force)',
    ],
    [
      tape.adhesion === undefined || tape.shear === undefined,
      'holding power by data sheet (tape: adhesion and shear)',
    ],
  ]
  return [
    ...some(
      cases,
      (kind) => kind['ships-by'] === undefined,
      (names) => `rules of carriers for ${names} (ships-by)`,
    ),
    ...some(
      cases,
      ({ overfill, recycled }) => overfill === undefined && recycled === undefined,
      (names) => `overfill and recycled board of ${names} (overfill, recycled)`,
    ),
    ...some(
      line,
      (piece) => has(piece, 'tapes') && headsOf(piece).some(([, { drum }]) => drum === undefined),
      (names) => `whether the roll fits the heads of ${names} (drum)`,
    ),
    ...unknown.flatMap(([isUnknown, what]) => (isUnknown ? [what] : [])),
  ]
}
