/** The hand calculation of a check as tables, in the units of the scenario. */

import type { Amount } from '../../catalogue/figure.js'
import {
  amountText,
  type Display,
  figures,
  inSmall,
  spanText,
  wordsFor,
} from '../../catalogue/printed-units.js'
import type { OtherKinds } from '../../hand/kinds-told.js'
import { type Cell, cellText, figures as ofFigures, words as ofWords } from '../../report/cell.js'
import { grouped, sentences } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import type { CheckResult } from './document.js'
import { expectedTable } from './expected-table.js'
import { mayBe, rangeText } from './may-be.js'

type Hand = NonNullable<CheckResult['hand']>
type Closure = NonNullable<CheckResult['closure']>

/** An amount that is without limit where it has no value. */
const bounded = (amount: Amount): Amount | string => (amount.value === null ? 'without limit' : amount)

/** All tables of the hand calculation; none where the scenario could not be read. */
export function handTables(result: CheckResult): Table[] {
  const { hand, closure } = result
  if (!hand) return []
  const { display } = result
  return [
    casesTable(result),
    expectedTable(hand, wordsFor(display)),
    ratesTable(hand, result),
    foretoldTable(hand, result),
    buffersTable(hand, display),
    pairsTable(hand, display),
    crewTable(hand, result),
    ...(hand.tape ? [tapeTable(hand.tape, display)] : []),
    ...curveTables(hand, display),
    ...(closure ? [closureTable(closure, display), widthsTable(closure, display)] : []),
  ]
}

function casesTable({ cases, otherCases, display }: CheckResult): Table {
  return {
    title: 'Cases',
    note: `Outside dimensions of closed cases. "Given": whether the scenario has inside or outside dimensions. United: length + width + height. The board must allow both weight and size.${Object.values(cases).some(({ ends }) => ends) ? ' A side that varies from case to case is shown from its smallest to its largest value; united size and all hand calculation use its mean.' : ''}`,
    columns: [
      ...ofWords('case'),
      ...ofFigures('share', 'length', 'width', 'height'),
      ...ofWords('given'),
      ...ofFigures('united', 'weight'),
      ...ofWords('board allows'),
    ],
    rows: [
      ...Object.entries(cases).map(([name, each]) => [
        name,
        each.share,
        ...sides.map((side) => sideCell(each, side, display)),
        each.given,
        inSmall(each.united),
        each.weight,
        each.boardRow
          ? `${amountText(each.boardRow.weight, display)}, ${amountText(inSmall(each.boardRow.united), display)}`
          : 'not known',
      ]),
      ...(otherCases ? [othersRow(otherCases, display)] : []),
    ],
  }
}

const sides = ['length', 'width', 'height'] as const

/** A side of a case: from the smallest to the largest where it varies. */
function sideCell(of: CheckResult['cases'][string], side: (typeof sides)[number], display: Display): Cell {
  const [least, most] = [of.ends?.least[side], of.ends?.most[side]]
  return least === undefined || most === undefined || least === most
    ? inSmall(of[side])
    : sizeSpan([least, most], display)
}

function sizeSpan([low, high]: readonly [number, number], display: Display): string {
  const text = (value: number) => amountText(inSmall({ value, unit: 'm' }), display)
  return spanText(text(low), text(high))
}

/** Of many kinds those that are not told by name: the ranges of their sides. */
function othersRow({ count, share, ...ranges }: OtherKinds, display: Display): Cell[] {
  return [
    `${grouped(count, 0)} others`,
    { value: share, unit: 'share' },
    ...sides.map((side) => sizeSpan(ranges[side], display)),
    ...['', null, null, ''],
  ]
}

function ratesTable(hand: Hand, result: CheckResult): Table {
  const { display } = result
  const keyOf = (name: string) => `pieces.${name}`
  const range = mayBe(result, Object.keys(hand.pieces).map(keyOf))
  const limit = rangeText(result, 'limitAfterStops', 'cases/s')
  const target = hand.target.value === null ? '' : ` The target is ${amountText(hand.target, display)}.`
  return {
    title: 'Capacity of each piece',
    note: `${hand.sentence} The limit of the whole line is ${cellText(bounded(hand.limitAfterStops), display)} of good cases${limit ? ` (${limit} for 5 to 95 % of the draws of the inputs)` : ''}.${target}`,
    columns: [
      ...ofWords('piece'),
      ...ofFigures('comes', 'busiest hour', 'capacity', 'after its stops'),
      ...range.columns,
      ...ofFigures('busy'),
      ...ofWords('set by'),
    ],
    rows: Object.entries(hand.pieces).map(([name, piece]) => [
      name,
      ...[piece.comes, piece.comesAtPeak],
      ...[bounded(piece.rate), bounded(piece.rateAfterStops)],
      ...range.cells(keyOf(name), 'cases/s'),
      ...[piece.utilisation, piece.how],
    ]),
  }
}

