/** What may be asked of a validation. */
import { LineCounter } from 'yaml'
import { misuse } from '../../scenario/fault.js'
import { printable, shown } from '../../scenario/printable.js'
import { parseQuantity } from '../../scenario/quantity.js'
import { readYaml } from '../../scenario/yaml-file.js'
import { fewestRuns } from '../../statistics/ranks.js'

/** What of the plant is fed to the model: its arrivals; its arrivals and its stops; the one and then, beside it, the other. */
export const drivers = ['arrivals', 'stops', 'both'] as const
export type Driver = (typeof drivers)[number]

export interface ValidateOptions {
  /** How far the mean of the model may lie from that of the plant, such as `3 %`: named before anybody looks. */
  margin?: string | undefined
  /** Runs of each day; 199 where nobody says. */
  runs?: number | undefined
  /** Share of the days that no fit used, such as `30 %`: the same as the fit was given, with the same seed. */
  holdOut?: string | undefined
  /** What a fit wrote, which names the days that it did not use. */
  heldOut?: { name: string; text: string } | undefined
  /** No fit has seen any day of this record. */
  unseen?: boolean | undefined
  /** What of the plant goes in: its arrivals where they were logged, as nobody says otherwise, its stops too, or each in turn. */
  drivenBy?: Driver | undefined
  /** Any text; the same seed keeps the same days back and draws the same numbers. */
  seed?: string | undefined
  /** So many reports of shifts, real and simulated, for those who know the line. */
  sheet?: number | undefined
  /** The text of the scenario, to have it back with what it was validated by. */
  writeInto?: string | undefined
}

/** Which days count: those of a list, a share that is drawn, or all; `unseen`: no fit used any of them. */
export type Kept =
  | { by: 'list'; days: readonly string[]; name: string }
  | { by: 'share'; share: number }
  | { by: 'unseen' }
  | { by: 'nothing' }

export interface ValidateAsked {
  margin: number
  runs: number
  kept: Kept
  drivenBy: Driver
  sheet: number
}

export const usualRuns = 199
/** Share of days that the interval of the runs is to hold. */
export const covered = 0.95
const mostRuns = 1999
const fewestSheets = 4

/** Reads them. Throws `Fault` `asked`; `confidence` is that of the study. */
export function validateAsked(options: ValidateOptions, confidence: number): ValidateAsked {
  const { margin, runs = usualRuns, sheet = 0 } = options
  if (margin === undefined)
    throw misuse(
      '--margin is missing: decide first how far the model may be off and still be useful, such as --margin "3 %". A margin chosen after the result proves nothing',
    )
  if (!(confidence >= 0.8))
    throw misuse('a verdict at a confidence below 80 % means little: give 80 % or more')
  const least = fewestRuns(covered)
  if (!(Number.isInteger(runs) && runs >= least && runs <= mostRuns))
    throw misuse(`--runs must be a whole number from ${least} to ${mostRuns}`)
  if (sheet !== 0 && !(Number.isInteger(sheet) && sheet >= fewestSheets))
    throw misuse(
      `--sheet must be a whole number of at least ${fewestSheets}: with fewer, guessing is too easy`,
    )
  const { drivenBy = 'arrivals' } = options
  if (!drivers.includes(drivenBy))
    throw misuse(`--driven-by ${printable(String(drivenBy))}: choose one of ${drivers.join(', ')}`)
  return { margin: shareOf('--margin', margin, 1), runs, kept: keptOf(options), drivenBy, sheet }
}

function keptOf({ holdOut, heldOut, unseen = false }: ValidateOptions): Kept {
  const named = [holdOut !== undefined, heldOut !== undefined, unseen].filter(Boolean).length
  if (named > 1)
    throw misuse('--hold-out, --held-out and --unseen each say which days no fit used: give only one')
  if (holdOut !== undefined) return { by: 'share', share: shareOf('--hold-out', holdOut, 0.9) }
  if (heldOut !== undefined) return { by: 'list', days: listedDays(heldOut), name: heldOut.name }
  return { by: unseen ? 'unseen' : 'nothing' }
}

/** A share above 0 and below `below`. */
function shareOf(option: string, text: string, below: number): number {
  const parsed = parseQuantity(text, 'share')
  if (!('value' in parsed)) throw misuse(`${option} ${printable(text)}: ${parsed.rule}; ${parsed.fix}`)
  if (parsed.value > 0 && parsed.value < below) return parsed.value
  throw misuse(`${option} ${printable(text)}: it must be above 0 % and below ${below * 100} %`)
}

/** The days that what a fit wrote names. */
function listedDays({ name, text }: { name: string; text: string }): string[] {
  const { raw } = readYaml(text, name, new LineCounter(), {
    name: 'what a fit wrote',
    keys: 'the keys record, held-out and values',
    needs: ['record', 'held-out', 'values'],
    starter: 'tapeshift fit RECORD --hold-out "30 %"',
  })
  const days: unknown = raw['held-out']
  if (!Array.isArray(days) || days.length === 0)
    throw misuse(
      `${printable(name)} names no days under \`held-out\`: fit with --hold-out "30 %" to hold out some days`,
    )
  const wrong = days.find((day) => typeof day !== 'string' || !/^\d{4}-\d\d-\d\d$/.test(day))
  if (wrong !== undefined)
    throw misuse(`${printable(name)}: \`${shown(wrong)}\` under \`held-out\` is not a day such as 2026-01-31`)
  return days as string[]
}
