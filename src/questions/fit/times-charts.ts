/** Charts of the times of an input: the law against the record by quantiles, by lengths and by what lasts longer. */
import { max } from 'simple-statistics'
import { durationText, percentText } from '../../report/format.js'
import { numbers } from '../../report/marks/axis.js'
import { type Chart, chartOf, fileStem } from '../../report/marks/chart.js'
import { dots } from '../../report/marks/dots.js'
import { okabeIto, palette } from '../../report/marks/inks.js'
import { blocks, line } from '../../report/marks/line.js'
import type { Points } from '../../report/marks/mark.js'
import type { At, FitResult, FittedInput } from './document.js'
import { familyWords, fromOrigin, headed } from './words.js'

/** Unit of an axis of times that reach `end` s. */
const axisOf = (end: number) =>
  end < 300 ? { word: 's', unit: 1 } : end < 18_000 ? { word: 'min', unit: 60 } : { word: 'h', unit: 3600 }

const pointsIn = (unit: number, all: readonly At[], isBoth = false) =>
  all.map(([x, y]) => ({ x: x / unit, y: isBoth ? y / unit : y }))

const lineLook = (colour: string, width: number, more: Partial<Points> = {}): Partial<Points> => ({
  ...{ showLine: true, borderColor: colour, borderWidth: width },
  ...more,
})

/** Colour of each family, alike in all charts. */
export const familyColours = {
  exponential: okabeIto.orange,
  weibull: okabeIto.bluishGreen,
  gamma: okabeIto.reddishPurple,
  lognormal: okabeIto.blue,
  mixture: okabeIto.vermillion,
} as const

/** Quantiles of the chosen law against those of the record; null where no law was chosen. */
export function quantilesChart(result: FitResult, input: FittedInput): Chart | null {
  const { quantiles } = input.pictures
  if (quantiles.length === 0 || input.chosen === null) return null
  const end = max(quantiles.flat())
  const { word, unit } = axisOf(end)
  const gap = input.families.find(({ family }) => family === input.chosen)?.quantileGap ?? null
  const name = familyWords[input.chosen]
  return chartOf(result, {
    name: fileStem('quantiles', input.path),
    section: 'inputs',
    title: `${headed(input)}: ${name} against the record`,
    subtitle: `Each point: one quantile of the record (across) and of the distribution (up). On the line they agree. The steps of the log's clock are allowed for.${gap === null ? '' : ` They differ by at most ${percentText(gap, 2)} of the mean.`}`,
    alt: `Quantiles of ${input.path}: ${name} distribution against the record, up to ${durationText(end)}.`,
    mayNarrow: true,
    gap: 16,
    height: { all: 380 },
    axes: {
      x: numbers({
        title: `in the record, ${word}`,
        min: 0,
        max: (end / unit) * 1.04,
        most: 10,
        isInside: true,
      }),
      y: numbers({
        title: `in the distribution, ${word}`,
        min: 0,
        max: (end / unit) * 1.04,
        most: 8,
        isInside: true,
      }),
    },
    marks: [
      line(
        'agree',
        fromOrigin(end / unit, end / unit),
        lineLook(palette.quietInk, 1.2, { borderDash: [6, 4] }),
      ),
      dots('quantile', pointsIn(unit, quantiles, true), { radius: 3, colour: palette.main }),
    ],
  })
}

/** Lengths of the record as bars, with the densities of the laws. */
export function histogramChart(result: FitResult, input: FittedInput): Chart | null {
  const { histogram } = input.pictures
  if (histogram === null || histogram.bars.length === 0) return null
  const { bars, densities } = histogram
  const end = bars.at(-1)!.to
  const { word, unit } = axisOf(end)
  const top = max([...bars.map(({ share }) => share), ...densities.flatMap(({ at }) => at.map(([, y]) => y))])
  const highest = Math.min(top, 2.5 * max(bars.map(({ share }) => share))) * unit
  const drawn = densities.map(({ family, at }) =>
    line(
      familyWords[family],
      at.map(([x, y]) => ({ x: x / unit, y: Math.min(y * unit, highest * 1.2) })),
      lineLook(familyColours[family], family === input.chosen ? 2.6 : 1.2),
    ),
  )
  return chartOf(result, {
    name: fileStem('lengths', input.path),
    section: 'inputs',
    title: `${headed(input)}: lengths in the record and in the distributions`,
    subtitle: `Bars: the record${input.cutOff > 0 ? `, without ${input.cutOff} that were cut off` : ''}. Lines: density of each distribution, the chosen one thick.`,
    alt: `Histogram of ${input.path} up to ${durationText(end)} with the densities of ${densities.map(({ family }) => familyWords[family]).join(', ') || 'no distribution'}.`,
    mayNarrow: true,
    gap: 16,
    height: { all: 380 },
    type: 'line',
    legend: ['record', ...densities.map(({ family }) => familyWords[family])],
    axes: {
      x: numbers({ title: word, min: 0, max: end / unit, most: 10, isInside: true, isPlain: true }),
      y: numbers({ title: `share a ${word}`, min: 0, max: highest * 1.1, most: 7, isInside: true }),
    },
    marks: [
      ...drawn,
      blocks(
        'record',
        bars.map(({ from, to, share }) => ({ from: from / unit, to: to / unit, height: share * unit })),
      ),
    ],
  })
}

/** What share lasts longer: of the record, after Kaplan and Meier, and of the law. */
export function survivalChart(result: FitResult, input: FittedInput): Chart | null {
  const { survival } = input.pictures
  if (survival === null || survival.record.length === 0) return null
  const end = max([...survival.record, ...survival.law].map(([x]) => x))
  const { word, unit } = axisOf(end)
  const inPercent = (all: readonly At[]) => all.map(([x, y]) => ({ x: x / unit, y: y * 100 }))
  const name = input.chosen === null ? '' : familyWords[input.chosen]
  return chartOf(result, {
    name: fileStem('survival', input.path),
    section: 'inputs',
    title: `${headed(input)}: share that lasts longer`,
    subtitle: `Steps: the record, cut-off times included (Kaplan and Meier).${name ? ` Dashed: ${name}, read by the same clock.` : ''}`,
    alt: `Share of ${input.path} that lasts longer, from 0 to ${durationText(end)}.`,
    mayNarrow: true,
    gap: 16,
    height: { all: 340 },
    type: 'line',
    legend: ['record', ...(name ? [name] : [])],
    axes: {
      x: numbers({ title: word, min: 0, max: end / unit, most: 10, isInside: true, isPlain: true }),
      y: numbers({ title: '% last longer', min: 0, max: 100, most: 6 }),
    },
    marks: [
      line('record', inPercent(survival.record), lineLook(palette.main, 1.8, { stepped: true })),
      name !== '' &&
        line(
          name,
          inPercent(survival.law),
          lineLook(palette.ink, 1.4, { borderDash: [6, 4], stepped: true }),
        ),
    ],
  })
}
