/** What the first screens of all reports say alike: the question, what the answer rests on, what limits the line, what to do next. */

import { entriesOf } from '../catalogue/figure.js'
import { type StateKey, stateLabel } from '../catalogue/states.js'
import { has } from '../kinds/traits.js'
import { percentText, sentences } from '../report/format.js'
import type { About } from './about.js'
import type { EquipmentResult, LineResult } from './line-result.js'
import { type Assumed, isUnsourced } from './rests-on.js'

/** Luck is only one reason to be wrong: what was entered, and whether anybody has held the model against a plant. */
export function restingOn(assumed: readonly Assumed[], about: About | undefined, isDrawn = false): string {
  const weak = assumed.filter(isUnsourced).length
  const open = isDrawn
    ? 'It includes uncertainty only for inputs that say how well they are known. It cannot say whether the others are right'
    : 'It cannot say whether the inputs are right'
  const inputs =
    weak === 0
      ? open
      : `${open}; ${weak === 1 ? '1 value was' : `${weak} values were`} assumed without a published source`
  const validated = about?.validatedBy
    ? `Validated by: ${about.validatedBy}`
    : 'Not validated: the scenario names no plant data with which the model was compared.'
  return `${inputs}. ${validated}`
}

const share = (piece: EquipmentResult, key: StateKey) => piece.states[key]?.mean ?? 0

/** The three states that take most of a piece's time but work and breaks, in words. */
function otherStates(piece: EquipmentResult): string {
  return entriesOf(piece.states)
    .filter(([key, { mean }]) => key !== 'working' && key !== 'on-break' && (mean ?? 0) >= 0.0005)
    .sort((a, b) => b[1].mean! - a[1].mean!)
    .slice(0, 3)
    .map(([key, { mean }]) => `${stateLabel(key)} ${percentText(mean!, 2)}`)
    .join(', ')
}

/** The piece that limits a line: the one with least to spare by hand, else the sealer that works most. */
export function limitingPiece(
  { equipment }: Pick<LineResult, 'equipment'>,
  byHand: string | null | undefined,
): [string, EquipmentResult] | null {
  const named = byHand ? equipment[byHand] : undefined
  if (named) return [byHand!, named]
  const sealers = Object.entries(equipment).filter(([, piece]) => has(piece, 'tapes'))
  return sealers.sort((a, b) => share(b[1], 'working') - share(a[1], 'working'))[0] ?? null
}

/**
 * What limits a line, by hand and in the simulation: `By hand the line keeps up with what arrives; least to spare has sealer. It works
 * 70 % of the shift; the rest: blocked 12 %. At the start of the line, packing is blocked 3 % of the time.`
 */
export function limitingText(
  result: Pick<LineResult, 'equipment' | 'arrivals'>,
  byHand: { bottleneck: string | null; shareAdmitted?: number } | null,
): string {
  const found = limitingPiece(result, byHand?.bottleneck)
  if (found === null) return ''
  const [name, piece] = found
  const others = otherStates(piece)
  const isOnly = Object.values(result.equipment).filter((piece) => has(piece, 'tapes')).length < 2
  const held = Object.entries(result.arrivals).flatMap(([source, { blocked }]) =>
    blocked?.mean && blocked.mean >= 0.0005
      ? `${source} is blocked ${percentText(blocked.mean, 2)} of the time`
      : [],
  )
  return sentences(
    `${whyThis(name, byHand, isOnly)}. It works ${percentText(share(piece, 'working'), 2)} of the shift${others ? `; the rest${share(piece, 'on-break') >= 0.0005 ? ', without breaks' : ''}: ${others}` : ''}.`,
    held.length > 0 && `At the start of the line: ${held.join(', ')}.`,
  ).join(' ')
}

function whyThis(name: string, byHand: Parameters<typeof limitingText>[1], isOnly: boolean): string {
  if (byHand?.bottleneck !== name)
    return isOnly ? `${name} is the only sealer` : `${name} works most of all sealers`
  const { shareAdmitted } = byHand
  if (shareAdmitted === undefined) return `By hand calculation, ${name} has least spare capacity`
  return shareAdmitted < 1
    ? `By hand calculation, ${name} has least spare capacity and takes ${percentText(shareAdmitted, 2)} of the arrivals`
    : `By hand calculation the line keeps up with the arrivals; ${name} has least spare capacity`
}

/** Errors come before all else: one of each kind. */
export function putRightFirst(about: About | undefined): string[] {
  const errors = about?.findings.filter(({ severity }) => severity === 'error') ?? []
  return [...new Map([...errors].reverse().map((each) => [each.code, each])).values()]
    .reverse()
    .slice(0, 2)
    .map(({ message, fix }) => `Fix first what the check calls an error: ${message} Fix: ${fix}.`)
}

/** What nobody measured, and whether anybody has held the model against a plant. */
export function measureFirst(assumed: readonly Assumed[], about: About | undefined): string[] {
  const weak = assumed.filter(isUnsourced)
  const named = weak.slice(0, 3).map(({ path }) => path)
  return sentences(
    weak.length > 0 &&
      `Enter your own value for ${named.join(', ')}${weak.length > 3 ? ` and ${weak.length - 3} more` : ''}: assumed without a published source.`,
    !about?.validatedBy &&
      'Before you spend money, compare the model with a record of the plant and say so in the scenario (study: validated-by).',
  )
}
