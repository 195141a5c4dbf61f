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

/** The days by the laws of their stops and with the stops of the plant, side by side. */
export function sidesTable({ good, ranks, beside, days }: ValidateResult): Table {
  const rows = [
    { name: 'by the laws of its stops', good, ranks },
    ...(beside ? [{ name: "with the plant's own stops", ...beside }] : []),
  ]
  return within('figures', {
    title: "By laws, and with the plant's own stops",
    note: 'The same days and the same luck. What differs in the second row is the model of the line; what the first has on top of it are its laws.',
    columns: words('stops', 'model less plant', 'days within', 'verdict'),
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
    note: `Range: ${percentText(ranks.share)} of ${runs} runs${drivenBy === 'both' ? ' by the laws of its stops' : ''}. Runs below: those with fewer good cases than the plant, ties by lot. Cases came as the log has them, or by the law of the scenario.`,
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
  if (path === null) return 'not compared: a log need not hold them all'
  const shown = [...(stops.isShown ? ['stops'] : []), ...(seconds.isShown ? ['minutes'] : [])]
  return shown.length > 0 ? `shown to differ: ${shown.join(', ')}` : 'not shown to differ'
}

export function causesTable({ causes, made }: ValidateResult): Table {
  const minutes = (seconds: number) => digits(seconds / 60)
  return within('causes', {
    title: 'Stops by cause, a day',
    note: `Model less plant. The intervals hold for all of this table at once with ${percentText(made.confidence)} confidence (Bonferroni); shown is what leaves 0 out.`,
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
