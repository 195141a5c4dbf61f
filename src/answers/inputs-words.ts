/** Both kinds of what is not known, in sentences: how far off a figure may be, which input makes most of it, what to measure next. */
import type { Figure } from '../catalogue/figure.js'
import type { Display } from '../catalogue/printed-units.js'
import { counted, grouped, listed, percentText, printFigure } from '../report/format.js'
import { labelAndPath, labelOf } from '../scenario/labels.js'
import type { Contribution, ContributionsTold, DrawsTold } from './contributions.js'

/** Half-width of an interval about a figure, its longer side. */
export const halfWidth = (
  { mean }: Pick<Figure, 'mean'>,
  { low, high }: { low: number | null; high: number | null },
): number => Math.max((high ?? Number.NaN) - mean!, mean! - (low ?? Number.NaN))

/** The same in words, without its unit: `0.31`. */
export function halfText(
  figure: Figure,
  of: { low: number | null; high: number | null },
  display: Display,
): string {
  const width = halfWidth(figure, of)
  if (!Number.isFinite(width)) return 'an unknown amount'
  if (width === 0) return '0'
  const { interval } = printFigure(
    { mean: figure.mean, low: figure.mean! - width, high: figure.mean! + width, unit: figure.unit },
    display,
  )
  return interval.replace('± ', '')
}

/** `9.17 cases/min, give or take 0.02 by luck of the simulation and 0.31 by what is not known of the inputs`; null where inputs were not drawn. */
export function bothKinds(figure: Figure | undefined, display: Display): string | null {
  if (!figure?.inputs || figure.mean === null) return null
  const { value, unit } = printFigure(figure, display)
  const luck = halfText(figure, figure, display)
  const inputs = halfText(figure, figure.inputs.alone, display)
  return `${`${value} ${unit}`.trimEnd()}, ± ${luck} by random variation of the simulation and ± ${inputs} by uncertainty of the inputs`
}

/** `60 draws of what the inputs may be, 25 shifts each`. */
export const drawsText = ({ draws, shifts }: Pick<DrawsTold, 'draws' | 'shifts'>): string =>
  `${counted(draws, 'draw')} of the uncertain inputs, ${counted(shifts, 'shift')} each`

/** A half is a quarter of the variance: so much of it has to go. */
const toGo = 3 / 4
/** More data than so many times what there is nobody collects: a further input is looked at instead. */
const mostTimes = 20

/** Jeffreys: a count of none is half an event. */
const dataNow = ({ data }: Contribution): number => Math.max(data ?? 0, 1 / 2)

/** Data of an input. */
const dataText = ({ path, data }: Contribution, times: number): string =>
  data === null
    ? `measure ${labelOf(path)} instead of guessing`
    : `base ${labelOf(path)} on ${grouped(Math.ceil(Math.max(1, dataNow({ path, data, share: 0 }) * times)), 0)} events or observations instead of ${grouped(data, 0)}`

/**
 * What to measure so that the plus-minus of a figure is half of what it is: the fewest inputs, those that add most first, each with as many times its
 * data. What an input adds to the variance falls as its data grow; a guess that is measured adds as good as nothing.
 */
export function toHalve(
  shares: readonly Contribution[],
  ofWhole: number,
): { inputs: Contribution[]; times: number } | null {
  for (let count = 1; count <= shares.length; count++) {
    const inputs = shares.slice(0, count)
    const part = (which: readonly Contribution[]) =>
      which.reduce((sum, { share }) => sum + share * ofWhole, 0)
    const logged = part(inputs.filter(({ data }) => data !== null))
    const left = toGo - part(inputs.filter(({ data }) => data === null))
    if (left <= 0) return { inputs, times: 1 }
    const times = logged > left ? logged / (logged - left) : Number.POSITIVE_INFINITY
    if (times <= mostTimes) return { inputs, times }
  }
  return null
}

/** Inputs that are named. */
const mostNamed = 3

/** The input that adds most, and how much more data would halve the whole. */
export function measureNext(
  told: ContributionsTold | undefined,
  figure: { inputs?: Pick<NonNullable<Figure['inputs']>, 'share'> | undefined } | undefined,
): string[] {
  const first = told?.shares[0]
  if (!told || !first || !figure?.inputs || first.share < 0.05 || figure.inputs.share < 0.1) return []
  const most = `What to measure next: ${labelAndPath(first.path)}. It causes ${percentText(first.share, 2)} of the uncertainty of the inputs.`
  const found = toHalve(told.shares, figure.inputs.share)
  if (found === null) return [`${most} More data on single inputs alone would not halve the plus-minus.`]
  const { inputs, times } = found
  if (inputs.length > mostNamed)
    return [
      `${most} To halve the plus-minus, ${counted(inputs.length, 'input')} must be known better, such as ${listed(inputs.slice(0, mostNamed).map(({ path }) => labelOf(path)))}: ${grouped(times, 1)} times the data of each, and measurements instead of guesses.`,
    ]
  const only = inputs[0]!
  if (inputs.length === 1 && only.data !== null) {
    const more = Math.ceil(dataNow(only) * (times - 1))
    return [
      `${most} Logging about ${grouped(Number(more.toPrecision(2)), 0)} more (${grouped(only.data, 0)} now) would halve the plus-minus.`,
    ]
  }
  return [`${most} To halve the plus-minus: ${listed(inputs.map((each) => dataText(each, times)))}.`]
}

/** Whether what the inputs may be matters more than luck. */
export const isOfInputs = (figure: Figure | undefined): boolean => (figure?.inputs?.share ?? 0) > 0.5
