/** The tables of a run: the line, what each machine does, where cases stand and go, people, tape and money. */

import { shownName } from '../../answers/line-result.js'
import { bareParts, lossesTable } from '../../answers/losses-table.js'
import { costTable } from '../../answers/study-report.js'
import { causeKeys } from '../../catalogue/causes.js'
import { isCostKey } from '../../catalogue/costs.js'
import { entriesOf, type Figure, type Figures } from '../../catalogue/figure.js'
import {
  isSentKey,
  ofEffectiveness,
  ofHeads,
  ofPieces,
  type PieceKey,
  pieceRow,
} from '../../catalogue/of-equipment.js'
import { type ArrivalKey, ofArrivals, ofCrew } from '../../catalogue/of-people.js'
import { inLong } from '../../catalogue/printed-units.js'
import type { NamedRow } from '../../catalogue/row.js'
import { stateKeys, stateLabel } from '../../catalogue/states.js'
import { partingOf } from '../../kinds/traits.js'
import { mapping } from '../../line/effectiveness.js'
import { failureMapping } from '../../line/failures.js'
import { type Cell, figures, words } from '../../report/cell.js'
import { figureParts, type Parts, printFigure } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import { within } from '../../report/sections.js'
import type { RunResult } from './document.js'
import { handTable } from './hand-table.js'
import { inputEndsTable, inputsTable } from './inputs-table.js'

/** All tables, some without rows. */
export const runTables = (result: RunResult): Table[] => [
  measuresTable(result),
  inputsTable(result),
  inputEndsTable(result),
  within('machines', stateTable(result), 'states'),
  within('losses', lossesTable(result), 'losses'),
  within('machines', stopsTable(result)),
  within('machines', effectivenessTable(result)),
  within('machines', failuresTable(result)),
  within('machines', crewTable(result)),
  within('places', placesTable(result), 'held'),
  within('places', routesTable(result)),
  within('money', tapeTable(result), 'tape'),
  within('money', costTable([['cost', result]], result)),
  within('hand', handTable(result)),
]

/** Figures by their keys; a key that there is none of stands for what is not known. */
const pick = <Key extends string>(of: Figures<Key>, keys: readonly Key[]): Cell[] =>
  keys.map((key) => of[key])

/** Their columns. */
const columnsOf = <Key extends string>(rows: Readonly<Record<Key, NamedRow>>, keys: readonly Key[]) =>
  figures(...keys.map((key) => rows[key].words!))

/** States that take part in any machine, with their shares of the shift. */
function stateTable({ equipment, display }: RunResult): Table {
  const pieces = Object.entries(equipment)
  const shown = stateKeys.filter((key) => pieces.some(([, { states }]) => (states[key]?.mean ?? 0) > 0))
  const share = (figure: Figure | undefined) =>
    !figure || figure.mean === 0 ? '' : bareParts(figure, display)
  return {
    title: 'What each machine does, % of the shift',
    note: 'A machine is in one state at a time; the means of a column add up to 100 %.',
    columns: [
      ...words('state'),
      ...figures(...pieces.map(([name, piece]) => shownName(name, piece, 'mean'))),
    ],
    rows: shown.map((key) => [stateLabel(key), ...pieces.map(([, { states }]) => share(states[key]))]),
  }
}

function placesTable(result: RunResult): Table {
  const keys = ['held', 'held-p95', 'held-largest', 'share-full', 'wait'] as const
  const places = Object.entries(result.equipment)
    .filter(([, { measures }]) => measures.held)
    .map(([name, piece]) => [shownName(name, piece), ...pick(piece.measures, keys)])
  const sources = Object.entries(result.arrivals)
    .filter(([, source]) => source.blocked ?? source.held ?? source['turned-away'])
    .map(([name, source]) => [
      ...[name, source.held, undefined, source['held-largest']],
      ...[whenFull(source, result), undefined],
    ])
  return {
    title: 'Where cases wait',
    columns: [...words('place'), ...columnsOf(ofPieces, keys)],
    rows: [...sources, ...places],
  }
}

/** What a source does where the line has no room: `waits 3 ± 1 %;`, `turns away 4 ± 1 %`. */
function whenFull(source: Figures<ArrivalKey>, { display }: RunResult): Parts | undefined {
  const keys = ['blocked', 'turned-away', 'orders-done'] as const
  const said = keys.flatMap((key): Parts[] => {
    if (!source[key]) return []
    const [value, ...rest] = figureParts(source[key], display)
    return [[`${ofArrivals[key].words} ${value}`, ...rest]]
  })
  if (said.length === 0) return undefined
  return said.flatMap((parts, index) =>
    index === said.length - 1 ? parts : [...parts.slice(0, -1), `${parts.at(-1)};`],
  )
}

