/** Colours of static drawings, given by the page so that dark mode turns them; those of the charts where none is given. */
import { palette } from '../report/marks/chart.js'

export const ink = `var(--ink, ${palette.ink})`
export const quiet = `var(--quiet, ${palette.quietInk})`
export const paper = `var(--paper, ${palette.paper})`
export const accent = `var(--accent, ${palette.lost})`

/** A number in markup: two decimals are finer than any screen. */
export const n = (value: number): string => String(Math.round(value * 100) / 100)
