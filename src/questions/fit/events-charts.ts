/** Charts of what is counted: events as exposure goes on, and by the hour of the day. */
import { max } from 'simple-statistics'
import { grouped } from '../../report/format.js'
import { numbers } from '../../report/marks/axis.js'
import { type Chart, chartOf, fileStem } from '../../report/marks/chart.js'
import { palette } from '../../report/marks/inks.js'
import { blocks, line } from '../../report/marks/line.js'
import { byHand } from '../../report/marks/mark.js'
import { stroked, upright } from '../../report/marks/pen.js'
import type { FitResult, FittedInput } from './document.js'
import { exposureAxis, fromOrigin, headed, isShown } from './words.js'

/** Events against exposure: a straight line where their rate stays the same. */
export function trendChart(result: FitResult, input: FittedInput): Chart | null {
  const { trend } = input.pictures
  if (trend.length < 3 || input.exposure?.value == null) return null
  const { word, size } = exposureAxis(input.exposure.unit)
  const end = input.exposure.value / size
  const events = trend.length
  const found = isShown(input, 'trend-laplace', 'trend-mil-hdbk-189')
  return chartOf(result, {
    name: fileStem('trend', input.path),
    section: 'alike',
    title: `${headed(input)}: ${found ? 'the rate changes over the record' : 'no trend is shown'}`,
    subtitle: `Steps: events so far. Dashed: events at a constant rate. ${events} events.`,
    alt: `${events} events of ${input.path} over ${grouped(end, 0)} ${word}.`,
    mayNarrow: true,
    gap: 16,
    height: { all: 340 },
    type: 'line',
    axes: {
      x: numbers({ title: word, min: 0, max: end, most: 8, isInside: true, isPlain: true }),
      y: numbers({ title: 'events', min: 0, max: events * 1.05, most: 7, isInside: true, decimals: 0 }),
    },
    marks: [
      line(
        'events',
        [{ x: 0, y: 0 }, ...trend.map(([x, y]) => ({ x: x / size, y })), { x: end, y: events }],
        {
          ...{ showLine: true, stepped: true, borderWidth: 1.8 },
        },
      ),
      line('constant rate', fromOrigin(end, events), {
        ...{ showLine: true, borderColor: palette.target, borderDash: [6, 4], borderWidth: 1.2 },
      }),
    ],
  })
}

/** Events of each hour of the day a unit of exposure, with the range of what one rate would give. */
export function hoursChart(result: FitResult, input: FittedInput): Chart | null {
  const hours = input.pictures.hours.filter(({ exposure }) => exposure > 0)
  if (hours.length < 2 || input.events === 0) return null
  const { perWord, per } = exposureAxis(input.exposure!.unit)
  const rate = (events: number, exposure: number) => (events / exposure) * per
  const top = max(hours.map(({ events, high, exposure }) => rate(Math.max(events, high), exposure)))
  const first = Math.min(...hours.map(({ hour }) => hour))
  const last = Math.max(...hours.map(({ hour }) => hour))
  return chartOf(result, {
    name: fileStem('hours', input.path),
    section: 'alike',
    title: `${headed(input)}: ${isShown(input, 'hour-of-day') ? 'hours of the day differ' : 'no difference between hours of the day is shown'}`,
    subtitle:
      'Bars: events in this hour. Lines: 95 % range by chance if the rate is the same all day. Hours with fewer than one expected event are left out.',
    alt: `Events of ${input.path} by the hour of the day: ${hours.map(({ hour, events }) => `${hour} h: ${events}`).join(', ')}.`,
    mayNarrow: true,
    gap: 16,
    height: { all: 320 },
    type: 'line',
    axes: {
      x: numbers({
        title: 'hour of the day',
        min: first,
        max: last + 1,
        isPlain: true,
        moreOfTicks: { stepSize: 1 },
      }),
      y: numbers({ title: `events ${perWord}`, min: 0, max: top * 1.08, most: 7, isInside: true }),
    },
    marks: [
      blocks(
        'events',
        hours.map(({ hour, events, exposure }) => ({
          from: hour,
          to: hour + 1,
          height: rate(events, exposure),
        })),
      ),
      byHand({
        over({ ctx, x, y }) {
          for (const { hour, low, high, exposure } of hours)
            stroked(
              ctx,
              { colour: palette.ink, width: 1.6 },
              upright(x(hour + 0.5), y(rate(low, exposure)), y(rate(high, exposure))),
            )
        },
      }),
    ],
  })
}
