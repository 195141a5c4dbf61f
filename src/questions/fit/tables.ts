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
    note: `In brackets: ${percentText(made.confidence)} intervals of the rate, or of the mean of the law.`,
    columns: [
      ...words('input'),
      ...figures('rate or mean'),
      ...words('rests on', 'value as a scenario has it'),
    ],
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
    title: 'What to know of them',
    columns: words('input', 'what to know'),
    rows: [...pathsOf].map(([text, paths]) => [
      paths.join(', '),
      `${text.charAt(0).toUpperCase()}${text.slice(1)}${text.endsWith('.') ? '' : '.'}`,
    ]),
  })
}

export const accountTable = ({ account }: FitResult): Table =>
  within('record', {
    title: 'What was found in the record, and done',
    note: 'Row 1 is the header. What is not listed here stands as it was written.',
    columns: [...words('file', 'what'), ...figures('rows', 'time'), ...words('which', 'nearest fix')],
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
    title: 'What the time of the shifts went to',
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
    title: 'How each law fits',
    note: 'Smaller BIC is better. p: how often a record of that law shows as large a gap (bootstrap: drawn, read by the same clock, fitted again); below 0.05 the law is refused. With thousands of times every law is refused: then the gap of the quantiles tells.',
    columns: [
      ...words('input', 'law', 'parameters'),
      ...figures('mean of the law', 'BIC', 'p (largest gap)', 'p (tails too)', 'quantiles apart'),
    ],
    behind: 'quantiles',
    rows: inputs.flatMap((input) =>
      input.families.map((family): Cell[] => [
        { path: input.path },
        `${familyWords[family.family]}${input.chosen === family.family ? ' (chosen)' : input.alike.includes(family.family) ? ' (not told apart)' : ''}`,
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
    title: 'Tests of what a fit takes for granted',
    note: 'One law or rate for the whole record takes for granted that all of it was alike. Shown: with all tests of this table taken together (Holm), at 5 %.',
    columns: [
      ...words('input', 'what is asked'),
      ...figures('statistic', 'p', 'p, all together'),
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
