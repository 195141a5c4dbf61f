/** Axes that several charts share: numbers with ticks of their own, and rows with their names. */
import { grouped } from '../format.js'
import { axisTitle, palette, tickFont } from './chart.js'

/** The ends of an axis and its ticks. */
export interface Span {
  min: number
  max: number
  ticks: number[]
  decimals: number
}

const look = {
  grid: { color: palette.grid },
  border: { color: palette.frame },
}

/** An axis of numbers with ticks of its own. */
export function spanAxis(
  span: Span,
  title: string,
  textOf = (value: number) => grouped(value, span.decimals),
) {
  return {
    type: 'linear' as const,
    min: span.min,
    max: span.max,
    title: axisTitle(title),
    afterBuildTicks: (scale: { ticks: { value: number }[] }) => {
      scale.ticks = span.ticks.map((value) => ({ value }))
    },
    ticks: {
      color: palette.quietInk,
      font: tickFont,
      maxRotation: 0,
      autoSkip: false,
      callback: (value: string | number) => textOf(Number(value)),
    },
    ...look,
  }
}

/** Rows from the top down, each with its name, which may be of several lines. */
export function rowAxis(names: readonly (string | string[])[]) {
  return {
    type: 'linear' as const,
    reverse: true,
    min: -0.5,
    max: names.length - 0.5,
    afterBuildTicks: (scale: { ticks: { value: number }[] }) => {
      scale.ticks = names.map((_, value) => ({ value }))
    },
    ticks: {
      color: palette.ink,
      autoSkip: false,
      font: tickFont,
      callback: (value: string | number) => names[Number(value)] ?? '',
    },
    grid: { display: false },
    border: { color: palette.frame },
  }
}
