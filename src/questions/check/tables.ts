/** The hand calculation of a check as tables, in the units of the scenario. */

import type { Amount } from '../../answers/amount.js'
import { amountText } from '../../answers/amount.js'
import { figures, type Words, wordsFor } from '../../catalogue/printed-units.js'
import type { Table } from '../../report/report.js'
import type { CheckResult } from './document.js'
import { expectedTable } from './expected-table.js'

type Hand = NonNullable<CheckResult['hand']>
type Closure = NonNullable<CheckResult['closure']>

const nothing = '–'

/** An amount in words; a dash where it is not known. */
const said = ({ value }: Amount, say: (value: number) => string): string =>
  value === null ? nothing : say(value)

/** The same where no value means without limit. */
const bounded = ({ value }: Amount, say: (value: number) => string): string =>
  value === null ? 'without limit' : say(value)

/** All tables of the hand calculation; none where the scenario could not be read. */
export function handTables(result: CheckResult): Table[] {
  const { hand, closure } = result
  if (!hand) return []
  const words = wordsFor(result.display)
  return [
    casesTable(result, words),
    expectedTable(hand, words),
    ratesTable(hand, words),
    foretoldTable(hand, words),
    buffersTable(hand, words),
    pairsTable(hand, words),
    crewTable(hand, words),
    tapeTable(hand, words),
    ...curveTables(hand, words),
    ...(closure ? [closureTable(closure, words), widthsTable(closure, words)] : []),
  ]
}

function casesTable({ cases }: CheckResult, words: Words): Table {
  return {
    title: 'Cases',
    note: 'Outside, closed; "given" says whether the scenario has inside or outside dimensions. United: length + width + height. The board must allow both weight and size.',
    columns: ['case', 'share', 'length', 'width', 'height', 'given', 'united', 'weight', 'board allows'],
    words: ['given', 'board allows'],
    rows: Object.entries(cases).map(([name, each]) => [
      name,
      said(each.share, words.share),
      ...[each.length, each.width, each.height].map((side) => said(side, words.length)),
      each.given,
      said(each.united, words.length),
      said(each.weight, words.mass),
      each.boardRow
        ? `${said(each.boardRow.weight, words.mass)}, ${said(each.boardRow.united, words.length)}`
        : 'not known',
    ]),
  }
}

function ratesTable(hand: Hand, words: Words): Table {
  const target = hand.target.value === null ? '' : ` The target is ${words.rate(hand.target.value)}.`
  return {
    title: 'What each piece can do',
    note: `${hand.sentence} The line as a whole lets ${bounded(hand.limitAfterStops, words.rate)} of good cases out.${target}`,
    columns: ['piece', 'comes', 'in the busiest hour', 'can do', 'after its stops', 'busy', 'set by'],
    words: ['set by'],
    rows: Object.entries(hand.pieces).map(([name, piece]) => [
      name,
      said(piece.comes, words.rate),
      said(piece.comesAtPeak, words.rate),
      bounded(piece.rate, words.rate),
      bounded(piece.rateAfterStops, words.rate),
      said(piece.utilisation, words.share),
      piece.how,
    ]),
  }
}

/** Figures that a run measures too; heads have a table of their own. */
function foretoldTable({ rows }: Hand, words: Words): Table {
  return {
    title: 'What a run should find',
    note: 'By hand, on averages: no waiting, no stop in the way of another. A run puts its own figures beside these.',
    columns: ['figure', 'by hand', 'how'],
    words: ['how'],
    rows: rows
      .filter(({ measure }) => !measure.includes('.heads.'))
      .map((row) => [row.label, amountText(row, words), row.how]),
  }
}

function buffersTable({ buffers, machines }: Hand, words: Words): Table {
  return {
    title: 'Buffers',
    note: machines
      .map(
        (each) =>
          `A mean stop of ${each.machine} takes ${said(each.meanStop, words.time)}; the cases that come in it are gone ${each.drain.value === null ? 'never' : `after ${words.time(each.drain.value)}`}.`,
      )
      .join(' '),
    columns: ['place', 'holds', 'riding anyway', 'the rest lasts'],
    rows: buffers.map((each) => [
      each.name,
      bounded(each.places, (value) => `${words.count(value)} cases`),
      said(each.riding, figures),
      bounded(each.lasts, words.time),
    ]),
  }
}

function pairsTable({ pairs }: Hand, words: Words): Table {
  const stops = (each: Hand['pairs'][number]['secondStops']) =>
    `${said(each.meanRunning, words.time)}, ${said(each.meanStop, words.time)}`
  return {
    title: 'What buffers bring back',
    note: 'Output that two machines lose to the stops of each other where nothing can wait between them, and the share of it that the free places bring back. Each pair by itself. Running and stopped times are taken as exponential, the speeds of two machines as alike (Gershwin, Manufacturing Systems Engineering, continuous material), a source as a steady flow into a machine with a speed of its own (derived).',
    columns: ['from, to', 'between', 'lasts', 'first runs, stops', 'second runs, stops', 'back', 'how'],
    words: ['between', 'how'],
    rows: pairs.map((each) => [
      `${each.first.join(' and ')} to ${each.second}`,
      each.between.join(', ') || 'nothing',
      bounded(each.lasts, words.time),
      each.firstStops ? stops(each.firstStops) : nothing,
      stops(each.secondStops),
      said(each.lostOutputRecovered, words.share),
      each.how,
    ]),
  }
}

