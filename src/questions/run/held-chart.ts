/** Chart of the cases held over the shift: one panel per place, all over the same hours. */
import type { HeldOverShift } from '../../answers/line-result.js'
import { durationText, grouped } from '../../report/format.js'
import { type AxisTime, axisTime, numbers, ticksAt, wholeOr } from '../../report/marks/axis.js'
import { type Chart, chartOf } from '../../report/marks/chart.js'
import { palette } from '../../report/marks/inks.js'
import { namesAbove } from '../../report/marks/labels.js'
import { widthOf } from '../../report/marks/letters.js'
import { bandEdge, line } from '../../report/marks/line.js'
import { byHand, type Points } from '../../report/marks/mark.js'
import { written } from '../../report/marks/pen.js'
import { ruleUp, shade } from '../../report/marks/rule.js'
import type { RunResult } from './document.js'

/** Places shown: more panels would be too low to read. */
const mostPlaces = 6
const panelHeight = 118
/** Part of a panel above its highest tick, where the name of the place stands. */
const headroom = 0.3

interface Panel {
  held: HeldOverShift
  /** Cases, mean over the shift. */
  mean: number
  /** Highest tick of the panel, cases. */
  top: number
}

const recordedOf = ({ held }: Pick<RunResult, 'held'>) => held.filter(({ at }) => at.length > 0)

/** The places that are drawn. */
export const drawnPlaces = (result: Pick<RunResult, 'held'>): readonly HeldOverShift[] =>
  fullestPlaces(recordedOf(result)).map(({ held }) => held)

const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length

/** Mean and band of the cases in the places that hold most; null where no place is recorded. */
export function heldChart(result: RunResult): Chart | null {
  const recorded = recordedOf(result)
  if (recorded.length === 0) return null
  const panels = fullestPlaces(recorded)
  const { length, runOut } = result.shift
  const end = length + runOut
  const time = axisTime(end)
  const widest = Math.max(...panels.map(({ top }) => top))
  const places = panels.map(
    ({ held, mean }) =>
      `${held.place}: ${cases(mean)} on average, ${cases(Math.max(...held.mean))} at its fullest`,
  )
  return chartOf(result, {
    name: 'held',
    section: 'places',
    title: 'Cases held over the shift',
    subtitle: subtitleOf(recorded.length, panels.length, result.made.shifts),
    alt: `Cases held over the ${durationText(end)} of the shift, mean of the shifts: ${places.join('; ')}.`,
    mayNarrow: true,
    // the names of the breaks stand between subtitle and panels
    gap: 24,
    height: panels.length * panelHeight,
    type: 'line',
    axes: {
      x: numbers({
        title: `${time.word} since the start of the shift`,
        min: 0,
        max: end / time.unit,
        most: 13,
        isInside: true,
        textOf: wholeOr(1),
      }),
      ...Object.fromEntries(
        panels.map((panel, index) => [`y${index}`, panelScale(panel, panels.length - index, widest)]),
      ),
    },
    marks: [
      ...panels.map(({ held }, index) => lines(held, `y${index}`, time)),
      ...pauses(result.shift, time),
      panelNames(panels),
    ],
  })
}

function subtitleOf(recorded: number, drawn: number, shifts: number): string {
  const chosen = recorded > drawn ? `${drawn} of ${recorded} places, the fullest. ` : ''
  const few = shifts < 10 ? ` From ${shifts} shifts it is rough.` : ''
  const scales = drawn > 1 ? ' Scales differ.' : ''
  return `${chosen}Line: mean over the shifts. Band: 8 of 10 shifts lie in it.${few}${scales}`
}

/**
 * The places with the highest means, in the order of the line. A place that hardly ever holds two cases is
 * left out beside fuller ones: its band would only jump between none and one.
 */
