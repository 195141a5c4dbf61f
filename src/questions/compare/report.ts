/** What the report of a comparison says: a sentence per design, and tables of designs, differences and money. */

import { closingOf } from '../../answers/closing.js'
import { differenceText } from '../../answers/difference.js'
import type { DifferenceFigure } from '../../answers/difference-figure.js'
import { flowText } from '../../answers/flow.js'
import { leftOutNote } from '../../answers/warnings.js'
import { isCostKey } from '../../catalogue/costs.js'
import { entriesOf } from '../../catalogue/figure.js'
import { type MeasureKey, ofLine } from '../../catalogue/of-line.js'
import { briefly } from '../../catalogue/unit-name.js'
import { counted, durationText, figureText, grouped, percentText } from '../../report/format.js'
import type { Report, Table } from '../../report/report.js'
import { inSections, within } from '../../report/sections.js'
import { bestCertainty, bestSentences, bestTable } from './best-table.js'
import { baseName, type CompareResult, type DesignResult } from './document.js'
import { compareRecord } from './record.js'
import { tapeLayoutTable } from './tape-layouts.js'
import { designSentences, pairingLine } from './words.js'
import { worthTable } from './worth-table.js'

/** The report of a comparison. */
export function compareReport(result: CompareResult): Report {
  const { made, shift, variants } = result
  const names = Object.keys(variants)
  const size = Math.max(
    0,
    ...Object.values(result.differences).flatMap((each) =>
      Object.values(each).map(({ family }) => family ?? 0),
    ),
  )
  const tables = [
    within('designs', designTable(result)),
    within('designs', figureTable(result)),
    within('differences', differenceTable('Against the base', result.differences, result)),
    ...(result.pairs.length > 0 ? [within('differences', pairTable(result))] : []),
    within('differences', mattersTable(result)),
    within('differences', bestTable(result)),
    within('money', costTable(result)),
    within('money', worthTable(result)),
    within('designs', tapeLayoutTable(result)),
  ]
  return {
    title: made.scenario.title,
    subtitle: `${counted(names.length, 'design')} on the same random numbers, ${result.best ? 'up to ' : ''}${grouped(made.shifts, 0)} ${shift.campaign > 1 ? 'campaigns' : `shifts of ${durationText(shift.length)}`} each, seed "${made.seed}". Plus-minus of a figure: ${percentText(made.confidence)} confidence that its long-run value lies within it.`,
    headline: [...bestSentences(result), ...designSentences(result)],
    certainty: [
      `Differences: ${percentText(made.confidence)} confidence that all ${grouped(size, 0)} that are judged together lie within their plus-minus at once (Bonferroni). Shown is a difference whose plus-minus leaves 0 out. A further design or measure therefore widens the plus-minus of differences, and changes nothing else.`,
      ...pairingLine(result),
      ...bestCertainty(result),
    ],
    tables: inSections(tables.filter((table) => table.rows.length > 0)),
    limits: limits(result),
    ...closingOf(made, result.assumed, 'Assumed of the base, because the scenario does not say'),
    ...compareRecord(result, bestSentences(result)),
  }
}

function designTable({ variants }: CompareResult): Table {
  return {
    title: 'The designs',
    note: '',
    columns: ['design', 'what it is', 'what it changes'],
    words: ['what it is', 'what it changes'],
    rows: Object.entries(variants).map(([name, { note, set }]) => [name, note, changesText(set)]),
  }
}

const changesText = (set: Record<string, unknown>): string =>
  Object.entries(set)
    .map(([path, value]) => `${path} = ${flowText(value)}`)
    .join('; ')

/** Figures of each design that every reader asks for. */
function figureTable({ variants, display }: CompareResult): Table {
  const keys: readonly MeasureKey[] = [
    'target-held',
    'output',
    'time-in-system',
    'tape',
    'unsealed',
    'cost-per-1000',
    'cost-per-year',
  ]
  const said = keys.filter((key) =>
    Object.values(variants).some(({ measures }) => (measures[key]?.mean ?? 0) !== 0),
  )
  const cell = ({ measures }: DesignResult, key: MeasureKey) => {
    const figure = measures[key]
    return figureText(figure && briefly(figure), display)
  }
  return {
    title: 'Each design by itself',
    note: '',
    columns: ['design', ...said.map((key) => ofLine[key].column!)],
    rows: Object.entries(variants).map(([name, design]) => [name, ...said.map((key) => cell(design, key))]),
  }
}

