/** Limits that reports of several questions tell in the same words. */
import type { ShiftTold } from './made.js'

/** How shifts start, and so what is counted; `steady` and `empty` say it of lines without an end and of lines that start every shift empty; left out, of several designs. */
export const startLimit = (
  { campaign, start }: ShiftTold,
  steady = 'The line runs without end: what each design does after it came to its stride is counted.',
  empty = 'Each shift starts with an empty line.',
): string =>
  campaign > 1
    ? 'The first shift of each campaign starts with an empty line; the others go on where the one before ended.'
    : start === 'steady'
      ? steady
      : empty
