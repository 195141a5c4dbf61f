/** The report of a study: what its question says of it, with all that studies tell alike. */

import { isCostKey } from '../catalogue/costs.js'
import { entriesOf } from '../catalogue/figure.js'
import { entryAt } from '../catalogue/measures.js'
import { stateKeys, stateLabel } from '../catalogue/states.js'
import { type Cell, figures, words } from '../report/cell.js'
import { durationText, grouped } from '../report/format.js'
import type { Report, Table } from '../report/report.js'
import { inSections } from '../report/sections.js'
import { cautions } from '../trade/cautions.js'
import type { About } from './about.js'
import { checklistTable, type StudyFacts } from './checklist.js'
import { figuresAt } from './figure-at.js'
import { flowText } from './flow.js'
import type { LineResult } from './line-result.js'
import type { ShiftTold, StudyDocument } from './made.js'
import { assumedColumns, assumedRows, isUnsourced, restsOnTable } from './rests-on.js'
import type { Warned } from './warning.js'
import { leftOutNote } from './warnings.js'

/** What a question says of its study. */
interface Told extends Pick<Report, 'subtitle' | 'headline' | 'certainty' | 'tables' | 'limits'> {
  /** Where the scenario asks none. */
  question: string
  /** What is not known of the inputs is in the plus-minus. */
  isDrawn?: boolean
  /** Heads what was assumed. */
  assumed: string
  /** Lines of which figures are shown. */
  lines: readonly LineResult[]
  facts: Pick<StudyFacts, 'trials' | 'estimation'> &
    Partial<Pick<StudyFacts, 'warmUp' | 'hasHand' | 'hasDesigns'>>
}

/** The report of a study. */
export function studyReport(result: StudyDocument, told: Told): Report {
  const { made, display, assumed, about, evidence = [], exact } = result
  const { lines, facts, isDrawn = false, assumed: title, ...said } = told
  const question = about?.purpose ?? about?.question ?? told.question
  return {
    title: made.scenario.title,
    display,
    ...said,
    tables: inSections(told.tables),
    question,
    assumed: { title, columns: assumedColumns, rows: assumedRows(assumed, display) },
    unsourced: assumed
      .filter(isUnsourced)
      .map(({ path, value, basis }) => `${path} = ${flowText(value)} (${basis})`),
    cautions,
    repeat: made.repeat,
    origin: `tapeshift ${made.version} on Node ${made.node}, seed "${made.seed}", scenario sha256 ${made.scenario.sha256}`,
    findings: findingsTable(about),
    given: givenTable(about),
    ...(exact === undefined ? {} : { rests: { table: restsOnTable(evidence, display, isDrawn), exact } }),
    ...(lines.length > 0 ? { definitions: definitionsTable(lines) } : {}),
    checklist: checklistTable({
      ...{ warmUp: null, hasHand: false, hasDesigns: true, ...facts },
      ...{ made, shift: result.shift, about, assumed, question, line: lines[0] ?? null },
    }),
  }
}

/** `200 shifts of 8 h each, seed "7".`: what each of several designs was simulated for. */
export const simulatedEach = ({ made, shift }: Pick<StudyDocument, 'made' | 'shift'>): string =>
  `${grouped(made.shifts, 0)} ${shift.campaign > 1 ? 'campaigns' : `shifts of ${durationText(shift.length)}`} each, seed "${made.seed}".`

/** Errors and warnings of the check; without rows where there are none. */
function findingsTable(about: About | undefined): Table {
  const findings = about?.findings ?? []
  const isOfDesigns = findings.some(({ design }) => design !== null)
  return {
    title: 'Findings of the check',
    note: 'Problems found by hand calculation and by standards, before any simulation. Error: the line cannot work as described. Warning: expect trouble.',
    columns: words(
      ...['finding', 'about', 'problem', 'basis', 'nearest fix'],
      ...(isOfDesigns ? ['design'] : []),
    ),
    rows: findings.map(({ severity, code, path, message, basis, fix, design }) => [
      ...[`${severity}: ${code}`, { path }, message, basis, fix],
      ...(isOfDesigns ? [design ?? 'the scenario itself'] : []),
    ]),
  }
}

/** What the scenario says itself. */
function givenTable(about: About | undefined): Table {
  return {
    title: 'Given by the scenario',
    columns: words('what', 'value'),
    rows: (about?.given ?? []).map(({ path, value }) => [{ path }, value]),
  }
}

/** Every measure of the results once, with its words, its place in the document and its meaning, and the states that occur. */
function definitionsTable(results: readonly LineResult[]): Table {
  const told = results
    .flatMap((result) => figuresAt(result))
    .map(([path, figure]) => ({ ...entryAt(path), ...figure, isState: path[2] === 'states' }))
  const measures = new Map<string, Cell[]>()
  for (const { place, label, meaning, isState } of told)
    if (!isState && !measures.has(place)) measures.set(place, [label, { path: place }, meaning])
  const ofStates = stateKeys.flatMap((key): Cell[][] => {
    const found = told.find(({ place, isState, mean }) => isState && mean && place.endsWith(`.${key}`))
    return found ? [[`State: ${stateLabel(key)}`, { path: found.place }, found.meaning]] : []
  })
  return {
    title: 'What each measure means',
    note: 'Intervals: means over shifts have Student t intervals, from 30 shifts on corrected for skewness. Counts of fewer than 30 events have exact limits. Shares of shifts, and from 30 shifts on counts that take only two values, have Wilson intervals (exact limits near none and all). Totals divided by totals use the ratio estimator. Each measure is named for the first piece that has it; the second column is its place in result.json.',
    columns: words('measure', 'place in result.json', 'meaning'),
    rows: [...measures.values(), ...ofStates],
  }
}

/** Cost by element: a row an element, a column a design. */
export function costTable(designs: readonly [name: string, line: LineResult][], result: Warned): Table {
  const keys = new Set(
    designs.flatMap(([, { measures }]) =>
      entriesOf(measures)
        .map(([key]) => key)
        .filter((key) => key === 'cost-per-1000' || isCostKey(key)),
    ),
  )
  const leftOut = new Map(designs.map(([name, { costLeftOut }]) => [name, costLeftOut.join(', ')]))
  const isSame = new Set(leftOut.values()).size <= 1
  const note = isSame
    ? leftOutNote(designs[0]?.[1].costLeftOut ?? [], result)
    : `Not included, because no price is given: ${[...leftOut].map(([name, each]) => `${name}: ${each || 'nothing'}`).join('; ')}.`
  return {
    title: 'Cost of 1000 good cases',
    note,
    columns: [...words('element'), ...figures(...designs.map(([name]) => name))],
    rows: [...keys].map((key) => [
      designs.flatMap(([, { measures }]) => measures[key]?.label ?? [])[0]!,
      ...designs.map(([, { measures }]) => measures[key]),
    ]),
  }
}

/** How shifts start, and so what is counted; `steady` and `empty` say it of lines without an end and of lines that start every shift empty; left out, of several designs. */
export const startLimit = (
  { campaign, start }: ShiftTold,
  steady = 'The line runs without end. Each design is counted after it has reached its steady state.',
  empty = 'Each shift starts with an empty line.',
): string =>
  campaign > 1
    ? 'The first shift of each campaign starts with an empty line. Each other shift continues where the one before ended.'
    : start === 'steady'
      ? steady
      : empty
