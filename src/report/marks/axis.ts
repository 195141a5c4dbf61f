/** Axes: numbers with ticks that the library chooses or with ticks of their own, rows with names, room beside the picture. */
import { grouped } from '../format.js'
import { palette } from './inks.js'
import { plainFont } from './letters.js'

/** The least of 1, 2, 5, 10, 20, ... that is not below `width`, or of their decimal fractions. */
export function roundStep(width: number): number {
  const power = 10 ** Math.floor(Math.log10(width) + 1e-9)
  return [1, 2, 5, 10].map((step) => step * power).find((step) => step >= width * (1 - 1e-9))!
}

/** The ends of an axis and its ticks. */
export interface Span {
  min: number
  max: number
  ticks: number[]
  decimals: number
}

/** Decimals that tell multiples of `step` apart. */
export const decimalsOf = (step: number): number => Math.max(0, -Math.floor(Math.log10(step) + 1e-9))

/** An axis from `min` to `max` with ticks at round numbers, at most about `mostTicks` of them and no closer than `leastStep`. */
export function spanOf(min: number, max: number, mostTicks: number, leastStep = 0): Span {
  const step = roundStep(Math.max(leastStep, (max - min) / mostTicks))
  const first = Math.ceil(min / step - 1e-9)
  const count = Math.floor(max / step + 1e-9) - first + 1
  const ticks = Array.from({ length: count }, (_, index) => (first + index) * step)
  return { min, max, ticks, decimals: decimalsOf(step) }
}

/** Title of an axis in the one style of all charts. */
const axisTitle = (text: string) => ({ display: true, text, color: palette.quietInk, font: plainFont })

const border = { color: palette.frame }
const ticks = { color: palette.quietInk, font: plainFont, maxRotation: 0 }

export interface NumbersAsked {
  title: string
  min?: number | undefined
  max?: number | undefined
  /** Ticks at most. */
  most?: number
  /** Are ends that are no round numbers left without a tick? */
  isInside?: boolean
  /** Of the numbers at the ticks, where they are not written by `textOf`, nor as the library would. */
  decimals?: number
  textOf?: (value: number) => string
  /** Without lines across the picture. */
  isPlain?: boolean
  /** More that the library is told of axis and ticks. */
  more?: object
  moreOfTicks?: object
}

/** An axis of numbers at ticks that the library chooses. */
export function numbers(asked: NumbersAsked) {
  const { title, min, max, most, decimals, isInside, isPlain, more, moreOfTicks } = asked
  const textOf = asked.textOf ?? (decimals === undefined ? null : (value: number) => grouped(value, decimals))
  return {
    type: 'linear' as const,
    min,
    max,
    title: axisTitle(title),
    ticks: {
      ...ticks,
      maxTicksLimit: most,
      ...(isInside ? { includeBounds: false } : {}),
      ...(textOf ? { callback: (value: string | number) => textOf(Number(value)) } : {}),
      ...moreOfTicks,
    },
    grid: isPlain ? { display: false } : { color: palette.grid },
    border,
    ...more,
  }
}

/** A number with decimals only where it is not whole. */
export const wholeOr =
  (decimals: number) =>
  (value: number): string =>
    grouped(value, Number.isInteger(value) ? 0 : decimals)

/** Ticks at these numbers and nowhere else. */
export const ticksAt = (values: readonly number[]) => ({
  afterBuildTicks: (scale: { ticks: { value: number }[] }) => {
    scale.ticks = values.map((value) => ({ value }))
  },
})

/** An axis of numbers with ticks of its own. */
export const spanAxis = ({ ticks: at, ...span }: Span, title: string, more: Partial<NumbersAsked> = {}) => ({
  ...numbers({ title, ...span, moreOfTicks: { autoSkip: false }, ...more }),
  ...ticksAt(at),
})

/** The rows of bars, whose names are the labels of the chart. */
export const barRows = {
  ticks: { color: palette.ink, autoSkip: false, font: plainFont },
  grid: { display: false },
  border,
}

/** Rows from the top down with their names, which may be of several lines. */
export const rowAxis = (names: readonly (string | string[])[]) => ({
  type: 'linear' as const,
  reverse: true,
  min: -0.5,
  max: names.length - 0.5,
  ...ticksAt(names.map((_, value) => value)),
  ...barRows,
  ticks: { ...barRows.ticks, callback: (value: string | number) => names[Number(value)] ?? '' },
})

/**
 * An axis without anything on it that keeps `width` px free right of the picture. Padding would do that too, but the
 * title would have to do without that room as well and be drawn narrower.
 */
export const roomAtRight = (width: number) => ({
  type: 'linear' as const,
  position: 'right' as const,
  ticks: { display: false },
  grid: { display: false },
  border: { display: false },
  afterFit(scale: { width: number }) {
    scale.width = width
  },
})

/** The time along an axis. */
export interface AxisTime {
  word: 'hours' | 'minutes'
  /** s. */
  unit: number
}

/** What is shorter than this is drawn over minutes, s. */
const shortTime = 7200

/** Unit of an axis that reaches `end` s. */
export const axisTime = (end: number): AxisTime =>
  end < shortTime ? { word: 'minutes', unit: 60 } : { word: 'hours', unit: 3600 }
