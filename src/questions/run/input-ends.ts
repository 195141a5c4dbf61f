/** What a figure is at the ends of each input, in words: the input there, and the figure with as many decimals as tell the ends apart. */
import type { ContributionWithEnds, InputEndsTold } from '../../answers/contributions.js'
import { inputText } from '../../answers/rests-on.js'
import { briefUnit } from '../../catalogue/unit-name.js'
import { printFigure } from '../../report/format.js'
import type { RunResult } from './document.js'

/** How far the figure goes from its middle to either end of an input. */
export const reachOf = (
  { middle }: Pick<InputEndsTold, 'middle'>,
  { low, high }: ContributionWithEnds,
): number => Math.max(Math.abs(low.figure - middle), Math.abs(high.figure - middle))

/** Inputs that move the figure, those first that move it most. */
export const byReach = (told: InputEndsTold): ContributionWithEnds[] =>
  told.shares.filter((each) => reachOf(told, each) > 0).sort((a, b) => reachOf(told, b) - reachOf(told, a))

/** The figure at an end or in the middle, and its unit. */
export function figureThere(
  value: number,
  told: InputEndsTold,
  { display }: Pick<RunResult, 'display'>,
): { value: string; unit: string } {
  const most = Math.max(...told.shares.map((each) => reachOf(told, each)))
  return printFigure(
    { mean: value, low: value - most, high: value + most, unit: briefUnit(told.unit) },
    display,
  )
}

/** The input at both of its ends. */
export function inputEnds(
  { path, low, high }: ContributionWithEnds,
  { evidence = [], display }: Pick<RunResult, 'evidence' | 'display'>,
): [low: string, high: string] {
  const told = evidence.find((each) => each.path === path) ?? { unit: '' }
  const text = (value: number) => inputText(Number(value.toPrecision(3)), told, display) ?? ''
  return [text(low.input), text(high.input)]
}