const stopsTable = ({ equipment }: RunResult): Table => ({
  title: 'Stops',
  columns: [
    ...words('machine', 'stop'),
    ...figures('a shift', 'from stop to restart, mean', 'waiting for crew, mean'),
  ],
  rows: Object.entries(equipment).flatMap(([name, piece]) => {
    const { measures, jams = {} } = piece
    const shown = shownName(name, piece)
    return causeKeys
      .filter((key) => measures[key])
      .flatMap((key) => [
        [shown, ofPieces[key].words, ...pick(measures, [key, `${key}-stop`, `${key}-wait`])],
        // kinds of jam that have names, below all jams of their piece
        ...Object.entries(key === 'jams' ? jams : {}).map(([kind, of]) => [
          ...[shown, `${kind} only`],
          ...pick(of, ['stops', 'stop', 'wait']),
        ]),
      ])
  }),
})

/** What diverts send where, and what inspections find: every measure that counts cases on their way. */
function routesTable({ equipment, measures }: RunResult): Table {
  const keys: readonly PieceKey[] = ['inspected', 'rejected', 'unsealed-found', 'unsealed-missed']
  const rows = Object.entries(equipment)
    .filter(([, piece]) => partingOf(piece) !== null)
    .flatMap(([name, piece]) =>
      entriesOf(piece.measures)
        .filter(([key]) => isSentKey(key) || keys.includes(key))
        .map(([key, figure]): Cell[] => [shownName(name, piece), pieceRow(key).words, figure]),
    )
  return {
    title: 'Where cases go, a shift',
    columns: [...words('place', 'cases'), ...figures('a shift')],
    rows: [...rows, ...(measures.rejected ? [['the line', 'rejected', measures.rejected]] : [])],
  }
}

const headKeys = ['tape', 'loss', 'tape-per-case', 'rolls', 'changes'] as const

const tapeTable = ({ equipment }: RunResult): Table => ({
  title: 'Tape by head, a shift',
  columns: [...words('head'), ...columnsOf(ofHeads, headKeys)],
  rows: Object.entries(equipment).flatMap(([name, piece]) =>
    Object.entries(piece.heads ?? {}).map(([head, of]) => [
      `${shownName(name, piece)}, ${head}`,
      ...pick(of, headKeys),
    ]),
  ),
})

const isoKeys = ['availability', 'effectiveness', 'quality', 'oee', 'technical-availability'] as const

const effectivenessTable = ({ equipment }: RunResult): Table => ({
  title: 'Effectiveness',
  note: mapping,
  columns: [...words('machine'), ...columnsOf(ofEffectiveness, isoKeys)],
  rows: Object.entries(equipment).flatMap(([name, { effectiveness: of }]) =>
    of?.oee ? [[name, ...pick(of, isoKeys)]] : [],
  ),
})

const failureKeys = ['MTBF', 'MTTF', 'MTTR'] as const

const failuresTable = ({ equipment }: RunResult): Table => ({
  title: 'Failures and repairs',
  note: failureMapping,
  columns: [...words('machine'), ...columnsOf(ofEffectiveness, failureKeys)],
  rows: Object.entries(equipment).flatMap(([name, { effectiveness: of = {} }]) =>
    of.MTBF ? [[name, inLong(of.MTBF), inLong(of.MTTF), of.MTTR]] : [],
  ),
})

/** Columns that are there only where somebody has such figures. */
const someHave = ['other-work', 'other-work-done', 'other-work-left', 'at-post'] as const

function crewTable({ crew }: RunResult): Table {
  const crews = Object.entries(crew)
  const keys = someHave.filter((key) => crews.some(([, of]) => of[key]))
  const note = keys.includes('other-work')
    ? ' Other work is shown separately, as a share of the same time.'
    : ''
  return {
    title: 'People',
    note: `Busy: walking and working, as a share of the time on duty.${note}`,
    columns: [...words('crew'), ...columnsOf(ofCrew, ['busy', ...keys])],
    rows: crews.map(([name, of]) => [name, of.busy, ...keys.map((key) => of[key] ?? '')]),
  }
}

/** A row a figure, as the document has them; the elements of the cost have a table of their own. */
export function measuresTable({ measures, display }: RunResult): Table {
  return {
    section: 'figures',
    title: 'Figures of the line',
    columns: [...words('figure'), ...figures('value', 'plus-minus'), ...words('unit')],
    rows: entriesOf(measures)
      .filter(([key]) => !isCostKey(key))
      .map(([, figure]) => {
        const { value, interval, unit } = printFigure(figure, display)
        return [figure.label, value, interval, unit]
      }),
  }
}
