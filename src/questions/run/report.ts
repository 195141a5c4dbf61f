/** What the report of a run says: headline sentences and tables, the same for the terminal and the page. */

import { closingOf } from '../../answers/closing.js'
import type { EquipmentResult } from '../../answers/line-result.js'
import { lossesTable } from '../../answers/losses-table.js'
import { butCannotWork, cannotWork, costWords, leftOutNote } from '../../answers/warnings.js'
import type { Figure } from '../../catalogue/figure.js'
import { has, partingOf } from '../../kinds/traits.js'
import { mapping } from '../../line/effectiveness.js'
import type { Layout } from '../../pictures/layout.js'
import { planSvg } from '../../pictures/plan.js'
import { timeSpaceSvg } from '../../pictures/time-space.js'
import {
  type Display,
  durationText,
  figureText,
  grouped,
  nothing,
  percentText,
  printFigure,
  shareOfShifts,
} from '../../report/format.js'
import type { Report, Table } from '../../report/report.js'
import { inSections, within } from '../../report/sections.js'
import type { Stretch } from '../../shifts/stretch.js'
import { certaintyLines, requirementLines } from './certainty.js'
import type { RunResult } from './document.js'
import { handTable } from './hand-table.js'
import { measuresTable } from './measures-table.js'
import { runRecord } from './record.js'

/** What was simulated: shifts, or campaigns of several in a row. */
function observations(count: number, { length, campaign }: RunResult['shift']): string {
  if (campaign === 1) return `${count} shifts of ${durationText(length)}`
  return `${count} campaigns of ${campaign} shifts of ${durationText(length)} in a row`
}

