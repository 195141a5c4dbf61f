/** Tables of a validation: the verdict and what stands beside it, the days, stops by cause. */
import { figures as digits } from '../../catalogue/printed-units.js'
import { type Cell, figures, words } from '../../report/cell.js'
import { percentText } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import { within } from '../../report/sections.js'
import type { CauseResult, GapResult, Known, ValidateResult } from './document.js'
import { signedPercent } from './words.js'

const pText = (p: number | null): string => (p === null ? '–' : p < 0.001 ? 'below 0.001' : digits(p, 2))

const endsText = ({ low, high }: Pick<Known, 'low' | 'high'>, said: (value: number) => string): string =>
  low === null || high === null ? 'no interval' : `${said(low)} to ${said(high)}`

const signed = (value: number, figuresOf = 3): string =>
  `${value > 0 ? '+' : value < 0 ? '−' : ''}${digits(Math.abs(value), figuresOf)}`

/** The tests, one row each, with what each of them says. */
export function testsTable(result: ValidateResult): Table {
  const { good, ranks, regression, made, margin, days, runs } = result
  const { difference, bootstrap, share } = good
  const confidence = percentText(made.confidence)
  return within('figures', {
    title: 'Good cases of plant and model',
    note: `Plant ${digits(good.plant, 4)}, model ${digits(good.model, 4)} good cases a day, over ${days.length} days. Model less plant.`,
    columns: words('what', 'result', 'what it says'),
    rows: [
      [
        `two one-sided tests, margin ${percentText(margin)}`,
        `${signedPercent(share.mean)} (${endsText(share, signedPercent)}), p ${pText(good.p)}`,
        'the verdict: shown within where the whole interval lies within the margin, outside where it lies outside',
      ],
      [
        'difference a day',
        `${signed(difference.mean)} cases (${endsText(difference, signed)}, ${confidence})`,
        difference.t === null
          ? 'the days do not say how far it may be off'
          : `t ${signed(difference.t)} with ${difference.degreesOfFreedom} degrees of freedom, p ${pText(difference.p)}, days in pairs`,
      ],
      ...(bootstrap
        ? [
            [
              'the same, days drawn anew',
              `${endsText(bootstrap, signed)} cases`,
              'without a law of the differences: where days are few and skewed',
            ],
          ]
        : []),
      [
        `days within ${percentText(ranks.share)} of their runs`,
        `${ranks.inside} of ${days.length}, p ${pText(ranks.p)}`,
        `between runs ${ranks.low} and ${ranks.high} of ${runs} in order; p: how often so few would be if the model were the plant`,
      ],
      regression
        ? [
            'difference on sum',
            `intercept ${signed(regression.intercept)}, slope ${signed(regression.slope)}, F ${digits(regression.f)}, p ${pText(regression.p)}`,
            `one mean and one spread: both would be 0 (F with ${regression.degreesOfFreedom.join(' and ')} degrees of freedom, p by exchanging plant and model day by day, whatever the law of days; the first run of each)`,
          ]
        : ['difference on sum', 'not worked out', 'it takes three days that differ'],
    ],
  })
}

export const daysTable = ({ days, ranks, runs }: ValidateResult): Table =>
  within('days', {
    title: 'Good cases day by day',
    note: `Range: ${percentText(ranks.share)} of ${runs} runs. Runs below: those with fewer good cases than the plant, ties by lot.`,
    columns: [
      ...words('day'),
      ...figures('plant', 'median of runs', 'range of runs', 'runs below'),
      ...words('within', 'cases came'),
    ],
    rows: days.map(({ day, plant, model, below, isInside, drivenBy }): Cell[] => [
      day,
      { value: plant, unit: 'count' },
      { value: model.median, unit: 'count' },
      `${digits(model.low, 4)} to ${digits(model.high, 4)}`,
      { value: below, unit: 'count' },
      isInside ? 'yes' : 'no',
      drivenBy === 'cases' ? 'as recorded' : 'by the law',
    ]),
  })

export const leftOutTable = ({ leftOut }: ValidateResult): Table =>
  within('days', {
    title: 'Days that were left out',
    columns: words('day', 'why'),
    rows: leftOut.map(({ day, why }) => [day, why]),
  })

const gapText = (gap: GapResult, said: (value: number) => string): string =>
  `${said(gap.mean)} (${endsText(gap, said)})`

export function causesTable({ causes, made }: ValidateResult): Table {
  const minutes = (seconds: number) => digits(seconds / 60)
  const answer = ({ path, stops, seconds }: CauseResult) =>
    path === null
      ? 'not compared: a log need not hold them all'
      : stops.isShown || seconds.isShown
        ? `shown to differ: ${[...(stops.isShown ? ['stops'] : []), ...(seconds.isShown ? ['minutes'] : [])].join(', ')}`
        : 'not shown to differ'
  return within('causes', {
    title: 'Stops by cause, a day',
    note: `Model less plant with its ${percentText(made.confidence)} interval. Shown: with all of this table taken together (Holm), at 5 %.`,
    columns: [
      ...words('cause'),
      ...figures('stops, plant', 'model', 'difference', 'minutes, plant', 'model', 'difference'),
      ...words('answer'),
    ],
    rows: causes.map((cause): Cell[] => [
      cause.words,
      digits(cause.plant.stops),
      digits(cause.model.stops),
      gapText(cause.stops, signed),
      minutes(cause.plant.seconds),
      minutes(cause.model.seconds),
      gapText(cause.seconds, (value) => signed(value / 60)),
      answer(cause),
    ]),
  })
}
