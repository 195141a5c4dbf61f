/** Tables of a fit: values for a scenario, what was read and done, how laws fit, what speaks against taking them. */
import { figures as digits, wordsFor } from '../../catalogue/printed-units.js'
import { type Cell, figures, words } from '../../report/cell.js'
import { grouped, percentText } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import { within } from '../../report/sections.js'
import type { FamilyResult, FitResult } from './document.js'
import { knownOf, knownTime, restsOnText } from './known.js'
import { familyWords } from './words.js'

const { time } = wordsFor('metric')

export const valuesTable = ({ inputs, made }: FitResult): Table =>
  within('values', {
    title: 'Values for the scenario',
    note: `In brackets: ${percentText(made.confidence)} intervals of the rate or of the mean of the distribution.`,
    columns: [...words('input'), ...figures('rate or mean'), ...words('based on', 'value for the scenario')],
    rows: inputs.flatMap((input): Cell[][] => [
      [{ path: input.path }, knownOf(input), restsOnText(input), input.value ?? 'none: keep your own'],
      ...Object.entries(input.also).map(([path, value]): Cell[] => [
        { path },
        null,
        `goes with \`${input.path}\``,
        value,
      ]),
    ]),
  })

/** Each remark once, with the inputs that it is of. */
export function remarksTable({ inputs }: FitResult): Table {
  const pathsOf = new Map<string, string[]>()
  for (const { path, remarks } of inputs)
    for (const { text } of remarks) pathsOf.set(text, [...(pathsOf.get(text) ?? []), path])
  return within('values', {
    title: 'Remarks',
    columns: words('input', 'remark'),
    rows: [...pathsOf].map(([text, paths]) => [
      paths.join(', '),
      `${text.charAt(0).toUpperCase()}${text.slice(1)}${text.endsWith('.') ? '' : '.'}`,
    ]),
  })
}

export const accountTable = ({ account }: FitResult): Table =>
  within('record', {
    title: 'Problems in the record, and what was done',
    note: 'Row 1 is the header. All rows not listed here are used as written.',
    columns: [...words('file', 'what'), ...figures('rows', 'time'), ...words('which', 'fix')],
    rows: account.map(({ file, words: said, did, count, seconds, rows, fix }) => [
      file,
      `${did === 'refused' ? 'Cannot be used: ' : ''}${said}`,
      { value: count, unit: 'count' },
      seconds > 0 ? { value: seconds, unit: 's' } : null,
      rows.length === 0 ? '' : `${rows.join(', ')}${count > rows.length ? ', ...' : ''}`,
      fix,
    ]),
  })

export const timeTable = ({ record }: FitResult): Table => {
  const all = record.time.reduce((sum, each) => sum + (each.time.value ?? 0), 0)
  return within('record', {
    title: 'Where the time of the shifts went',
    columns: [...words('what'), ...figures('time', 'share', 'stops')],
    rows: record.time.map(({ what, time: spent, stops }) => [
      what,
      spent,
      { value: all > 0 ? (spent.value ?? 0) / all : null, unit: 'share' },
      stops > 0 ? { value: stops, unit: 'count' } : null,
    ]),
  })
}

const pText = (test: { p: number } | null): Cell =>
  test === null ? null : test.p < 0.001 ? 'below 0.001' : digits(test.p, 2)

const parametersText = ({ parameters }: FamilyResult): string =>
  parameters
    .map(({ name, unit, value, low, high }) => {
      const said = (number: number) => (unit === 's' ? time(number) : digits(number))
      return `${name} ${said(value)}${low === null || high === null ? '' : ` (${said(low)} to ${said(high)})`}`
    })
    .join(', ')

export const familiesTable = ({ inputs }: FitResult): Table =>
  within('inputs', {
    title: 'How well each distribution fits',
    note: 'Smaller BIC is better. p: how often a record from this distribution shows an equally large gap (bootstrap: drawn, read by the same clock, fitted again). Below 0.05 the distribution is rejected. With thousands of times every distribution is rejected: then look at the gap of the quantiles.',
    columns: [
      ...words('input', 'law', 'parameters'),
      ...figures('mean of the distribution', 'BIC', 'p (largest gap)', 'p (tails too)', 'gap of quantiles'),
    ],
    behind: 'quantiles',
    rows: inputs.flatMap((input) =>
      input.families.map((family): Cell[] => [
        { path: input.path },
        `${familyWords[family.family]}${input.chosen === family.family ? ' (chosen)' : input.alike.includes(family.family) ? ' (fits equally well)' : ''}`,
        parametersText(family),
        knownTime(family.mean),
        grouped(family.bic, 1),
        pText(family.kolmogorovSmirnov),
        pText(family.andersonDarling),
        family.quantileGap === null ? null : { value: family.quantileGap, unit: 'share' },
      ]),
    ),
  })

export const testsTable = ({ inputs }: FitResult): Table =>
  within('alike', {
    title: 'Tests of the assumptions of a fit',
    note: 'One distribution or rate for the whole record assumes that nothing changed during it. Shown: at 5 %, for all tests of this table together (Holm).',
    columns: [
      ...words('input', 'question'),
      ...figures('statistic', 'p', 'p, adjusted (Holm)'),
      ...words('answer'),
    ],
    behind: 'trend',
    rows: inputs.flatMap((input) =>
      input.tests.map((test): Cell[] => [
        { path: input.path },
        test.asks,
        digits(test.statistic),
        pText(test),
        pText({ p: test.adjustedP }),
        test.isShown ? 'shown' : 'not shown',
      ]),
    ),
  })

export const filesTable = ({ record }: FitResult): Table =>
  within('record', {
    title: 'Files',
    columns: [...words('file'), ...figures('rows'), ...words('sha256')],
    rows: record.files.map(({ file, rows, sha256 }) => [
      file,
      { value: rows, unit: 'count' },
      sha256.slice(0, 12),
    ]),
  })
