/** What the report of a comparison says: a sentence per design, and tables of designs, differences and money. */

import { differenceParts, notTold, sizeText } from '../../answers/difference.js'
import type { DifferenceFigure } from '../../answers/difference-figure.js'
import { changesText } from '../../answers/flow.js'
import { costTable, simulatedEach, startLimit, studyReport } from '../../answers/study-report.js'
import { type MeasureKey, ofLine } from '../../catalogue/of-line.js'
import { inSmall } from '../../catalogue/printed-units.js'
import { type Cell, figures as ofFigures, words } from '../../report/cell.js'
import { counted, grouped, percentText, sentences } from '../../report/format.js'
import type { Report, Table } from '../../report/report.js'
import { within } from '../../report/sections.js'
import { closureProof } from '../../trade/closure.js'
import type { TapeLayout } from '../../trade/tape-layout.js'
import { acrossDrawsSentences, acrossDrawsTable, labelsOf } from './across-draws-table.js'
import { bestCertainty, bestSentences, bestTable } from './best-table.js'
import { baseName, type CompareResult, type DesignResult } from './document.js'
import { designSentences, pairingLine } from './words.js'
import { worthTable } from './worth-table.js'

/** The report of a comparison. */
export function compareReport(result: CompareResult): Report {
  const { made, variants } = result
  const names = Object.keys(variants)
  const figures = Object.values(result.differences).flatMap((each) => Object.values(each))
  const size = Math.max(0, ...figures.map(({ family }) => family ?? 0))
  const tables = [
    within('designs', designTable(result)),
    within('designs', figureTable(result), 'output-shares'),
    within('differences', differenceTable('Against the base', result.differences, result), 'difference'),
    ...(result.pairs.length > 0 ? [within('differences', pairTable(result))] : []),
    within('differences', acrossDrawsTable(result)),
    within('differences', mattersTable(result)),
    within('differences', bestTable(result)),
    within('money', costTable(Object.entries(variants), result), 'cost-stack'),
    within('money', worthTable(result)),
    within('designs', tapeLayoutTable(result)),
  ]
  const best = bestSentences(result)
  return studyReport(result, {
    subtitle: `${counted(names.length, 'design')} on the same random numbers, ${result.best ? 'up to ' : ''}${simulatedEach(result)} Plus-minus of a figure: ${percentText(made.confidence)} confidence that the long-run value lies within it${result.drawn ? ', with the uncertainty of the inputs' : ''}.`,
    headline: [...best, ...designSentences(result)],
    certainty: [
      `Differences: ${percentText(made.confidence)} confidence that all ${grouped(size, 0)} differences lie within their plus-minus at the same time (Bonferroni)${result.drawn ? '; it includes random variation of the simulation and uncertainty of the inputs' : ''}. A difference is shown if its plus-minus excludes 0. Another design or measure makes the plus-minus of differences wider and changes nothing else.`,
      ...acrossDrawsSentences(result),
      ...pairingLine(result),
      ...bestCertainty(result),
    ],
    tables,
    limits: limits(result),
    isDrawn: result.drawn !== undefined,
    question: 'Which of these designs is better than the base, and by how much?',
    assumed: 'Assumed of the base, because the scenario does not say',
    lines: Object.values(variants),
    facts: {
      trials: `${counted(names.length, 'design')}: the base and variants; the section on designs lists their changes.`,
      estimation:
        'All designs use the same random numbers, and differences are paired shift by shift. Differences that are judged together have Bonferroni intervals. They are called shown if the interval excludes 0.',
    },
  })
}

function designTable({ variants }: CompareResult): Table {
  return {
    title: 'The designs',
    columns: words('design', 'what it is', 'what it changes'),
    rows: Object.entries(variants).map(([name, { note, set }]) => [name, note, changesText(set, '; ')]),
  }
}

/** Figures of each design that every reader asks for. */
function figureTable({ variants }: CompareResult): Table {
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
  return {
    title: 'Each design by itself',
    columns: [...words('design'), ...ofFigures(...said.map((key) => ofLine[key].column!))],
    rows: Object.entries(variants).map(([name, { measures }]) => [name, ...said.map((key) => measures[key])]),
  }
}

/** The measures that are judged together, in columns. */
function differenceTable(
  title: string,
  differences: Record<string, Record<string, DifferenceFigure>>,
  { compared, display }: CompareResult,
): Table {
  return {
    title,
    note: 'How much more (+) or less (-) the design has. "None shown": the shifts do not prove a difference; the range beside it says how large it may be.',
    columns: [...words('design'), ...ofFigures(...labelsOf(compared, differences))],
    rows: Object.entries(differences).map(([name, figures]) => [
      name,
      ...compared.map((measure) => differenceParts(figures[measure], display)),
    ]),
  }
}

