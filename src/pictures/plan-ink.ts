/** Colours of the plan, as the page gives them, and numbers as its markup has them. */
import { inks, palette } from '../report/marks/inks.js'

export const { ink, quiet, paper } = inks
export const accent = `var(--accent, ${palette.lost})`

/** A number in markup: two decimals are finer than any screen. */
export const n = (value: number): string => String(Math.round(value * 100) / 100)