/** Figures that a run measures too; heads have a table of their own. */
function foretoldTable({ rows: all }: Hand, result: CheckResult): Table {
  const rows = all.filter(({ measure }) => !measure.includes('.heads.'))
  const range = mayBe(
    result,
    rows.map(({ measure }) => measure),
  )
  return {
    title: 'What a simulation should find',
    note: 'Hand calculation with averages: no waiting, and stops do not affect each other. The report of a run compares these figures with the simulated ones.',
    columns: [...ofWords('figure'), ...ofFigures('by hand'), ...range.columns, ...ofWords('how')],
    rows: rows.map((row) => [row.label, row, ...range.cells(row.measure, row.unit), row.how]),
  }
}

function buffersTable({ buffers, machines }: Hand, display: Display): Table {
  return {
    title: 'Buffers',
    note: machines
      .map(
        (each) =>
          `A mean stop of ${each.machine} takes ${amountText(each.meanStop, display)}; the queue from it clears ${each.drain.value === null ? 'never' : `after ${amountText(each.drain, display)}`}.`,
      )
      .join(' '),
    columns: [...ofWords('place'), ...ofFigures('holds', 'cases in travel', 'free room lasts')],
    rows: buffers.map((each) => [
      each.name,
      bounded(each.places),
      { ...each.riding, unit: 'count' },
      bounded(each.lasts),
    ]),
  }
}

function pairsTable({ pairs }: Hand, display: Display): Table {
  const stops = (each: Hand['pairs'][number]['secondStops']) =>
    `${amountText(each.meanRunning, display)}, ${amountText(each.meanStop, display)}`
  return {
    title: 'Output recovered by buffers',
    note: 'Output that two machines would lose to stops of the other without a buffer, and the share of this loss that the buffer recovers. Each pair is calculated alone. Running and stopped times are assumed exponential and the two speeds equal (Gershwin, Manufacturing Systems Engineering, continuous material). A source is a steady flow into a machine with its own speed (derived).',
    columns: [
      ...ofWords('from, to', 'between'),
      ...ofFigures('lasts', 'first: runs, stops', 'second: runs, stops', 'back'),
      ...ofWords('how'),
    ],
    rows: pairs.map((each) => [
      `${each.first.join(' and ')} to ${each.second}`,
      each.between.join(', ') || 'nothing',
      bounded(each.lasts),
      each.firstStops && stops(each.firstStops),
      stops(each.secondStops),
      each.lostOutputRecovered,
      each.how,
    ]),
  }
}

function crewTable({ crews }: Hand, result: CheckResult): Table {
  const keyOf = (name: string) => `crews.${name}`
  const range = mayBe(result, Object.keys(crews).map(keyOf))
  const hasOther = Object.values(crews).some(({ otherWork }) => otherWork)
  return {
    title: 'People',
    note: 'Share of the time on duty. Each task goes to the first crew in the file that does it. The allowance is 15 %, for personal time, fatigue and delays (29 CFR 525.12, as a floor); more than 85 % is too much.',
    columns: [
      ...ofWords('crew'),
      ...ofFigures('people', 'stops of the line', 'and folding flaps'),
      ...ofFigures(...(hasOther ? ['other work', 'total with allowance'] : ['with the allowance'])),
      ...range.columns,
    ],
    rows: Object.entries(crews).map(([name, each]) => [
      name,
      String(each.people),
      ...[each.busy, each.occupied],
      ...(hasOther ? [each.otherWork ?? 'none'] : []),
      each.withAllowance,
      ...range.cells(keyOf(name), 'share'),
    ]),
  }
}

