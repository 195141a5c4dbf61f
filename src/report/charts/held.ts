/** Chart of the cases held over the shift: one panel per place, all over the same hours. */
import type { ChartConfiguration, ChartDataset, Chart as DrawnChart, Plugin, ScaleOptionsByType } from 'chart.js'
import type { HeldOverShift, RunResult } from '../../study/result.js'
import { grouped } from '../format.js'
import { axisTitle, belowHeight, type Chart, chartWidth, fontOf, foot, frame, headHeight, palette, written } from './chart.js'

/** Places shown: more panels would be too low to read. */
const mostPlaces = 6
const panelHeight = 118
/** Part of a panel above its highest tick, where the name of the place stands. */
const headroom = 0.3
const secondsPerHour = 3600

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
  const end = (length + runOut) / secondsPerHour
  const title = 'Cases held over the shift'
  const chosen = recorded.length > panels.length ? `The ${panels.length} of ${recorded.length} places with most cases. ` : ''
  const few = result.made.shifts < 10 ? ` Of ${result.made.shifts} shifts it is a rough one.` : ''
  const subtitle = `${chosen}Line: mean over the shifts. Band: 8 of 10 shifts lie in it.${few} Each panel has its own scale.`
  const options = frame(title, subtitle)
  const config: ChartConfiguration<'line'> = {
    type: 'line',
    data: { datasets: panels.flatMap(({ held }, index) => lines(held, `y${index}`)) },
    options: {
      ...options,
      scales: {
        x: {
          type: 'linear',
          min: 0,
          max: end,
          title: axisTitle('hours since the start of the shift'),
          ticks: { color: palette.quietInk, maxTicksLimit: 13, maxRotation: 0, callback: (value) => hours(Number(value)) },
          grid: { color: palette.grid },
          border: { color: palette.frame },
        },
        ...Object.fromEntries(panels.map((panel, index) => [`y${index}`, panelScale(panel, panels.length - index)])),
      },
    },
    plugins: [breakShades(breaks, runOut > 0 ? length : null), panelNames(panels), foot(result)],
  }
  const places = panels.map(({ held, mean }) => `${held.place} ${cases(mean)}, at most ${cases(Math.max(...held.mean))} on average`)
  return {
    name: 'held',
    title,
    alt: `Cases held over the ${hours(end)} hours of the shift, means over the shifts: ${places.join('; ')}.`,
    width: chartWidth,
    height: headHeight(title, subtitle) + 14 + panels.length * panelHeight + belowHeight,
    config: config as ChartConfiguration,
  }
}

/** The places with the highest means, in the order of the line. */
function fullestPlaces(recorded: readonly HeldOverShift[]): Panel[] {
  const all = recorded.map((held) => ({ held, mean: meanOf(held.mean), top: roundAbove(Math.max(...held.p90, ...held.mean)) }))
  const kept = new Set([...all].sort((a, b) => b.mean - a.mean).slice(0, mostPlaces))
  return all.filter((panel) => kept.has(panel))
}

/** The least of 1, 2, 4, 6, 8 and 10 times a power of ten that is not below `value`, and not below 1 case. */
function roundAbove(value: number): number {
  if (!(value > 1)) return 1
  const power = 10 ** Math.floor(Math.log10(value))
  return [1, 2, 4, 6, 8, 10].map((step) => step * power).find((step) => step >= value) ?? 10 * power
}

/** Lower edge and upper edge of the band, filled between, and the mean over them. */
function lines(held: HeldOverShift, yAxisID: string): ChartDataset<'line', { x: number; y: number }[]>[] {
  const points = (values: readonly number[]) => values.map((y, index) => ({ x: held.at[index]! / secondsPerHour, y }))
  const edge = { yAxisID, pointRadius: 0, borderWidth: 0, backgroundColor: palette.band }
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

function panelScale({ top }: Panel, weight: number) {
  return {
    type: 'linear' as const,
    position: 'left' as const,
    stack: 'places',
    stackWeight: 1,
    weight,
    min: 0,
    max: top * (1 + headroom),
    title: axisTitle('cases'),
    ticks: {
      color: palette.quietInk,
      stepSize: top / 2,
      callback: (value: string | number) => (Number(value) > top * 1.001 ? '' : cases(Number(value))),
    },
    grid: { color: palette.grid },
    border: { color: palette.frame },
  } satisfies Partial<Record<keyof ScaleOptionsByType<'linear'>, unknown>>
}

/** Shades the breaks behind all panels and names them; marks the end of the shift where a run-out follows. */
function breakShades(breaks: RunResult['shift']['breaks'], shiftEnd: number | null): Plugin<'line'> {
  return {
    id: 'breaks',
    beforeDatasetsDraw(chart) {
      const { ctx, chartArea, scales } = chart
      const drawn = chart as unknown as DrawnChart
      const pixel = (seconds: number) => scales['x']!.getPixelForValue(seconds / secondsPerHour)
      ctx.save()
      ctx.globalCompositeOperation = 'multiply'
      ctx.fillStyle = palette.pause
      for (const { at, for: lasting } of breaks)
        ctx.fillRect(pixel(at), chartArea.top, pixel(at + lasting) - pixel(at), chartArea.height)
      ctx.restore()
      let free = chartArea.left
      const label = (text: string, centre: number) => {
        ctx.font = fontOf({ size: 11 })
        const half = ctx.measureText(text).width / 2
        // a name that would run into the one before it is left out: the shade is the same
        if (centre - half < free) return
        free = centre + half + 6
        written(drawn, text, centre, chartArea.top - 4, { size: 11, colour: palette.quietInk, align: 'center' })
      }
      for (const { at, for: lasting } of breaks) label('break', pixel(at + lasting / 2))
      if (shiftEnd === null) return
      ctx.save()
      ctx.strokeStyle = palette.quietInk
      ctx.setLineDash([4, 3])
      ctx.beginPath()
      ctx.moveTo(pixel(shiftEnd), chartArea.top)
      ctx.lineTo(pixel(shiftEnd), chartArea.bottom)
      ctx.stroke()
      ctx.restore()
      label('end of shift', pixel(shiftEnd))
    },
  }
}

/** Writes the name of each place into the head of its panel. */
function panelNames(panels: readonly Panel[]): Plugin<'line'> {
  return {
    id: 'panel-names',
    afterDatasetsDraw(chart) {
      const drawn = chart as unknown as DrawnChart
      for (const [index, { held, mean }] of panels.entries()) {
        const scale = chart.scales[`y${index}`]!
        const [x, y] = [chart.chartArea.left + 8, scale.top + 17]
        written(drawn, held.place, x, y, { size: 12, colour: palette.ink, isBold: true })
        chart.ctx.font = fontOf({ size: 12, isBold: true })
        const width = chart.ctx.measureText(held.place).width
        written(drawn, `${cases(mean)} cases on average`, x + width + 10, y, { size: 11, colour: palette.quietInk })
      }
    },
  }
}

/** A number of cases with what its size deserves: `0.4`, `8.4`, `1 240`. */
const cases = (value: number) => grouped(value, value < 100 && !Number.isInteger(value) ? 1 : 0)

const hours = (value: number) => String(Number(value.toFixed(2)))
