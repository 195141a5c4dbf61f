/** The tables of a run: the line, what each machine does, where cases stand and go, people, tape and money. */

import { bareParts, lossesTable } from '../../answers/losses-table.js'
import { leftOutNote } from '../../answers/warnings.js'
import type { Figure } from '../../catalogue/figure.js'
import { partingOf } from '../../kinds/traits.js'
import { mapping } from '../../line/effectiveness.js'
import { type Cell, figures, words } from '../../report/cell.js'
import { figureParts, type Parts } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import { within } from '../../report/sections.js'
import type { RunResult } from './document.js'
import { handTable } from './hand-table.js'
import { measuresTable } from './measures-table.js'

/** All tables, some without rows. */
export const runTables = (result: RunResult): Table[] => [
  measuresTable(result),
  within('machines', stateTable(result)),
  within('losses', lossesTable(result)),
  within('machines', stopsTable(result)),
  within('machines', effectivenessTable(result)),
  within('machines', crewTable(result)),
  within('places', placesTable(result)),
  within('places', routesTable(result)),
  within('money', tapeTable(result)),
  within('money', costTable(result)),
  within('hand', handTable(result)),
]

/** Figures by their keys; a key that there is none of stands for what is not known. */
const pick = (of: Record<string, Figure>, ...keys: readonly string[]): Cell[] => keys.map((key) => of[key])

/** States that take part in any machine, with their shares of the shift. */
function stateTable({ equipment, display }: RunResult): Table {
  const pieces = Object.entries(equipment)
  const [first] = pieces
  const shown = Object.entries(first?.[1].states ?? {}).filter(([key]) =>
    pieces.some(([, { states }]) => (states[key]?.mean ?? 0) > 0),
  )
  const share = (figure: Figure | undefined) =>
    !figure || figure.mean === 0 ? '' : bareParts(figure, display)
  return {
    title: 'What each machine does, % of the shift',
    note: 'A machine is in one state at a time; the means of a column add up to 100 %.',
    columns: [...words('state'), ...figures(...pieces.map(([name]) => name))],
    rows: shown.map(([key, { label }]) => [
      label.slice(first![0].length + 2),
      ...pieces.map(([, { states }]) => share(states[key])),
    ]),
  }
}

function placesTable(result: RunResult): Table {
  const places = Object.entries(result.equipment)
    .filter(([, { measures }]) => measures['held-largest'])
    .map(([name, { measures }]) => [
      name,
      ...pick(measures, 'held', 'held-p95', 'held-largest', 'share-full', 'wait'),
    ])
  const sources = Object.entries(result.arrivals)
    .filter(([, source]) => source.blocked ?? source.held ?? source['turned-away'])
    .map(([name, source]) => [
      ...[name, source.held, undefined, source['held-largest']],
      ...[whenFull(source, result), undefined],
    ])
  return {
    title: 'Where cases stand',
    note: '',
    columns: [
      ...words('place'),
      ...figures(
        'cases, mean',
        'not passed in 95 % of the time',
        'most at one time',
        'full',
        'wait for work',
      ),
    ],
    rows: [...sources, ...places],
  }
}

/** What a source does where the line has no room: `waits 3 ± 1 %;`, `turns away 4 ± 1 %`. */
function whenFull(source: Record<string, Figure>, { display }: RunResult): Parts | undefined {
  const told = { blocked: 'waits', 'turned-away': 'turns away', 'orders-done': 'orders done' }
  const said = Object.entries(told).flatMap(([key, word]): Parts[] => {
    if (!source[key]) return []
    const [value, ...rest] = figureParts(source[key], display)
    return [[`${word} ${value}`, ...rest]]
  })
  if (said.length === 0) return undefined
  return said.flatMap((parts, index) =>
    index === said.length - 1 ? parts : [...parts.slice(0, -1), `${parts.at(-1)};`],
  )
}

const stopWords: Record<string, string> = {
  jams: 'jams',
  'roll-changes': 'roll changes',
  'size-settings': 'size settings',
  breakdowns: 'breakdowns',
  'blade-services': 'blade services',
  'tape-breaks': 'tape breaks',
}

const stopsTable = ({ equipment }: RunResult): Table => ({
  title: 'Stops',
  note: '',
  columns: [
    ...words('machine', 'stop'),
    ...figures('a shift', 'from stop to restart, mean', 'of it waiting for crew'),
  ],
  rows: Object.entries(equipment).flatMap(([name, { measures }]) =>
    Object.entries(stopWords)
      .filter(([key]) => measures[key])
      .map(([key, stop]) => [name, stop, ...pick(measures, key, `${key}-stop`, `${key}-wait`)]),
  ),
})

/** What diverts send where, and what inspections find: every measure that counts cases on their way. */
function routesTable({ equipment, measures }: RunResult): Table {
  const said = (key: string): string | null => {
    if (key.startsWith('to-')) return `sent to ${key.slice(3)}`
    return ['inspected', 'rejected'].includes(key) || key.startsWith('unsealed-')
      ? key.replace('-', ', ')
      : null
  }
  const rows = Object.entries(equipment)
    .filter(([, piece]) => partingOf(piece) !== null)
    .flatMap(([name, piece]) =>
      Object.entries(piece.measures).flatMap(([key, figure]): Cell[][] => {
        const what = said(key)
        return what === null ? [] : [[name, what, figure]]
      }),
    )
  return {
    title: 'Where cases go, a shift',
    note: '',
    columns: [...words('place', 'cases'), ...figures('a shift')],
    rows: [...rows, ...(measures.rejected ? [['the line', 'left rejected', measures.rejected]] : [])],
  }
}

const tapeTable = ({ equipment }: RunResult): Table => ({
  title: 'Tape by head, a shift',
  note: '',
  columns: [...words('head'), ...figures('tape used', 'of it lost', 'a strip', 'rolls used', 'roll changes')],
  rows: Object.entries(equipment).flatMap(([name, { heads = {} }]) =>
    Object.entries(heads).map(([head, of]) => [
      `${name}, ${head}`,
      ...pick(of, 'tape', 'loss', 'tape-per-case', 'rolls', 'changes'),
    ]),
  ),
})

const effectivenessTable = ({ equipment }: RunResult): Table => ({
  title: 'Effectiveness',
  note: mapping,
  columns: [
    ...words('machine'),
    ...figures('availability', 'effectiveness', 'quality', 'OEE index', 'technical availability'),
  ],
  rows: Object.entries(equipment).flatMap(([name, { effectiveness: of }]) =>
    of
      ? [[name, ...pick(of, 'availability', 'effectiveness', 'quality', 'oee', 'technical-availability')]]
      : [],
  ),
})

function crewTable({ crew }: RunResult): Table {
  const crews = Object.entries(crew)
  const hasPost = crews.some(([, of]) => of['at-post'])
  return {
    title: 'People',
    note: 'Busy: walking and working, share of the time in which they are there.',
    columns: [...words('crew'), ...figures('busy', ...(hasPost ? ['somebody at the post'] : []))],
    rows: crews.map(([name, of]) => [name, of.busy, ...(hasPost ? [of['at-post'] ?? ''] : [])]),
  }
}

const costTable = (result: RunResult): Table => ({
  title: 'Cost of 1000 good cases',
  note: leftOutNote(result.costLeftOut, result),
  columns: [...words('element'), ...figures('cost')],
  rows: Object.entries(result.measures)
    .filter(([key]) => key.startsWith('cost-per-1000'))
    .map(([, figure]) => [figure.label, figure]),
})
