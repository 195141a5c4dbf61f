/** A mark: a part of a picture, which the library draws of its data or which is drawn by hand. */
import type { ChartArea, ChartDataset, Chart as DrawnChart, Plugin } from 'chart.js'
import type { Context } from './letters.js'

export interface Point {
  x: number
  y: number
}

/** What the library draws. */
export type Points = ChartDataset<'line', Point[]>
export type Bars = ChartDataset<'bar', (number | [number, number] | Point)[]>

export type Mark = Points | Bars | Plugin

/** What a mark by hand is drawn on: places on the axes as pixels. */
export interface Drawing {
  ctx: Context
  area: ChartArea
  x: (value: number) => number
  y: (value: number) => number
  chart: DrawnChart
}

const drawingOf = (chart: DrawnChart): Drawing => ({
  ctx: chart.ctx,
  area: chart.chartArea,
  x: (value) => chart.scales.x!.getPixelForValue(value),
  y: (value) => chart.scales.y!.getPixelForValue(value),
  chart,
})

type Draw = (drawing: Drawing) => void

/** A mark that is drawn by hand: below the lines of the axes, behind the data, or over them. */
export function byHand({ below, behind, over }: { below?: Draw; behind?: Draw; over?: Draw }): Plugin {
  return {
    id: 'by-hand',
    ...(below ? { beforeDraw: (chart) => below(drawingOf(chart)) } : {}),
    ...(behind ? { beforeDatasetsDraw: (chart) => behind(drawingOf(chart)) } : {}),
    ...(over ? { afterDatasetsDraw: (chart) => over(drawingOf(chart)) } : {}),
  }
}

export const isByHand = (mark: Mark): mark is Plugin => 'id' in mark

/** Keeps `value` between two ends, of which the lower one wins. */
export const within = (low: number, high: number, value: number): number =>
  Math.max(low, Math.min(high, value))
