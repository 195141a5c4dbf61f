/** What may be asked of a fit. */
import { misuse } from '../../scenario/fault.js'
import { printable } from '../../scenario/printable.js'
import { parseQuantity } from '../../scenario/quantity.js'
import type { ReadScenario } from '../../scenario/read.js'

export interface FitOptions {
  /** Share of the days that no fit may use, such as `30 %`. */
  holdOut?: string | undefined
  /** Of the intervals, such as `90 %`; 95 % where nothing is said. */
  confidence?: string | undefined
  /** Any text; the same seed keeps the same days back and draws the same logs. */
  seed?: string | undefined
  /**
   * The scenario into which the values are to be written, and its text. `files`: the texts that it reads by the name of their file; those that
   * values draw on are added, for no such file is there yet.
   */
  into?: { scenario: ReadScenario; text: string; files?: Map<string, string> } | undefined
}

/** The options as numbers. */
export interface FitAsked {
  holdOut: number
  confidence: number
  seed: string
}

/** Reads them. Throws `Fault` `asked`. */
export function fitAsked({ holdOut, confidence, seed = 'tapeshift' }: FitOptions): FitAsked {
  return {
    holdOut: holdOut === undefined ? 0 : share('--hold-out', holdOut, 0, 0.9),
    confidence: confidence === undefined ? 0.95 : share('--confidence', confidence, 0.5, 0.9999),
    seed,
  }
}

function share(option: string, text: string, least: number, most: number): number {
  const parsed = parseQuantity(text, 'share')
  if (!('value' in parsed)) throw misuse(`${option} ${printable(text)}: ${parsed.rule}; ${parsed.fix}`)
  if (!(parsed.value >= least && parsed.value <= most))
    throw misuse(`${option} ${printable(text)}: from ${least * 100} % to ${most * 100} %`)
  return parsed.value
}
