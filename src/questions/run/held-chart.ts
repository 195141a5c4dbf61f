/** Chart of the cases held over the shift: one panel per place, all over the same hours. */
import type { ChartConfiguration, ChartDataset, Plugin } from 'chart.js'
import type { HeldOverShift } from '../../answers/line-result.js'
import { durationText, grouped } from '../../report/format.js'
import {
  type AxisTime,
  axisTime,
  axisTitle,
  belowHeight,
  type Chart,
  chartWidth,
  foot,
  frame,
  headHeight,
  palette,
  tickFont,
  widthOf,
  written,
} from '../../report/marks/chart.js'
import type { RunResult } from './document.js'

/** Places shown: more panels would be too low to read. */
const mostPlaces = 6
const panelHeight = 118
/** Between the subtitle and the panels, px: the names of the breaks stand in it. */
const gap = 24
/** Part of a panel above its highest tick, where the name of the place stands. */
const headroom = 0.3
interface Panel {
  held: HeldOverShift
  /** Cases, mean over the shift. */
  mean: number
  /** Highest tick of the panel, cases. */
  top: number
}

const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length

/** Mean and band of the cases in the places that hold most; null where no place is recorded. */
export function heldChart(result: RunResult): Chart | null {
  const recorded = result.held.filter(({ at }) => at.length > 0)
  if (recorded.length === 0) return null
  const panels = fullestPlaces(recorded)
  const { breaks, length, runOut } = result.shift
  const end = length + runOut
  const time = axisTime(end)
  const title = 'Cases held over the shift'
  const chosen =
    recorded.length > panels.length ? `${panels.length} of ${recorded.length} places, the fullest. ` : ''
  const few = result.made.shifts < 10 ? ` Of ${result.made.shifts} shifts it is rough.` : ''
  const scales = panels.length > 1 ? ' Scales differ.' : ''
  const subtitle = `${chosen}Line: mean over the shifts. Band: 8 of 10 shifts lie in it.${few}${scales}`
  const options = frame(title, subtitle, gap)
  const widest = Math.max(...panels.map(({ top }) => top))
  const config: ChartConfiguration<'line'> = {
    type: 'line',
    data: { datasets: panels.flatMap(({ held }, index) => lines(held, `y${index}`, time)) },
    options: {
      ...options,
      scales: {
        x: {
          type: 'linear',
          min: 0,
          max: end / time.unit,
          title: axisTitle(`${time.word} since the start of the shift`),
          ticks: {
            color: palette.quietInk,
            font: tickFont,
            maxTicksLimit: 13,
            maxRotation: 0,
            includeBounds: false,
            callback: (value) => grouped(Number(value), Number.isInteger(Number(value)) ? 0 : 1),
          },
          grid: { color: palette.grid },
          border: { color: palette.frame },
        },
        ...Object.fromEntries(
          panels.map((panel, index) => [`y${index}`, panelScale(panel, panels.length - index, widest)]),
        ),
      },
    },
    plugins: [breakShades(breaks, runOut > 0 ? length : null, time), panelNames(panels), foot(result)],
  }
  const places = panels.map(
    ({ held, mean }) =>
      `${held.place}: ${cases(mean)} on average, ${cases(Math.max(...held.mean))} when fullest`,
  )
  return {
    name: 'held',
    title,
    alt: `Cases held over the ${durationText(end)} of the shift, mean of the shifts: ${places.join('; ')}.`,
    width: chartWidth,
    height: headHeight(title, subtitle, gap) + panels.length * panelHeight + belowHeight,
    config: config as ChartConfiguration,
  }
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
function lines(
  held: HeldOverShift,
  yAxisID: string,
  { unit }: AxisTime,
): ChartDataset<'line', { x: number; y: number }[]>[] {
  const points = (values: readonly number[]) => values.map((y, index) => ({ x: held.at[index]! / unit, y }))
  const edge = {
    yAxisID,
    pointRadius: 0,
    borderWidth: 0,
    backgroundColor: palette.band,
    stepped: 'middle' as const,
  }
  return [
    { ...edge, label: `${held.place}, 1 of 10 shifts below`, data: points(held.p10), fill: false },
    { ...edge, label: `${held.place}, 1 of 10 shifts above`, data: points(held.p90), fill: '-1' },
    {
      yAxisID,
      label: `${held.place}, mean`,
      data: points(held.mean),
      pointRadius: 0,
      borderColor: palette.main,
      borderWidth: 1.8,
      borderJoinStyle: 'round',
      fill: false,
    },
  ]
}

function panelScale({ top }: Panel, weight: number, widest: number) {
  // title, ticks and letters of the largest number, px: where the picture is narrow the library would give six panels less
  const least = 30 + 7 * cases(widest).length
  return {
    type: 'linear' as const,
    position: 'left' as const,
    stack: 'places',
    stackWeight: 1,
    weight,
    min: 0,
    max: top * (1 + headroom),
    title: axisTitle('cases'),
    afterFit: (scale: { width: number }) => {
      scale.width = Math.max(scale.width, least)
    },
    // given outright: the headroom is no multiple of their distance
    afterBuildTicks: (scale: { ticks: { value: number }[] }) => {
      scale.ticks = [0, top / 2, top].map((value) => ({ value }))
    },
    ticks: {
      color: palette.quietInk,
      font: tickFont,
      autoSkip: false,
      callback: (value: string | number) => cases(Number(value)),
    },
    grid: { color: palette.grid },
    border: { color: palette.frame },
  }
}

/** Shades the breaks behind all panels and names them; marks the end of the shift where a run-out follows. */
function breakShades(
  breaks: RunResult['shift']['breaks'],
  shiftEnd: number | null,
  { unit }: AxisTime,
): Plugin<'line'> {
  return {
    id: 'breaks',
    beforeDatasetsDraw({ ctx, chartArea, scales, width }) {
      const pixel = (seconds: number) => scales.x!.getPixelForValue(seconds / unit)
      const { top, bottom, left } = chartArea
      const named = breaks.map((pause) => ({ name: 'break', at: pixel(pause.at + pause.for / 2) }))
      ctx.save()
      ctx.globalCompositeOperation = 'multiply'
      ctx.fillStyle = palette.pause
      for (const { at, for: lasting } of breaks)
        ctx.fillRect(pixel(at), top, pixel(at + lasting) - pixel(at), bottom - top)
      ctx.restore()
      if (shiftEnd !== null) {
        const x = pixel(shiftEnd)
        named.push({ name: 'end of shift', at: x })
        ctx.save()
        ctx.strokeStyle = palette.quietInk
        ctx.setLineDash([4, 3])
        ctx.beginPath()
        ctx.moveTo(x, top)
        ctx.lineTo(x, bottom)
        ctx.stroke()
        ctx.restore()
      }
      let free = left
      for (const { name, at } of named) {
        const half = widthOf(ctx, name, { size: 11 }) / 2
        const x = Math.min(Math.max(at, left + half), width - half - 4)
        // a name that would run into the one before it is left out: the shade is the same
        if (x - half < free) continue
        free = x + half + 6
        written(ctx, name, x, top - 4, { size: 11, colour: palette.quietInk, align: 'center' })
      }
    },
  }
}

/** Writes the name of each place into the head of its panel. */
function panelNames(panels: readonly Panel[]): Plugin<'line'> {
  return {
    id: 'panel-names',
    afterDatasetsDraw({ ctx, chartArea, scales }) {
      for (const [index, { held, mean }] of panels.entries()) {
        const name = { size: 12, colour: palette.ink, isBold: true }
        const [x, y] = [chartArea.left + 8, scales[`y${index}`]!.top + 17]
        const figureAt = x + widthOf(ctx, held.place, name) + 10
        written(ctx, held.place, x, y, name)
        written(ctx, `${cases(mean)} cases on average`, figureAt, y, { size: 11, colour: palette.quietInk })
      }
    },
  }
}

/** A number of cases with what its size deserves: `0.4`, `8.4`, `1 240`. */
const cases = (value: number) => grouped(value, value < 100 && !Number.isInteger(value) ? 1 : 0)
