/** The tables of a sizing: the pick, the designs that were simulated, and why others were not. */

import { flowText } from '../../answers/flow.js'
import { inputSharesTable } from '../../answers/rests-on.js'
import { figures as ofFigures, words } from '../../report/cell.js'
import { counted, grouped, sentences } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import type { SizedDesign, SizeResult } from './document.js'
import { leastSpare } from './promise-figure.js'
import { endDesign, endOf, endWord, figureParts, setText } from './words.js'

/** The pick, or without one the nearest, choice by choice. */
export function pickTable(result: SizeResult): Table {
  const design = endDesign(result)
  return {
    title: `The ${endWord(result)}`,
    columns: words('choice', 'value', 'chosen from'),
    rows: design
      ? result.choices.map(({ path, values }) => [{ path }, flowText(design.set[path]), rangeText(values)])
      : [],
  }
}

const rangeText = (values: readonly unknown[]): string =>
  values.length > 6
    ? `${flowText(values[0])}, ${flowText(values[1])} … ${flowText(values.at(-1))} (${values.length} values)`
    : values.map(flowText).join(', ')

/** Designs that the table names: those nearest to the pick in cost, the last of them the pick; without one those that came nearest. */
const mostRows = 12

/** The end of each path that tells it from the other choices: `infeed.length`, `belt-speed`. */
function shortNames(paths: readonly string[]): string[] {
  const endOf = (path: string, steps: number) => path.split('.').slice(-steps).join('.')
  return paths.map((path) => {
    for (let steps = 1; ; steps++) {
      const end = endOf(path, steps)
      if (end === path || paths.filter((other) => endOf(other, steps) === end).length === 1) return end
    }
  })
}

const verdictWords = { accepted: 'holds', refused: 'fails', undecided: 'undecided' }

/** Shifts, and what they say. */
type Seen = Pick<SizedDesign, 'promises' | 'shifts' | 'draws'>

interface Row {
  design: SizedDesign
  index: number
}

/** The rows of the table, and which they are of how many. */
function shownRows({ designs, pick, promises }: SizeResult): { rows: Row[]; notes: string[] } {
  const told = designs
    .map((design, index): Row => ({ design, index }))
    .filter(({ design }) => design.without === null)
  if (pick === null) {
    const spare = ({ design }: Row) => leastSpare(design.promises, promises)
    const nearest = told.toSorted((a, b) => spare(b) - spare(a) || a.index - b.index).slice(0, mostRows)
    return {
      rows: nearest.sort((a, b) => a.index - b.index),
      notes: sentences(
        told.length > mostRows && `The nearest ${mostRows} of ${told.length}; designs.csv has all.`,
      ),
    }
  }
  const upTo = told.filter(({ index }) => index <= pick)
  const rows = upTo.slice(-mostRows)
  const beyond = told.length - upTo.length
  return {
    rows,
    notes: sentences(
      rows.length < upTo.length && `The last ${mostRows} of ${upTo.length} up to the chosen design.`,
      beyond > 0 &&
        `designs.csv has all, with ${counted(beyond, 'simulated design')} that ${beyond === 1 ? 'costs' : 'cost'} more.`,
    ),
  }
}

/** The choices in which designs differ, by their short names, and the values of the others. */
function unlikeIn(rows: readonly Row[], { choices }: SizeResult) {
  const isAlike = (path: string) =>
    new Set(rows.map(({ design }) => JSON.stringify(design.set[path]))).size === 1
  const names = shortNames(choices.map(({ path }) => path))
  const all = choices.map(({ path }, index) => ({ path, name: names[index]! }))
  const unlike = all.filter(({ path }) => !isAlike(path))
  const columns = unlike.length > 0 ? unlike : all
  const alike = Object.fromEntries(
    choices
      .filter(({ path }) => columns.every((each) => each.path !== path))
      .map(({ path }) => [path, rows[0]?.design.set[path]]),
  )
  return { columns, alike }
}

export function designTable(result: SizeResult): Table {
  const { pick, nearest, promises, currency, drawn } = result
  const { rows, notes } = shownRows(result)
  const { columns, alike } = unlikeIn(rows, result)
  const isPriced = rows.some(({ design }) => design.cost !== null)
  const end = endOf(result)
  const verdictOf = ({ design, index }: Row) =>
    index === pick
      ? 'the pick'
      : `${verdictWords[design.verdict]}${index === nearest?.design ? `, ${endWord(result).split(' ')[0]}` : ''}`
  const rowOf = (design: SizedDesign, { promises: figures, shifts, draws }: Seen, verdict: string) => [
    columns.map(({ path }) => flowText(design.set[path])).join(', '),
    ...(isPriced ? [design.cost === null ? null : grouped(design.cost, 2)] : []),
    ...promises.map(({ unit }, each) => figureParts(figures[each], unit, result)),
    grouped(shifts, 0),
    ...(drawn ? [draws ? `${draws.kept} of ${draws.kept + draws.missed + draws.open}` : null] : []),
    verdict,
  ]
  return {
    title: 'Designs that were simulated, in order of cost',
    note: sentences(
      ...notes,
      columns.length > 1 && `A design is ${columns.map(({ name }) => name).join(', ')}.`,
      drawn && 'Figures and intervals use the inputs as given.',
      Object.keys(alike).length > 0 && `The same in all of these: ${setText(alike)}.`,
    ).join(' '),
    columns: [
      ...words(columns.length > 1 ? 'design' : columns[0]!.name),
      ...ofFigures(
        ...(isPriced ? [`cost, ${currency}`] : []),
        ...promises.map(({ promise, measure, unit }) =>
          unit !== 'share' ? measure : promises.length === 1 ? 'holds it in' : promise,
        ),
        'shifts',
        ...(drawn ? ['draws kept'] : []),
      ),
      ...words('verdict'),
    ],
    rows: rows.flatMap((row) => [
      rowOf(row.design, row.design, verdictOf(row)),
      ...(end?.design === row.design ? [rowOf(row.design, end.afresh, 'the same on fresh shifts')] : []),
    ]),
  }
}

/** Why designs were refused without simulating. */
export function choiceTable({ designs }: SizeResult): Table {
  const reasons = new Map<string, number>()
  for (const { without } of designs)
    if (without !== null) {
      const reason = without.startsWith('no better than') ? 'no better than a rejected design' : without
      reasons.set(reason, (reasons.get(reason) ?? 0) + 1)
    }
  return {
    title: 'Rejected without simulation',
    columns: [...words('reason'), ...ofFigures('designs')],
    rows: [...reasons].map(([reason, count]) => [reason, grouped(count, 0)]),
  }
}

/** What each input adds to what is not known of the promises, the rate and the cost of the design that a sizing ends with; without rows where inputs were not drawn, or nothing can be told apart. */
export function addedTable(result: SizeResult): Table {
  const { drawn, evidence = [] } = result
  const end = endOf(result)?.afresh
  const measures = (end?.measures ?? {}) as Partial<Record<string, { inputs?: { share: number } }>>
  const figures = [
    ...(drawn?.promises ?? []).map((told, index) => ({ told, inputs: end?.promises[index]?.inputs })),
    ...(drawn?.contributions ?? []).map((told) => ({ told, inputs: measures[told.measure]?.inputs })),
  ]
  const added = figures.flatMap(({ told, inputs }) =>
    told && inputs && told.shares.some(({ share }) => share > 0) ? [{ told, ofWhole: inputs.share }] : [],
  )
  return inputSharesTable(added, evidence)
}