/** The report of a run. */
export function runReport(result: RunResult): Report {
  const { made, shift } = result
  const tables = [
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
  return {
    title: made.scenario.title,
    subtitle: `${observations(made.shifts, shift)} simulated, seed "${made.seed}". Plus-minus: ${percentText(made.confidence)} confidence that the long-run figure lies within it.`,
    headline: headline(result),
    certainty: certaintyLines(result),
    tables: inSections(tables.filter((table) => table.rows.length > 0)),
    limits: limits(result),
    ...closingOf(made, result.assumed, 'Assumed, because the scenario does not say'),
    ...runRecord(result),
    ...(result.layout && result.stretch
      ? { moment: momentOf(result.layout, result.stretch, result.display) }
      : {}),
    ...(result.layout
      ? {
          plan: planSvg(result.layout, {
            ...(result.byHand?.bottleneck ? { limiting: result.byHand.bottleneck } : {}),
            display: result.display,
          }),
        }
      : {}),
  }
}

/** What a page has room for on a telephone of 390 px, px. */
const telephone = 358

const momentOf = (layout: Layout, stretch: Stretch, display: Display) => ({
  wide: timeSpaceSvg(layout, stretch, { display }),
  narrow: timeSpaceSvg(layout, stretch, { display, width: telephone, id: 'time-space-narrow' }),
})

function headline(result: RunResult): string[] {
  const { measures, display, target } = result
  const lines = [
    `The line puts out ${figureText(measures.throughput, display)} of working time: ${figureText(measures.output, display)} a shift.${poorShift(result)}`,
  ]
  const held = measures['target-held']
  if (target !== null && held) {
    const rate = `${Number((target * 60).toPrecision(4))} cases/min`
    const share = `target of ${rate} in ${shareOfShifts(held)} of the shifts`
    lines.push(
      cannotWork(result)
        ? `It would reach its ${share}${verdictOfImpossible(result)}.`
        : `It reaches its ${share}. ${verdict(result)}`,
    )
  } else lines.push('No target is given, so there is no verdict: add `target:` to the scenario.')
  lines.push(
    `A case is in the line for ${figureText(measures['time-in-system'], display)} on average; 95 of 100 cases for less than ${figureText(measures['time-in-system-p95'], display)}.`,
  )
  if (measures.tape)
    lines.push(
      `It uses ${figureText(measures.tape, display)} of tape a shift (${figureText(measures['tape-mass'], display)}); ${figureText(measures['tape-per-case'], display)} lie on the case.`,
    )
  if ((measures.unsealed?.mean ?? 0) > 0)
    lines.push(`${figureText(measures.unsealed, display)} a shift leave the line unsealed and unnoticed.`)
  if (measures['cost-per-1000'])
    lines.push(
      `1000 good cases cost ${moneyText(measures['cost-per-1000'], result)}${costWords('', result)}.`,
    )
  return [...lines, ...requirementLines(result)]
}

/** What may be promised of a single shift; nothing where the shifts are too few to say. */
function poorShift({ measures, display }: RunResult): string {
  const figure = measures['output-p10']
  if (!figure || figure.low === null || figure.high === null) return ''
  return ` 9 of 10 shifts put out at least ${figureText(figure, display)}.`
}

/** The verdict on the target in words: what the mean says and how sure it is. */
function verdict(result: RunResult): string {
  const { throughput } = result.measures
  const { target } = result
  if (target === null || !throughput || throughput.low === null || throughput.high === null) return ''
  if (throughput.low >= target) return 'On average it holds the target.'
  if (throughput.high < target)
    return `On average it falls short by ${figureText(shortfall(throughput, target), result.display)}.`
  return 'Whether it holds the target on average these shifts do not show: simulate more.'
}

/** The same of a line that cannot work: both in one sentence. */
function verdictOfImpossible(result: RunResult): string {
  const { target, measures } = result
  const { low, high } = measures.throughput ?? { low: null, high: null }
  const mean =
    target === null || low === null || high === null || (low < target && high >= target)
      ? ''
      : ` and on average it would ${low >= target ? 'hold the target' : 'fall short of it'}`
  return `${mean}${butCannotWork(result)}`
}

const shortfall = (throughput: Figure, target: number): Figure => ({
  ...throughput,
  mean: target - throughput.mean!,
  low: target - throughput.high!,
  high: target - throughput.low!,
})

/** States that take part in any machine, with their shares of the shift. */
function stateTable(result: RunResult): Table {
  const pieces = Object.entries(result.equipment)
  const keys = Object.keys(pieces[0]?.[1].states ?? {}).filter((key) =>
    pieces.some(([, piece]) => (piece.states[key]?.mean ?? 0) > 0),
  )
  const wording = (key: string) => pieces[0]![1].states[key]!.label.slice(pieces[0]![0].length + 2)
  return {
    title: 'What each machine does, % of the shift',
    note: 'A machine is in one state at a time; the means of a column add up to 100 %.',
    columns: ['state', ...pieces.map(([name]) => name)],
    rows: keys.map((key) => [
      wording(key),
      ...pieces.map(([, piece]) => shareText(piece.states[key], result)),
    ]),
  }
}

function shareText(figure: Figure | undefined, result: RunResult): string {
  if (!figure || figure.mean === 0) return ''
  const { value, interval } = printFigure(figure, result.display)
  return `${value} ${interval}`.trim()
}

function placesTable(result: RunResult): Table {
  const rows = Object.entries(result.equipment)
    .filter(([, piece]) => piece.measures['held-largest'])
    .map(([name, { measures }]) => [
      name,
      ...['held', 'held-p95', 'held-largest', 'share-full', 'wait'].map((key) =>
        figureText(measures[key], result.display),
      ),
    ])
  const sources = Object.entries(result.arrivals)
    .filter(([, source]) => source.blocked ?? source.held ?? source['turned-away'])
    .map(([name, source]) => [
      name,
      figureText(source.held, result.display),
      nothing.value,
      figureText(source['held-largest'], result.display),
      sourceText(source, result),
      nothing.value,
    ])
  return {
    title: 'Where cases stand',
    note: '',
    columns: [
      'place',
      'cases, mean',
      'not passed in 95 % of the time',
      'most at one time',
      'full',
      'wait for work',
    ],
    rows: [...sources, ...rows],
  }
}

function sourceText(source: Record<string, Figure>, result: RunResult): string {
  const words = { blocked: 'waits', 'turned-away': 'turns away', 'orders-done': 'orders done' }
  const said = Object.entries(words)
    .filter(([key]) => source[key])
    .map(([key, word]) => `${word} ${figureText(source[key], result.display)}`)
  return said.length > 0 ? said.join('; ') : nothing.value
}

const stopWords: Record<string, string> = {
  jams: 'jams',
  'roll-changes': 'roll changes',
  'size-settings': 'size settings',
  breakdowns: 'breakdowns',
  'blade-services': 'blade services',
  'tape-breaks': 'tape breaks',
}

function stopsTable(result: RunResult): Table {
  const rows = Object.entries(result.equipment).flatMap(([name, { measures }]) =>
    Object.entries(stopWords)
      .filter(([key]) => measures[key])
      .map(([key, words]) => [
        name,
        words,
        ...[key, `${key}-stop`, `${key}-wait`].map((each) => figureText(measures[each], result.display)),
      ]),
  )
  return {
    title: 'Stops',
    note: '',
    columns: ['machine', 'stop', 'a shift', 'from stop to restart, mean', 'of it waiting for crew'],
    words: ['stop'],
    rows,
  }
}

/** What diverts send where, and what inspections find: every measure that counts cases on their way. */
function routesTable(result: RunResult): Table {
  const words = (key: string): string | null => {
    if (key.startsWith('to-')) return `sent to ${key.slice(3)}`
    return ['inspected', 'rejected'].includes(key) || key.startsWith('unsealed-')
      ? key.replace('-', ', ')
      : null
  }
  const rows = Object.entries(result.equipment)
    .filter(([, piece]) => partingOf(piece) !== null)
    .flatMap(([name, { measures }]) =>
      Object.entries(measures).flatMap(([key, figure]) => {
        const what = words(key)
        return what === null ? [] : [[name, what, figureText(figure, result.display)]]
      }),
    )
  const { rejected } = result.measures
  if (rejected) rows.push(['the line', 'left rejected', figureText(rejected, result.display)])
  return {
    title: 'Where cases go, a shift',
    note: '',
    columns: ['place', 'cases', 'a shift'],
    words: ['cases'],
    rows,
  }
}

function tapeTable(result: RunResult): Table {
  const rows = Object.entries(result.equipment).flatMap(([name, piece]: [string, EquipmentResult]) =>
    Object.entries(piece.heads ?? {}).map(([head, figures]) => [
      `${name}, ${head}`,
      ...['tape', 'loss', 'tape-per-case', 'rolls', 'changes'].map((key) =>
        figureText(figures[key], result.display),
      ),
    ]),
  )
  return {
    title: 'Tape by head, a shift',
    note: '',
    columns: ['head', 'tape used', 'of it lost', 'a strip', 'rolls used', 'roll changes'],
    rows,
  }
}

function effectivenessTable(result: RunResult): Table {
  const keys = ['availability', 'effectiveness', 'quality', 'oee', 'technical-availability']
  return {
    title: 'Effectiveness',
    note: mapping,
    columns: ['machine', 'availability', 'effectiveness', 'quality', 'OEE index', 'technical availability'],
    rows: Object.entries(result.equipment).flatMap(([name, { effectiveness }]) =>
      effectiveness ? [[name, ...keys.map((key) => figureText(effectiveness[key], result.display))]] : [],
    ),
  }
}

function crewTable(result: RunResult): Table {
  const crews = Object.entries(result.crew)
  const hasPost = crews.some(([, figures]) => figures['at-post'])
  return {
    title: 'People',
    note: 'Busy: walking and working, share of the time in which they are there.',
    columns: ['crew', 'busy', ...(hasPost ? ['somebody at the post'] : [])],
    rows: crews.map(([name, figures]) => [
      name,
      figureText(figures.busy, result.display),
      ...(hasPost ? [figures['at-post'] ? figureText(figures['at-post'], result.display) : ''] : []),
    ]),
  }
}

function costTable(result: RunResult): Table {
  const rows = Object.entries(result.measures)
    .filter(([key]) => key.startsWith('cost-per-1000'))
    .map(([, figure]) => [figure.label, moneyText(figure, result)])
  return {
    title: 'Cost of 1000 good cases',
    note: leftOutNote(result.costLeftOut, result),
    columns: ['element', 'cost'],
    rows,
  }
}

/** What 1000 cases cost, where the words around it say that it is for 1000. */
const moneyText = (figure: Figure, result: RunResult) =>
  figureText({ ...figure, unit: figure.unit.replace(' per 1000 cases', '') }, result.display)

function limits(result: RunResult): string[] {
  const all = [...result.notes]
  all.push(
    result.shift.start === 'steady'
      ? 'The line runs without end: what it does after it came to its stride is counted, its start is not.'
      : result.shift.campaign > 1
        ? 'The first shift of each campaign starts with an empty line; the others go on where the one before ended.'
        : 'Each shift starts with an empty line, so the first cases out come late and a rate is a little below the steady one.',
  )
  if (Object.values(result.equipment).some((piece) => has(piece, 'tapes')))
    all.push(
      'Jam, roll-change and breakdown figures are inputs: no published data on tape sealers is known. A result is as good as what was measured for them.',
    )
  if (result.outputs.length < 10)
    all.push(
      `Only ${grouped(result.outputs.length, 0)} shifts: the intervals lean on the shifts being alike in spread; 10 or more are usual.`,
    )
  return all
}
