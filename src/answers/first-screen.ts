/** What the first screens of all answers say alike: what `check` finds, what limits the line, what the answer rests on, the safety line. */

import { entriesOf, type Figures } from '../catalogue/figure.js'
import { type StateKey, type StopKind, states } from '../catalogue/states.js'
import { codes } from '../hand/finding.js'
import { has } from '../kinds/traits.js'
import { counted, durationText, grouped, listed, percent, percentText, sentences } from '../report/format.js'
import type { Said, Tone } from '../report/screen.js'
import { labelOf } from '../scenario/labels.js'
import { cautionLine } from '../trade/cautions.js'
import type { EquipmentResult, LineResult } from './line-result.js'
import type { StudyDocument } from './made.js'
import { isUnsourced } from './rests-on.js'
import { byKey, type Warning } from './warning.js'
import { errorsOf } from './warnings.js'

/** Keys, designs and steps that are named before the rest is counted. */
const mostNamed = 3

/** `a, b, c and 4 more`. */
export const firstOf = (names: readonly string[], most = mostNamed): string =>
  names.length <= most ? listed(names) : `${names.slice(0, most).join(', ')} and ${names.length - most} more`

/** A part where there is something to say. */
export const part = (
  head: string,
  lines: readonly (string | false | null | undefined)[],
  tone?: Tone,
): Said[] => {
  const said = sentences(...lines)
  return said.length === 0 ? [] : [{ head, lines: said, ...(tone ? { tone } : {}) }]
}

/** Errors that are told before they are counted. */
const mostErrors = 2

/** What `check` calls wrong: errors with their fix, prices that are left out, and warnings by their code. */
export function checkParts(result: StudyDocument): Said[] {
  const { warnings = [], about } = result
  const errors = errorsOf(result)
  const rest = errors.length - mostErrors
  const prices = warnings.filter(({ severity }) => severity === 'warning')
  return [
    ...part(
      'Errors',
      [
        ...errors.slice(0, mostErrors).map(errorText),
        rest > 0 && `${counted(rest, 'more kind')} of error: see tapeshift check.`,
      ],
      'error',
    ),
    ...part(
      'Prices',
      prices.slice(0, 1).map(({ text }) => text),
      'warning',
    ),
    ...part(
      'Check',
      [warningsText(about?.findings.filter(({ severity }) => severity === 'warning') ?? [])],
      'warning',
    ),
  ]
}

/** `What was found. Fix: a larger drum. (help: roll-does-not-fit, 3 times, worst at a, b)` */
function errorText({ code, count, paths, designs, text, fix }: Warning): string {
  const where = designs.length > 0 ? `, in ${firstOf(designs)}` : ''
  const often = count > 1 ? `, ${grouped(count, 0)} times, worst at ${listed(paths)}` : ''
  return `${plain(text)} Fix: ${plain(fix)}. (help: ${code}${where}${often})`
}

/** Each as a sentence; the first stands behind a colon. */
export const inSentences = (all: readonly string[]): string =>
  all
    .map((each, index) => `${index === 0 ? each : `${each.charAt(0).toUpperCase()}${each.slice(1)}`}.`)
    .join(' ')

/** Words of the check without the marks of a path. */
export const plain = (text: string): string => text.replaceAll('`', '')

/** `2 warnings: a closure holds less than the reference (cases.bars, cases.flakes).` */
function warningsText(findings: readonly { code: string; path: string }[]): string | null {
  if (findings.length === 0) return null
  const meanings: Readonly<Record<string, string>> = codes
  const byCode = byKey(findings, ({ code }) => code)
  const told = [...byCode].slice(0, mostNamed).map(([code, all]) => {
    const where = [...new Set(all.map(({ path }) => path))].filter((path) => path !== '')
    return `${meanings[code] ?? code}${where.length > 0 ? ` (${firstOf(where, 2)})` : ''}`
  })
  const more = byCode.size - mostNamed
  const all = [...told, ...(more > 0 ? [`${counted(more, 'more kind')} of warning`] : [])]
  return `${counted(findings.length, 'warning')}: ${inSentences(all)}`
}

/** What stops are called on the first screen. */
const stopWords: Record<StopKind, string> = {
  jam: 'jams',
  tape: 'tape changes',
  size: 'changeovers',
  breakdown: 'breakdowns',
  blade: 'blade service',
  planned: 'planned stops',
}

/** A state in the words of the trade; null of breaks, which nobody is to blame for. */
function tradeWord(key: StateKey): string | null {
  if (key === 'working') return 'running'
  if (key === 'waiting') return 'starved'
  if (key === 'blocked') return 'blocked'
  const { stop } = states[key]
  return stop ? stopWords[stop] : null
}

/** Losses of a piece that are named beside its running time, and less than this of the shift shows in no decision. */
const [mostLosses, leastLoss] = [3, 0.0005]