/** The measures that are judged together, in columns. */
function differenceTable(
  title: string,
  differences: Record<string, Record<string, DifferenceFigure>>,
  { compared, display }: CompareResult,
): Table {
  const labels = compared.map(
    (measure) => Object.values(differences).find((each) => each[measure])?.[measure]?.label ?? measure,
  )
  return {
    title,
    note: 'What the design has more (+) or less (-). "None shown": the shifts do not tell it from no difference; how large it may be stands beside it.',
    columns: ['design', ...labels],
    rows: Object.entries(differences).map(([name, figures]) => [
      name,
      ...compared.map((measure) => differenceText(figures[measure], display)),
    ]),
  }
}

function pairTable(result: CompareResult): Table {
  const differences = Object.fromEntries(
    result.pairs.map(({ of, against, differences: each }) => [`${of} less ${against}`, each]),
  )
  return differenceTable('Against one another', differences, result)
}

/** Cost by element: a row an element, a column a design. */
function costTable(result: CompareResult): Table {
  const { variants, display } = result
  const designs = Object.entries(variants)
  const keys = [
    ...new Set(
      designs.flatMap(([, { measures }]) =>
        entriesOf(measures)
          .map(([key]) => key)
          .filter((key) => key === 'cost-per-1000' || isCostKey(key)),
      ),
    ),
  ]
  const leftOut = new Map(designs.map(([name, { costLeftOut }]) => [name, costLeftOut.join(', ')]))
  const [ofBase] = leftOut.values()
  const isSame = [...leftOut.values()].every((each) => each === ofBase)
  const note = isSame
    ? leftOutNote(designs[0]?.[1].costLeftOut ?? [], result)
    : `Not priced, so left out: ${[...leftOut].map(([name, each]) => `${name}: ${each || 'nothing'}`).join('; ')}.`
  return {
    title: 'Cost of 1000 good cases',
    note,
    columns: ['element', ...designs.map(([name]) => name)],
    rows: keys.map((key) => [
      designs.flatMap(([, { measures }]) => measures[key]?.label ?? [])[0]!,
      ...designs.map(([, { measures }]) => {
        const figure = measures[key]
        return figureText(figure && briefly(figure), display)
      }),
    ]),
  }
}

/** How many shifts would show what matters to the user. */
function mattersTable({ differences, made, display, compared }: CompareResult): Table {
  const rows = Object.entries(differences).flatMap(([name, figures]) =>
    compared.flatMap((measure) => {
      const figure = figures[measure]
      if (!figure?.matters) return []
      const { amount, shifts } = figure.matters
      const size = differenceText(
        { ...figure, mean: amount, low: amount, high: amount, isShown: true },
        display,
      )
      const more = shifts === null ? null : shifts - made.shifts
      const words =
        more === null
          ? 'not known'
          : more > 0
            ? `${grouped(shifts!, 0)}, ${grouped(more, 0)} more`
            : 'these are enough'
      return [[name, figure.label, size.replace(/^\+/, ''), figure.isShown ? 'yes' : 'no', words]]
    }),
  )
  return {
    title: 'What would show a difference that matters',
    note: 'Shifts of each design of which four studies in five would show a difference of that size.',
    columns: ['design', 'measure', 'difference that matters', 'shown now', 'shifts'],
    words: ['measure', 'shifts'],
    rows,
  }
}

function limits(result: CompareResult): string[] {
  const { variants, shift } = result
  const limits = [...result.notes]
  limits.push(
    shift.campaign > 1
      ? 'The first shift of each campaign starts with an empty line; the others go on where the one before ended.'
      : shift.start === 'steady'
        ? 'The line runs without end: what each design does after it came to its stride is counted.'
        : 'Each shift starts with an empty line.',
    'Jam, roll-change, breakdown and reopening figures are inputs: no published data on tape sealers is known. A difference is as good as what was measured for both designs; what a variant does not change is the same in both.',
  )
  const leftOut = [...new Set(Object.values(variants).flatMap(({ worth }) => worth?.leftOut ?? []))]
  if (leftOut.length > 0) limits.push(`Not given, so not worked out in money: ${leftOut.join('; ')}.`)
  if (Object.keys(variants).some((name) => name !== baseName && changesTape(variants[name]!)))
    limits.push(
      'A choice of tape width must be proved by a closure or distribution test on the real case (ASTM D4169, ISTA series); no simulation shows that a closure holds.',
    )
  return limits
}

const changesTape = ({ set }: DesignResult): boolean =>
  Object.keys(set).some((path) => path === 'tape' || path.startsWith('tape.') || path.startsWith('closure'))
