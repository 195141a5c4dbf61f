/** Chart of the days: the good cases of the plant, and where its runs say that they should lie. */
import { counted, grouped, percentText } from '../../report/format.js'
import { spanAxis } from '../../report/marks/axis.js'
import { type Chart, chartOf } from '../../report/marks/chart.js'
import { dots } from '../../report/marks/dots.js'
import { palette } from '../../report/marks/inks.js'
import { roomySpan } from '../../report/marks/reach.js'
import { whiskers } from '../../report/marks/whiskers.js'
import type { ValidateResult } from './document.js'

/** Days that are named below the picture at most. */
const mostNames = 12

export function daysChart(result: ValidateResult): Chart {
  const { days, ranks, runs, beside } = result
  const withOwn = (beside?.days ?? []).map(({ model }, x) => ({ x, y: model.median }))
  const outside = days.length - ranks.inside
  const span = roomySpan(
    [...days.flatMap(({ plant, model }) => [plant, model.low, model.high]), ...withOwn.map(({ y }) => y)],
    7,
  )
  const at = (isInside: boolean) =>
    days.flatMap((day, x) => (day.isInside === isInside ? [{ x, y: day.plant }] : []))
  const stride = Math.ceil(days.length / mostNames)
  const names = days.map(({ day }) => day.slice(5))
  return chartOf(result, {
    name: 'days',
    section: 'days',
    title:
      outside === 0
        ? `All ${days.length} days of the plant lie inside the range of their runs`
        : `${outside} of ${counted(days.length, 'day')} of the plant ${outside === 1 ? 'lies' : 'lie'} outside ${percentText(ranks.share)} of the runs`,
    subtitle: `Line: ${percentText(ranks.share)} of ${runs} runs of that day${beside ? ' with simulated stops' : ''}, with their median. Sign: the plant. With a perfect model, 5 of 100 days lie outside.`,
    alt: `Good cases a day, plant, and range of runs: ${days.map(({ day, plant, model }) => `${day}: ${grouped(plant, 0)}, ${grouped(model.low, 0)} to ${grouped(model.high, 0)}`).join('; ')}.`,
    mayNarrow: true,
    gap: 12,
    height: 330,
    legend: [
      ...['plant, outside', 'plant, within', 'median of the runs'],
      ...(beside ? ['median with its own stops'] : []),
    ],
    axes: {
      x: spanAxis(
        {
          ...{ min: -0.5, max: days.length - 0.5, decimals: 0 },
          ticks: days.map((_, index) => index).filter((index) => index % stride === 0),
        },
        'day',
        { isPlain: true, textOf: (value) => names[value] ?? '' },
      ),
      y: spanAxis(span, 'good cases'),
    },
    // what stands first lies on top
    marks: [
      dots('plant, outside', at(false), { radius: 5.5, colour: palette.lost, style: 'triangle' }),
      dots('plant, within', at(true), { radius: 4.5, colour: palette.ink, fill: palette.paper, edge: 1.8 }),
      dots(
        'median of the runs',
        days.map(({ model }, x) => ({ x, y: model.median })),
        { radius: 3, colour: palette.main },
      ),
      ...(beside
        ? [
            dots('median with its own stops', withOwn, {
              radius: 4.5,
              colour: palette.short,
              style: 'rectRot',
            }),
          ]
        : []),
      whiskers(
        'runs',
        'y',
        days.map(({ model }, index) => ({ at: index, low: model.low, high: model.high })),
        { borderColor: palette.band, borderWidth: 7, backgroundColor: palette.band },
      ),
    ],
  })
}