function fullestPlaces(recorded: readonly HeldOverShift[]): Panel[] {
  const all = recorded.map((held) => ({
    held,
    mean: meanOf(held.mean),
    most: Math.max(...held.p90, ...held.mean),
  }))
  const fuller = all.filter(({ most }) => most > 1)
  const ranked = [...(fuller.length > 0 ? fuller : all)].sort((a, b) => b.mean - a.mean).slice(0, mostPlaces)
  return all
    .filter((place) => ranked.includes(place))
    .map(({ held, mean, most }) => ({ held, mean, top: roundAbove(most) }))
}

/** A round number of cases not below `value`, at least 2, whose half is whole: the ticks of a panel. */
function roundAbove(value: number): number {
  if (!(value > 2)) return 2
  if (value <= 10) return 2 * Math.ceil(value / 2)
  const power = 10 ** (Math.floor(Math.log10(value)) - 1)
  return [10, 12, 14, 16, 20, 24, 30, 40, 50, 60, 80, 100]
    .map((step) => step * power)
    .find((step) => step >= value)!
}

/** Lower edge and upper edge of the band, filled between, and the mean over them. */
function lines(held: HeldOverShift, yAxisID: string, { unit }: AxisTime): Points[] {
  const points = (values: readonly number[]) => values.map((y, index) => ({ x: held.at[index]! / unit, y }))
  const edge = { yAxisID, stepped: 'middle' } as const
  return [
    bandEdge(`${held.place}, 1 of 10 shifts below`, points(held.p10), { ...edge, fill: false }),
    bandEdge(`${held.place}, 1 of 10 shifts above`, points(held.p90), { ...edge, fill: '-1' }),
    line(`${held.place}, mean`, points(held.mean), {
      yAxisID,
      borderWidth: 1.8,
      borderJoinStyle: 'round',
      fill: false,
    }),
  ]
}

function panelScale({ top }: Panel, weight: number, widest: number) {
  // title, ticks and letters of the largest number, px: where the picture is narrow the library would give six panels less
  const least = 30 + 7 * cases(widest).length
  return numbers({
    title: 'cases',
    min: 0,
    max: top * (1 + headroom),
    textOf: cases,
    more: {
      position: 'left' as const,
      stack: 'places',
      stackWeight: 1,
      weight,
      afterFit: (scale: { width: number }) => {
        scale.width = Math.max(scale.width, least)
      },
      // given outright: the headroom is no multiple of their distance
      ...ticksAt([0, top / 2, top]),
    },
    moreOfTicks: { autoSkip: false },
  })
}

/** Shades the breaks behind all panels and names them; marks the end of the shift where a run-out follows. */
function pauses({ breaks, length, runOut }: RunResult['shift'], { unit }: AxisTime) {
  const isRunOut = runOut > 0
  return [
    ...breaks.map(({ at, for: lasting }) => shade('x', at / unit, (at + lasting) / unit)),
    isRunOut && ruleUp(length / unit, { colour: palette.quietInk, width: 1, dash: [4, 3] }),
    namesAbove([
      ...breaks.map((pause) => ({ text: 'break', at: (pause.at + pause.for / 2) / unit })),
      ...(isRunOut ? [{ text: 'end of shift', at: length / unit }] : []),
    ]),
  ]
}

/** Writes the name of each place into the head of its panel. */
const panelNames = (panels: readonly Panel[]) =>
  byHand({
    over({ ctx, area, chart }) {
      for (const [index, { held, mean }] of panels.entries()) {
        const name = { size: 12, colour: palette.ink, isBold: true }
        const [x, y] = [area.left + 8, chart.scales[`y${index}`]!.top + 17]
        const figureAt = x + widthOf(ctx, held.place, name) + 10
        written(ctx, held.place, x, y, name)
        written(ctx, `${cases(mean)} cases on average`, figureAt, y, { size: 11, colour: palette.quietInk })
      }
    },
  })

/** A number of cases with what its size deserves: `0.4`, `8.4`, `1 240`. */
const cases = (value: number) => grouped(value, value < 100 && !Number.isInteger(value) ? 1 : 0)
