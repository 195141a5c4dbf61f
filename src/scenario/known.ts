/** What a value of a scenario rests on, as the file says it, and which schemas read a value that may say it. */

import * as z from 'zod'
import { isMap } from './is-map.js'
import { type Dimension, unitSize } from './quantity.js'

/** How what is believed of a guess spreads between its ends: the lower one lies at 5 %, the upper one at 95 %. */
export type Spread = 'lognormal' | 'logit-normal' | 'normal'

/** What its key allows, in SI: no draw goes beyond. */
export interface Ends {
  least: number
  most: number
}

/** Numbers in SI. */
export type Known =
  /** Events in an exposure: of cases a chance, of a time a rate or the mean time from one to the next. */
  | ({
      form: 'count'
      of: 'chance' | 'rate' | 'interval'
      events: number
      exposure: number
      counted: string
    } & Ends)
  /** Observations that the parameters of a law were fitted to. */
  | { form: 'fitted'; observations: number }
  /** The observations themselves; of so many days, where whole days are drawn. */
  | { form: 'observed'; observations: number; days?: number }
  /** Believed with 90 % to lie between `low` and `high`. */
  | ({ form: 'guess'; low: number; high: number; spread: Spread } & Ends)

/** What a number is of; null: it has no unit. */
export type OfWhat = { dimension: Dimension } | { money: string } | null

/** One value and what it rests on. */
export interface Evidence {
  /** Dotted path of the value, as a change would name it. */
  path: string
  /** Where the number, or the law, stands in the validated scenario. */
  at: readonly (string | number)[]
  /** Where it stands again: of pieces side by side, which are alike in it. */
  again?: readonly (readonly (string | number)[])[]
  of: OfWhat
  known: Known
  /** The value as the file would write it if nothing but itself were known. */
  fixed: unknown
  /** As the file writes it. */
  written: unknown
}

/** What a schema reads off a value that keeps its rules; null where it is taken as exact. */
export interface Evident {
  evidence(written: unknown): Rests | null
}

/** `within`: from the place of the value to that of its number in the validated scenario. */
export interface Rests extends Pick<Evidence, 'known' | 'fixed' | 'of'> {
  within: readonly string[]
}

/** By schema: how to read what its value rests on. */
export const evident = z.registry<Evident>()

/** By schema of a map: the steps in the validated scenario that a key of the file leads by, where it is not the key itself. */
export const steps = z.registry<{ of(key: string): readonly string[] }>()

/** Whether something is written as a guess, rightly or not. */
export const isGuess = (written: unknown): written is Record<string, unknown> =>
  isMap(written) && (Object.hasOwn(written, 'guess') || Object.hasOwn(written, 'between'))

/** What a value rests on, in words: `counted: 36 in 40000 cases`, `fitted to 40 observations`. */
export function restingOn(known: Known): string {
  switch (known.form) {
    case 'count': {
      const { events, exposure, counted } = known
      const size = known.of === 'chance' ? 1 : unitSize('time', counted)
      return `counted: ${events} in ${Number((exposure / size).toPrecision(12))} ${counted}`
    }
    case 'fitted':
      return `fitted to ${known.observations} observations`
    case 'observed':
      return `${known.observations} ${known.observations === 1 ? 'observation' : 'observations'}${known.days === undefined ? '' : ` on ${known.days} days`}`
    case 'guess':
      return 'guessed'
  }
}