function crewTable({ crews }: Hand, words: Words): Table {
  return {
    title: 'People',
    note: 'Share of the time in which they are there. Each task goes to the first crew of the file that does it. The allowance is 15 %, for personal time, fatigue and delays (29 CFR 525.12, as a floor); more than 85 % is too much.',
    columns: ['crew', 'people', 'stops of the line', 'and folding flaps', 'with the allowance'],
    rows: Object.entries(crews).map(([name, each]) => [
      name,
      String(each.people),
      said(each.busy, words.share),
      said(each.occupied, words.share),
      said(each.withAllowance, words.share),
    ]),
  }
}

function tapeTable({ tape }: Hand, words: Words): Table {
  if (!tape) return { title: 'Tape', note: '', columns: ['head'], rows: [] }
  const month = tape.perMonth.value === null ? '' : `, ${words.distance(tape.perMonth.value)} a month`
  const cost =
    tape.costPer1000.value === null
      ? ''
      : ` It costs ${amountText(tape.costPer1000, words)} for 1000 good cases.`
  return {
    title: 'Tape by head, a shift',
    note: `All heads together: ${said(tape.perShift, words.distance)} a shift (${said(tape.mass, words.mass)})${month}, ${said(tape.rolls, figures)} rolls and ${said(tape.changes, figures)} changes a shift.${cost}`,
    columns: ['head', 'a strip', 'strips a roll', 'tape', 'rolls', 'changes'],
    rows: tape.heads.map((head) => [
      `${head.machine}, ${head.head}`,
      said(head.strip, words.distance),
      said(head.stripsPerRoll, words.count),
      said(head.perShift, words.distance),
      said(head.rolls, figures),
      said(head.changes, figures),
    ]),
  }
}

function curveTables({ curves }: Hand, words: Words): Table[] {
  return curves.map((curve) => ({
    title: `Rate over belt speed, ${curve.machine}`,
    note: `For its mean case of ${said(curve.meanLength, words.length)}, one close on the other. The gap grows with the speed, so the rate nears ${bounded(curve.ceiling, words.rate)}, one case a reset, and never passes it.${curve.littleGainFrom.value === null ? '' : ` From ${words.speed(curve.littleGainFrom.value)} on another ${words.speed(1 / 60)} brings less than a quarter of a case/min.`}`,
    columns: ['belt speed', 'gap', 'rate', ''],
    words: [''],
    rows: curve.points.map((point) => [
      said(point.speed, words.speed),
      said(point.gap, words.length),
      said(point.rate, words.rate),
      [
        point.speed.value === curve.speed.value ? 'as the scenario has it' : '',
        point.speed.value! > curve.rated.value! * 1.001 ? 'above what the heads are rated for' : '',
      ]
        .filter((part) => part)
        .join('; '),
    ]),
  }))
}

const widthName = (width: Amount, isChosen: boolean, words: Words) => {
  const trade: Record<string, string> = { '0.048': ', 2 inch', '0.072': ', 3 inch' }
  return `${said(width, words.length)}${trade[String(width.value)] ?? ''}${isChosen ? ', chosen' : ''}`
}

function closureTable(closure: Closure, words: Words): Table {
  const { reference } = closure
  const index = (value: number | null | undefined) =>
    value === null || value === undefined ? nothing : value.toFixed(2)
  return {
    title: 'Closure index, 2 inch against 3 inch',
    note: reference
      ? `${closure.meaning} The reference${reference.note ? `, ${reference.note},` : ''} has tape of ${words.length(reference.width)} and legs of ${words.length(reference.leg)}. ${[...closure.notes, closure.proof].join(' ')}`
      : `No closure is named that is known to hold (closure: reference), so nothing is compared. ${closure.proof}`,
    columns: ['case', 'tape', 'legs', 'peel', 'seam', 'coverage', 'tape on the weaker flap'],
    words: ['tape'],
    rows: reference
      ? closure.compared.map((row) => [
          row.case,
          widthName(row.width, row.isChosen, words),
          index(row.index?.leg),
          index(row.index?.peel),
          index(row.index?.seam),
          index(row.index?.coverage),
          said(row.coverage, words.length),
        ])
      : [],
  }
}

function widthsTable(closure: Closure, words: Words): Table {
  const spare = closure.openedCasesToSpare.value
  const pays =
    spare === null
      ? 'With a price of the tape and a contents-value for every case, it would say how many opened cases 3 inch must spare.'
      : `3 inch pays for its tape where it spares ${figures(spare)} opened cases in 1000.`
  return {
    title: 'What a width costs, 1000 cases',
    note: `The price of other widths is taken in proportion. Width changes neither strips a roll nor roll changes. ${pays}${closure.reference ? '' : ` No closure is named that is known to hold (closure: reference), so their holding is not compared. ${closure.proof}`}`,
    columns: ['tape', 'mass', 'cost', 'heads that do not take it'],
    words: ['heads that do not take it'],
    rows: closure.widths.map((each) => [
      widthName(each.width, each.isChosen, words),
      said(each.massPer1000, words.mass),
      amountText(each.costPer1000, words),
      each.headsThatDoNotTakeIt.join(', ') || 'none',
    ]),
  }
}
