/** Chart of the warm-up: the cases in the line from an empty start, with the cut that was found. */
import type { ChartConfiguration, Plugin } from 'chart.js'
import { max } from 'simple-statistics'
import { durationText, grouped } from '../../report/format.js'
import {
  axisTime,
  axisTitle,
  type Chart,
  chartWidth,
  foot,
  frame,
  palette,
  tickFont,
  widthOf,
  written,
} from '../../report/marks/chart.js'
import type { RunResult } from './document.js'

/** The averaged series and its cut; null where every shift starts empty and is counted in full. */
export function settlingChart(result: RunResult): Chart | null {
  const { warmUp, shift } = result
  if (warmUp === null) return null
  const { at, cases, cut, runs, countFrom, isSettled } = warmUp
  const end = at.at(-1)!
  const time = axisTime(end)
  const isCut = shift.start === 'steady'
  const title = isCut
    ? `The line comes to its stride: counted from ${durationText(countFrom)} on`
    : isSettled
      ? `From empty the line settles after ${durationText(cut)}`
      : 'The line does not settle in this time'
  const subtitle = `Cases in the line and before it, mean of ${runs} runs from empty. Cut by MSER-5 at ${durationText(cut)}${isCut && countFrom > cut ? ', counted from the next whole shift' : ''}.`
  const options = frame(title, subtitle, 16)
  const top = Math.max(1, max(cases) * 1.15)
  const config: ChartConfiguration<'line'> = {
    type: 'line',
    data: {
      datasets: [
        {
          label: 'cases in the line',
          data: cases.map((y, index) => ({ x: at[index]! / time.unit, y })),
          pointRadius: 0,
          borderColor: palette.main,
          borderWidth: 1.6,
          borderJoinStyle: 'round',
        },
      ],
    },
    options: {
      ...options,
      scales: {
        x: {
          type: 'linear',
          min: 0,
          max: end / time.unit,
          title: axisTitle(`${time.word} since the start`),
          ticks: { color: palette.quietInk, font: tickFont, maxRotation: 0, maxTicksLimit: 12 },
          grid: { display: false },
          border: { color: palette.frame },
        },
        y: {
          type: 'linear',
          min: 0,
          max: top,
          title: axisTitle('cases'),
          ticks: {
            color: palette.quietInk,
            font: tickFont,
            maxTicksLimit: 7,
            includeBounds: false,
            callback: (value) => grouped(Number(value), top < 5 ? 1 : 0),
          },
          grid: { color: palette.grid },
          border: { color: palette.frame },
        },
      },
    },
    plugins: [cutMark(cut / time.unit, isCut ? countFrom / time.unit : null), foot(result)],
  }
  return {
    name: 'settling',
    title,
    alt: `Cases in the line from an empty start, mean of ${runs} runs of ${durationText(end)}: ${isSettled ? `MSER-5 cuts at ${durationText(cut)}` : 'MSER-5 finds no cut in the first half'}.`,
    width: chartWidth,
    height: 340,
    config: config as ChartConfiguration,
  }
}

/** Shades what is not counted and marks the cut; `from` null where all is counted. */
function cutMark(cut: number, from: number | null): Plugin<'line'> {
  return {
    id: 'cut',
    beforeDatasetsDraw({ ctx, chartArea, scales }) {
      const { top, bottom, left } = chartArea
      const x = scales.x!.getPixelForValue(cut)
      if (from !== null) {
        ctx.save()
        ctx.globalCompositeOperation = 'multiply'
        ctx.fillStyle = palette.pause
        ctx.fillRect(left, top, scales.x!.getPixelForValue(from) - left, bottom - top)
        ctx.restore()
      }
      ctx.save()
      ctx.strokeStyle = palette.target
      ctx.setLineDash([6, 4])
      ctx.lineWidth = 1.5
      ctx.beginPath()
      ctx.moveTo(x, top)
      ctx.lineTo(x, bottom)
      ctx.stroke()
      ctx.restore()
    },
    afterDatasetsDraw({ ctx, chartArea, scales }) {
      const x = scales.x!.getPixelForValue(cut)
      const lettering = { size: 12, colour: palette.target, isBold: true }
      const isRoom = x + 8 + widthOf(ctx, 'MSER-5 cut', lettering) <= chartArea.right
      written(ctx, 'MSER-5 cut', isRoom ? x + 8 : x - 8, chartArea.top + 14, {
        ...lettering,
        align: isRoom ? 'left' : 'right',
      })
    },
  }
}
