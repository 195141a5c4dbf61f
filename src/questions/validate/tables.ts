/** Tables of a validation: the verdict and what stands beside it, the days, stops by cause. */
import { figures as digits } from '../../catalogue/printed-units.js'
import { type Cell, figures, words } from '../../report/cell.js'
import { percentText } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import { within } from '../../report/sections.js'
import type { CauseResult, GapResult, Known, ValidateResult } from './document.js'
import { signed, signedPercent } from './words.js'

const pText = (p: number | null): string => (p === null ? '–' : p < 0.001 ? 'below 0.001' : digits(p, 2))

const endsText = ({ low, high }: Pick<Known, 'low' | 'high'>, said: (value: number) => string): string =>
  low === null || high === null ? 'no interval' : `${said(low)} to ${said(high)}`

/** The tests, one row each, with what each of them says. */
export function testsTable(result: ValidateResult): Table {
  const { good, ranks, regression, made, margin, days, runs } = result
  const { difference, bootstrap, share } = good
  const confidence = percentText(made.confidence)
  return within('figures', {
    title: 'Good cases of plant and model',
    note: `Plant ${digits(good.plant, 4)}, model ${digits(good.model, 4)} good cases a day, over ${days.length} days. Differences: model minus plant.`,
    columns: words('what', 'result', 'meaning'),
    rows: [
      [
        `two one-sided tests, margin ${percentText(margin)}`,
        `${signedPercent(share.mean)} (${endsText(share, signedPercent)}), p ${pText(good.p)}`,
        'the verdict: shown within if the whole interval lies within the margin, shown outside if it lies outside',
      ],
      [
        'difference a day',
        `${signed(difference.mean)} cases (${endsText(difference, signed)}, ${confidence})`,
        difference.t === null
          ? 'too few days to say how far it may be off'
          : `t ${signed(difference.t)} with ${difference.degreesOfFreedom} degrees of freedom, p ${pText(difference.p)}, days in pairs`,
      ],
      ...(bootstrap
        ? [
            [
              'the same, by bootstrap of days',
              `${endsText(bootstrap, signed)} cases`,
              'without an assumed distribution of the differences: for few, skewed days',
            ],
          ]
        : []),
      [
        `days within ${percentText(ranks.share)} of their runs`,
        `${ranks.inside} of ${days.length}, p ${pText(ranks.p)}`,
        `between runs ${ranks.low} and ${ranks.high} of ${runs} in order; p: how often a perfect model has as few days inside`,
      ],
      regression
        ? [
            'difference on sum',
            `intercept ${signed(regression.intercept)}, slope ${signed(regression.slope)}, F ${digits(regression.f)}, p ${pText(regression.p)}`,
            `do means and spreads agree? If so, both are 0 (F with ${regression.degreesOfFreedom.join(' and ')} degrees of freedom, p by exchanging plant and model day by day; the first run of each)`,
          ]
        : ['difference on sum', 'not calculated', 'at least three different days are needed'],
    ],
  })
}

/** The days by the laws of their stops and with the stops of the plant, side by side. */
export function sidesTable({ good, ranks, beside, days }: ValidateResult): Table {
  const rows = [
    { name: 'with simulated stops', good, ranks },
    ...(beside ? [{ name: "with the plant's own stops", ...beside }] : []),
  ]
  return within('figures', {
    title: "With simulated stops, and with the plant's own",
    note: 'Same days and same random numbers. The difference in the second row comes from the model of the line; the rest in the first row comes from the simulated stops.',
    columns: words('stops', 'model minus plant', 'days within', 'verdict'),
    rows: beside
      ? rows.map(({ name, good: { share, verdict }, ranks: { inside } }): Cell[] => [
          name,
          `${signedPercent(share.mean)} (${endsText(share, signedPercent)})`,
          `${inside} of ${days.length}`,
          { within: 'shown within', outside: 'shown outside', 'not-shown': 'not shown' }[verdict],
        ])
      : [],
  })
}

export const daysTable = ({ days, ranks, runs, drivenBy }: ValidateResult): Table =>
  within('days', {
    title: 'Good cases day by day',
    note: `Range: ${percentText(ranks.share)} of ${runs} runs${drivenBy === 'both' ? ' with simulated stops' : ''}. Runs below: runs with fewer good cases than the plant, ties decided at random. Arrivals: as logged, or simulated.`,
    columns: [
      ...words('day'),
      ...figures('plant', 'median of runs', 'range of runs', 'runs below'),
      ...words('cases'),
    ],
    behind: 'days',
    rows: days.map(({ day, plant, model, below, isInside, drivenBy: cases }): Cell[] => [
      day,
      { value: plant, unit: 'count' },
      { value: model.median, unit: 'count' },
      `${digits(model.low, 4)} to ${digits(model.high, 4)}`,
      isInside ? { value: below, unit: 'count' } : `outside: ${below}`,
      cases === 'cases' ? 'log' : 'law',
    ]),
  })

export const leftOutTable = ({ leftOut }: ValidateResult): Table =>
  within('days', {
    title: 'Days that were left out',
    columns: words('day', 'why'),
    rows: leftOut.map(({ day, why }) => [day, why]),
  })

const gapText = (
  { isPutIn }: Pick<CauseResult, 'isPutIn'>,
  gap: GapResult,
  said: (value: number) => string,
): string => (isPutIn ? '–' : `${said(gap.mean)} (${endsText(gap, said)})`)

function answerOf({ path, isPutIn, stops, seconds }: CauseResult): string {
  if (isPutIn) return 'put in as logged'
  if (path === null) return 'not compared: a log may not contain all of them'
  const shown = [...(stops.isShown ? ['stops'] : []), ...(seconds.isShown ? ['minutes'] : [])]
  return shown.length > 0 ? `shown to differ: ${shown.join(', ')}` : 'not shown to differ'
}

export function causesTable({ causes, made }: ValidateResult): Table {
  const minutes = (seconds: number) => digits(seconds / 60)
  return within('causes', {
    title: 'Stops by cause, a day',
    note: `Model minus plant. The intervals hold for all of this table at the same time with ${percentText(made.confidence)} confidence (Bonferroni). A difference is shown if its interval excludes 0.`,
    columns: [
      ...words('cause'),
      ...figures('stops, plant', 'model', 'difference', 'minutes, plant', 'model', 'difference'),
      ...words('answer'),
    ],
    behind: 'causes',
    rows: causes.map((cause): Cell[] => [
      cause.words,
      digits(cause.plant.stops),
      digits(cause.model.stops),
      gapText(cause, cause.stops, signed),
      minutes(cause.plant.seconds),
      minutes(cause.model.seconds),
      gapText(cause, cause.seconds, (value) => signed(value / 60)),
      answerOf(cause),
    ]),
  })
}