function pairTable(result: CompareResult): Table {
  const differences = Object.fromEntries(
    result.pairs.map(({ of, against, differences: each }) => [`${of} less ${against}`, each]),
  )
  return differenceTable('Differences between variants', differences, result)
}

/** Tape and closure of each design by hand, a row a design; empty where all lay the same tape in the same way and `check` finds the same. */
function tapeLayoutTable({ variants, currency }: CompareResult): Table {
  const layouts = Object.entries(variants).flatMap(([name, { tapeLayout }]) =>
    tapeLayout ? [[name, tapeLayout] as const] : [],
  )
  const isAlike = new Set(layouts.map(([, layout]) => JSON.stringify(layout))).size <= 1
  const rounded = (value: number | null) => (value === null ? null : grouped(value, 2))
  const mass = (value: number) => ({ value, unit: 'kg' })
  const small = (value: number) => inSmall({ value, unit: 'm' })
  const says = ({ errors, warnings }: TapeLayout) =>
    [...errors.map((code) => `error ${code}`), ...warnings.map((code) => `warning ${code}`)].join(', ')
  return {
    title: 'Tape and closure by hand calculation',
    note: `Closure index: the weakest case / the reference closure, for slow sliding of the legs and of the strip on the seam. Above 1 is better. ${closureProof}`,
    columns: [
      ...words('design'),
      ...ofFigures('tape', `price of 1000 m, ${currency}`, 'mass of 1000 m', 'tape on a roll', 'roll across'),
      ...words('fits the heads'),
      ...ofFigures('index, legs', 'index, seam'),
      ...words('check warns of'),
    ],
    rows: isAlike
      ? []
      : layouts.map(([name, layout]) => [
          name,
          small(layout.width),
          rounded(layout.pricePerMetre && layout.pricePerMetre * 1000),
          mass(layout.massPerMetre * 1000),
          mass(layout.rollMass),
          small(layout.rollDiameter),
          layout.fits === null ? 'not said (drum)' : layout.fits ? 'yes' : 'no',
          rounded(layout.legIndex),
          rounded(layout.seamIndex),
          says(layout),
        ]),
  }
}

/** How many shifts would show what matters to the user. */
function mattersTable({ differences, made, display, compared, drawn }: CompareResult): Table {
  const row = (name: string, figure: DifferenceFigure | undefined): Cell[][] => {
    if (!figure?.matters) return []
    const { amount, shifts } = figure.matters
    const size = { ...figure, mean: amount, low: amount, high: amount }
    const difference = figure.few ? notTold(figure.few.events) : sizeText(size, display)
    return [[name, figure.label, difference, figure.isShown ? 'yes' : 'no', shiftsText(shifts, made.shifts)]]
  }
  return {
    title: 'Shifts needed to show a difference that matters',
    note: `With this number of shifts of each design, four studies in five would show a difference of this size${drawn ? ', for random variation only: more shifts do not reduce the uncertainty of the inputs' : ''}.`,
    columns: [
      ...words('design', 'measure'),
      ...ofFigures('difference that matters', 'shown now'),
      ...words('shifts'),
    ],
    rows: Object.entries(differences).flatMap(([name, figures]) =>
      compared.flatMap((measure) => row(name, figures[measure])),
    ),
  }
}

function shiftsText(needed: number | null, made: number): string {
  if (needed === null) return 'not known'
  return needed > made
    ? `${grouped(needed, 0)}, ${grouped(needed - made, 0)} more`
    : 'these shifts are enough'
}

function limits(result: CompareResult): string[] {
  const { variants, shift } = result
  const leftOut = [...new Set(Object.values(variants).flatMap(({ worth }) => worth?.leftOut ?? []))]
  return sentences(
    ...result.notes,
    startLimit(shift),
    'Jam, roll-change, breakdown and reopening figures are inputs: no published data on tape sealers is known. A difference is only as good as the measurements for both designs. Values that a variant does not change are the same in both.',
    leftOut.length > 0 && `Not calculated in money, because it is not given: ${leftOut.join('; ')}.`,
    Object.keys(variants).some((name) => name !== baseName && changesTape(variants[name]!)) &&
      'Prove a choice of tape width by a closure or distribution test on the real case (ASTM D4169, ISTA series). No simulation shows that a closure holds.',
  )
}

const changesTape = ({ set }: DesignResult): boolean =>
  Object.keys(set).some((path) => path === 'tape' || path.startsWith('tape.') || path.startsWith('closure'))
