/** The result document of sizing: the designs that were looked at in order of cost, and the cheapest that keeps its promises. */

import type { ContributionsTold, DrawsTold } from '../../answers/contributions.js'
import type { Interval } from '../../answers/difference-figure.js'
import type { LineResult } from '../../answers/line-result.js'
import type { Losses } from '../../answers/losses.js'
import type { StudyDocument } from '../../answers/made.js'
import type { FigureOfInputs } from '../../catalogue/figure.js'
import type { KeptDraws } from '../../statistics/kept-draws.js'
import type { AtEnd } from './nearest.js'
import type { Shown } from './promise-figure.js'
import type { Tried } from './search.js'

/** A promise as the document tells it. */
export interface PromiseResult {
  promise: string
  measure: string
  label: string
  unit: string
  value: number
  isLeast: boolean
  near: number
}

/**
 * A design that was looked at. `share`, `low` and `high` are those of the first promise. Where a sequential test ended its shifts the
 * share leans to the side of the verdict and `low` and `high` are null: no plain interval covers then. Of designs that were all
 * simulated to the end (`isFull`) each interval is one of a number of shifts that was fixed before.
 */
export interface SizedDesign {
  /** Its place in the order of cost of all designs, from 1. */
  place: number
  set: Record<string, unknown>
  /** Cost of a shift by hand; null where nothing is priced. */
  cost: number | null
  share: number | null
  low: number | null
  high: number | null
  shifts: number
  verdict: Tried['verdict']
  /** Why without simulating; null where it was simulated. */
  without: string | null
  /** Of each promise its figure over the shifts that were looked at. */
  promises: Interval[]
  /** Draws of the inputs by what came of them, as far as they were run; of designs that were drawn. */
  draws?: KeptDraws
}

/** A design judged on shifts that the search did not see; all its figures and intervals are of these. */
export type JudgedAfresh = LineResult & {
  /** Number of the first of them, and how many they are: both were fixed before they were simulated. */
  firstShift: number
  shifts: number
  /** Of each promise its figure with the inputs as they are given, on which side of what is asked its interval lies, and where inputs were drawn what these add. */
  promises: (Interval & { shown: Shown; inputs?: FigureOfInputs })[]
  /** The piece that has least to spare by hand. */
  bottleneck: string | null
  losses: Losses | null
}

/** The design that came nearest where none holds. */
export interface NearestDesign {
  /** Its place in `designs`. */
  design: number
  /** It on fresh shifts; null where pencil and paper ruled out all, so that none was simulated. */
  afresh: JudgedAfresh | null
  /** Where pencil and paper ruled it out: what it can put out at most, never stopping, against what was promised, cases/s, and why, at which key. */
  byHand: { atMost: number; promised: number | null; path: string; message: string; fix: string } | null
  /** Choices that stand at an end of what was offered. */
  atEnds: AtEnd[]
}

/** Draws of the inputs of the pick, or where none is sure of the surest. */
export interface SizeDrawn extends DrawsTold {
  /** Share of the draws that was asked for; null where none was. */
  sure: number | null
  /** Share of the draws that keeps all promises, and limits of the share of what the inputs may be. */
  share: number
  low: number
  high: number
  /** Designs that were drawn: the limits hold for all of them at once. */
  family: number
  /** Chance at most with which a draw is judged wrongly, either way. */
  wrongly: number
  /** Paths of what was drawn; draw by draw its value, SI, of a law its mean, what came of the draw, and the figure of the first promise over its shifts. */
  inputs: string[]
  each: { verdict: Tried['verdict']; figure: number | null; inputs: readonly number[] }[]
  /** Of each promise what each input adds to what is not known of it; null where nothing can be told apart. */
  promises: (ContributionsTold | null)[]
}

export interface SizeResult extends StudyDocument<'size'> {
  currency: string
  promises: PromiseResult[]
  /** The choices, and how many designs they make. */
  choices: { path: string; values: unknown[] }[]
  all: number
  /** By what designs stand in order: `cost`, then these. */
  order: string[]
  isFull: boolean
  /** Designs that were looked at, in order of cost. */
  designs: SizedDesign[]
  /** Place of the pick in `designs`; null where none keeps its promises. */
  pick: number | null
  /** Of the cheaper ones that were simulated and refused the place of the nearest in cost; null without one. */
  nextCheaper: number | null
  /** Designs and shifts that were simulated to find it, or the nearest; fresh shifts not counted. */
  spent: { designs: number; shifts: number }
  /** Paths of which more was taken never to hurt. */
  rising: string[]
  /** The pick on fresh shifts. */
  picked: JudgedAfresh | null
  /** Where there is no pick; null with one. */
  nearest: NearestDesign | null
  /** Where inputs were drawn. */
  drawn?: SizeDrawn
}

/** Whether a design is shown to hold: there is a pick, and fresh shifts do not show that it misses by more than may go either way. */
export const isShown = ({ picked }: Pick<SizeResult, 'picked'>): boolean =>
  picked?.promises.every(({ shown }) => shown !== 'missed') ?? false