/** `running 57 %, starved 28 %, planned stops 15 %`. */
function timesText(of: Figures<StateKey>): string {
  const shares = new Map<string, number>()
  for (const [key, { mean }] of entriesOf(of)) {
    const word = tradeWord(key)
    if (word !== null) shares.set(word, (shares.get(word) ?? 0) + (mean ?? 0))
  }
  const lost = [...shares]
    .filter(([word, share]) => word !== 'running' && share >= leastLoss)
    .sort((a, b) => b[1] - a[1])
  return [['running', shares.get('running') ?? 0] as const, ...lost.slice(0, mostLosses)]
    .map(([word, share]) => `${word} ${percent(share)}`)
    .join(', ')
}

/** What limits a line, by hand and in the simulation; empty where nothing is known. */
export function limitsText(
  line: Pick<LineResult, 'equipment' | 'arrivals'>,
  byHand: { bottleneck: string | null; shareAdmitted?: number } | null,
): string {
  const found = limitingPiece(line, byHand?.bottleneck)
  if (found === null) return ''
  const [name, piece] = found
  const blocked = Object.entries(line.arrivals).flatMap(([source, { blocked: of }]) =>
    of?.mean && of.mean >= leastLoss ? [{ source, share: of.mean }] : [],
  )
  const upTo = blocked.length > 1 ? 'up to ' : ''
  return sentences(
    `${why(name, byHand)}.`,
    `Its time in the simulation: ${timesText(piece.states)} of the shift.`,
    blocked.length > 0 &&
      `Arrivals from ${firstOf(blocked.map(({ source }) => source))} are blocked ${upTo}${percent(Math.max(...blocked.map(({ share }) => share)))} of the time.`,
  ).join(' ')
}

function why(name: string, byHand: Parameters<typeof limitsText>[1]): string {
  if (byHand?.bottleneck !== name) return `The sealer that runs most is ${name}`
  const { shareAdmitted } = byHand
  if (shareAdmitted === undefined) return `By hand calculation ${name} has least to spare`
  return shareAdmitted < 1
    ? `By hand calculation ${name} can take only ${percentText(shareAdmitted, 2)} of the arrivals`
    : `By hand calculation the line takes all arrivals, and ${name} has least to spare`
}

/** Values that a scenario gives and leaves out, as documents tell of them. */
type Values = Pick<StudyDocument, 'assumed' | 'evidence'> & { isDrawn: boolean }

/** How well values are known, and which are assumed without a source. */
export function valuesText({ assumed, evidence, isDrawn }: Values): string {
  const weak = assumed.filter(isUnsourced).map(({ path }) => path)
  // a document of before evidence was told of says nothing of it
  const known =
    evidence === undefined
      ? false
      : evidence.length === 0
        ? 'All values are taken as exact: none has evidence.'
        : `${counted(evidence.length, 'value')} ${evidence.length === 1 ? 'has' : 'have'} evidence${isDrawn ? '; the plus-minus includes the uncertainty of inputs' : ', taken as exact here'}.`
  const [first] = weak
  const such =
    weak.length > 1 ? 'values are assumed without a source, such as' : 'value is assumed without a source:'
  return sentences(
    known,
    first !== undefined && `${grouped(weak.length, 0)} ${such} ${labelOf(first)}.`,
  ).join(' ')
}

/** What the answer rests on: shifts, values and their evidence, and whether anybody has checked the model against a plant. */
export function restsOnPart(
  result: StudyDocument,
  isDrawn: boolean,
  { isEach = false, more = [] }: { isEach?: boolean; more?: readonly (string | false)[] } = {},
): Said[] {
  const { made, shift, about } = result
  return part('Basis', [
    sentences(
      `${isEach ? 'Up to ' : ''}${grouped(made.shifts, 0)} ${shift.campaign > 1 ? 'campaigns' : `shifts of ${durationText(shift.length)}`}${isEach ? ' of each design' : ''}, ${percentText(made.confidence)} confidence.`,
      ...more,
      valuesText({ ...result, isDrawn }),
      about?.validatedBy
        ? `Checked against plant data: ${about.validatedBy}`
        : 'Not checked against plant data.',
    ).join(' '),
  ])
}

/** Steps that are told: more nobody takes at once. */
const mostSteps = 3

/** What to do next, the most pressing first; errors come before all else. */
export const nextPart = (steps: readonly string[], result: Pick<StudyDocument, 'warnings'>): Said[] =>
  part(
    'Next',
    sentences(errorsOf(result).length > 0 && 'Fix the errors first, and simulate again.', ...steps).slice(
      0,
      mostSteps,
    ),
  )

/** It cannot be switched off. */
export const safetyPart: Said[] = [{ head: 'Safety', lines: [cautionLine] }]

/** Mean share of the shift that a piece is in a state. */
export const shareIn = (piece: EquipmentResult, key: StateKey): number => piece.states[key]?.mean ?? 0

/** The piece that limits a line: the one with least to spare by hand, else the sealer that works most. */
export function limitingPiece(
  { equipment }: Pick<LineResult, 'equipment'>,
  byHand: string | null | undefined,
): [string, EquipmentResult] | null {
  const named = byHand ? equipment[byHand] : undefined
  if (named) return [byHand!, named]
  const sealers = Object.entries(equipment).filter(([, piece]) => has(piece, 'tapes'))
  return sealers.sort((a, b) => shareIn(b[1], 'working') - shareIn(a[1], 'working'))[0] ?? null
}
