/** Findings on what the scenario does not say: stops that are not named, and checks that could not be made. */

import { headsOf } from '../../kinds/sealer/heads.js'
import { has } from '../../kinds/traits.js'
import type { Rule } from '../finding.js'
import { unnamedStops } from '../unnamed.js'
import { certificateOf } from './case.js'

const named = (names: readonly string[]) => names.map((name) => `\`${name}\``).join(', ')

export const interlockFindings: Rule = ({ scenario }, tell) => {
  const driven = Object.entries(scenario.line).filter(
    ([, piece]) => has(piece, 'tapes') || (has(piece, 'conveys') && piece.carries !== 'gravity'),
  )
  const conveyor = driven.find(([, piece]) => has(piece, 'conveys'))
  if (!conveyor || Object.keys(scenario.line).length < 2) return
  tell(
    'note',
    'interlock',
    ['line', conveyor[0]],
    `The model stops each of ${named(driven.map(([name]) => name))} when what it feeds stands: wire them so, for no conveyor may feed one that stands.`,
    'ILO code of practice on conveyors',
    'interlocks against the direction of travel',
  )
}

export const unnamedStopFindings: Rule = ({ scenario }, tell) => {
  const missing = unnamedStops(scenario).map(({ stop, pieces }) => `${stop} ${named(pieces)}`)
  if (missing.length > 0)
    tell(
      'note',
      'stops-not-named',
      ['line'],
      `The scenario names no ${missing.join('; no ')}. None happen, here or in a run.`,
      'definition of the format',
      'name the stops that your line has',
    )
}

/** What could not be checked, each with the key that is missing. */
export const uncheckedFindings: Rule = ({ scenario }, tell) => {
  const { line, cases, closure, site, tape } = scenario
  const kinds = Object.entries(cases)
  const without = (is: (kind: (typeof kinds)[number][1]) => boolean) =>
    kinds.filter(([, kind]) => is(kind)).map(([name]) => name)
  const missing: string[] = []
  const some = (names: readonly string[], what: (names: string) => string) => {
    if (names.length > 0) missing.push(what(named(names)))
  }
  if (scenario.target === undefined) missing.push('whether a target is held (target)')
  some(
    without((kind) => certificateOf(kind) === null),
    (names) => `what the board of ${names} allows (board: wall, and ect or burst)`,
  )
  some(
    without(({ weight }) => weight === undefined),
    (names) => `weights of ${names} (weight)`,
  )
  some(
    Object.entries(line)
      .filter(([, piece]) => has(piece, 'conveys') && piece['roller-pitch'] === undefined)
      .map(([name]) => name),
    (names) => `rollers under the shortest case on ${names} (roller-pitch)`,
  )
  const sealers = Object.entries(line).filter(([, piece]) => has(piece, 'tapes'))
  if (sealers.length > 0) {
    some(
      without((kind) => kind['ships-by'] === undefined),
      (names) => `what carriers ask of ${names} (ships-by)`,
    )
    some(
      without(({ overfill, recycled }) => overfill === undefined && recycled === undefined),
      (names) => `overfill and recycled board of ${names} (overfill, recycled)`,
    )
    some(
      sealers
        .filter(
          ([, piece]) => has(piece, 'tapes') && headsOf(piece).some(([, { drum }]) => drum === undefined),
        )
        .map(([name]) => name),
      (names) => `whether the roll fits the heads of ${names} (drum)`,
    )
    if (!closure?.reference) missing.push('the closure index (closure: reference)')
    if (closure?.['seam-gap'] === undefined || closure['centring-error'] === undefined)
      missing.push('tape on the weaker flap (closure: seam-gap and centring-error)')
    if (!site?.temperature || !tape['applies-at'])
      missing.push('temperature of the site against the tape (site: temperature; tape: applies-at)')
    if (tape.elongation === undefined) missing.push('stretch against elongation (tape: elongation)')
    if (tape.tensile === undefined || !closure?.load || !('newtons' in closure.load))
      missing.push('load against the strength of a strip (tape: tensile; closure: load as a force)')
    if (tape.adhesion === undefined || tape.shear === undefined)
      missing.push('what the data sheet says of holding (tape: adhesion and shear)')
  }
  if (missing.length > 0)
    tell(
      'note',
      'not-checked',
      [],
      `Not checked, because the scenario does not say: ${missing.join('; ')}.`,
      'keys that may be left out',
      'add what you know',
    )
}