function tapeTable(tape: NonNullable<Hand['tape']>, display: Display): Table {
  const say = (amount: Amount) => amountText(amount, display)
  const month = tape.perMonth.value === null ? '' : `, ${say(tape.perMonth)} a month`
  const cost =
    tape.costPer1000.value === null ? '' : ` Tape costs ${say(tape.costPer1000)} for 1000 good cases.`
  return {
    title: 'Tape by head, a shift',
    note: `All heads together: ${say(tape.perShift)} a shift (${say(tape.mass)})${month}, ${say(tape.rolls)} rolls and ${say(tape.changes)} changes a shift.${cost}`,
    columns: [...ofWords('head'), ...ofFigures('per strip', 'strips per roll', 'tape', 'rolls', 'changes')],
    rows: tape.heads.map((head) => [
      `${head.machine}, ${head.head}`,
      head.strip,
      head.stripsPerRoll.value === null ? null : wordsFor(display).count(head.stripsPerRoll.value),
      ...[head.perShift, head.rolls, head.changes],
    ]),
  }
}

function curveTables({ curves }: Hand, display: Display): Table[] {
  const words = wordsFor(display)
  return curves.map((curve) => ({
    title: `Rate over belt speed, ${curve.machine}`,
    note: `For its mean case of ${amountText(inSmall(curve.meanLength), display)}, cases in close order. The gap grows with the speed, so the rate never exceeds ${cellText(bounded(curve.ceiling), display)}: one case per reset.${curve.littleGainFrom.value === null ? '' : ` From ${words.speed(curve.littleGainFrom.value)} on another ${words.speed(1 / 60)} brings less than 0.25 cases/min.`}`,
    columns: [...ofWords('belt speed'), ...ofFigures('gap', 'rate'), ...ofWords('')],
    rows: curve.points.map((point) => [
      ...[point.speed, inSmall(point.gap), point.rate],
      sentences(
        point.speed.value === curve.speed.value && 'the scenario',
        point.speed.value! > curve.rated.value! * 1.001 && 'above the rating of the heads',
      ).join('; '),
    ]),
  }))
}

const widthName = (width: Amount, isChosen: boolean, display: Display) => {
  const trade: Record<string, string> = { '0.048': ', 2 inch', '0.072': ', 3 inch' }
  return `${amountText(inSmall(width), display)}${trade[String(width.value)] ?? ''}${isChosen ? ', chosen' : ''}`
}

function closureTable(closure: Closure, display: Display): Table {
  const { reference } = closure
  const words = wordsFor(display)
  const index = (value: number | null | undefined) => value?.toFixed(2)
  return {
    title: 'Closure index, 2 inch against 3 inch',
    note: reference
      ? `${closure.meaning} The reference${reference.note ? `, ${reference.note},` : ''} has tape of ${words.length(reference.width)} and legs of ${words.length(reference.leg)}. ${[...closure.notes, closure.proof].join(' ')}`
      : `The scenario names no closure that is known to hold (closure: reference), so nothing is compared. ${closure.proof}`,
    columns: [
      ...ofWords('case', 'tape'),
      ...ofFigures('legs', 'peel', 'seam', 'coverage', 'tape on the weaker flap'),
    ],
    rows: reference
      ? closure.compared.map((row) => [
          row.case,
          widthName(row.width, row.isChosen, display),
          index(row.index?.leg),
          index(row.index?.peel),
          index(row.index?.seam),
          index(row.index?.coverage),
          inSmall(row.coverage),
        ])
      : [],
  }
}

function widthsTable(closure: Closure, display: Display): Table {
  const spare = closure.openedCasesToSpare.value
  const pays =
    spare === null
      ? 'Give a price of the tape and a contents-value for every case to see how many opened cases 3 inch must prevent.'
      : `3 inch pays for its tape if it prevents ${figures(spare)} opened cases in 1000.`
  return {
    title: 'Cost of each tape width for 1000 cases',
    note: `Prices of other widths are assumed in proportion. The width does not change the strips per roll or the roll changes. ${pays}${closure.reference ? '' : ` The scenario names no closure that is known to hold (closure: reference), so their holding power is not compared. ${closure.proof}`}`,
    columns: [...ofWords('tape'), ...ofFigures('mass', 'cost'), ...ofWords('heads that cannot take it')],
    rows: closure.widths.map((each) => [
      widthName(each.width, each.isChosen, display),
      ...[each.massPer1000, each.costPer1000],
      each.headsThatDoNotTakeIt.join(', ') || 'none',
    ]),
  }
}
