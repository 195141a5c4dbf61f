/** Options that mean the same for every command. */
import { availableParallelism } from 'node:os'
import { type Command, InvalidArgumentError, Option } from 'commander'
import { mostShifts } from '../scenario/limits.js'
import { quoted } from './text.js'

/** Most shifts of a study that goes on until it is precise enough, where the user does not say. */
export const usualMost = 10_000

/** Options that say which scenario and which random numbers. */
export interface ScenarioOptions {
  set: string[]
  variant?: string
  seed?: string
}

export interface StudyOptions extends ScenarioOptions {
  shifts?: number
  precision?: string
  of: string[]
  require: string[]
  plain?: boolean
  resume?: boolean
  confidence?: string
  workers: number
  out?: string
  json?: boolean
  files: boolean
  quiet?: boolean
}

/** Reads a whole number between two bounds, both allowed. */
export const wholeBetween =
  (low: number, high: number) =>
  (text: string): number => {
    const value = Number(text)
    if (!Number.isInteger(value) || value < low || value > high)
      throw new InvalidArgumentError(`It must be a whole number from ${low} to ${high}.`)
    return value
  }

const collected = (value: string, before: string[]) => [...before, value]

/** Adds the options that say which scenario and which random numbers. */
export function addScenarioOptions(command: Command): Command {
  return command
    .addOption(
      new Option(
        '--set <PATH=VALUE>',
        'change one value of the scenario, such as "line.sealer.belt-speed=30 m/min"; repeatable',
      )
        .argParser(collected)
        .default([], 'none'),
    )
    .option('--variant <NAME>', 'simulate this variant of the scenario instead of the base')
    .option(
      '--seed <TEXT>',
      "any text; the same seed gives the same shifts (default: the scenario's, or tapeshift)",
    )
}

/** The words of a command line that names the same scenario again, `--seed` left out. */
export function scenarioWords(command: string, name: string, { set, variant }: ScenarioOptions): string[] {
  return [
    'tapeshift',
    command,
    quoted(name),
    ...set.map((each) => `--set ${quoted(each)}`),
    ...(variant === undefined ? [] : [`--variant ${quoted(variant)}`]),
  ]
}

/** Adds the options of a study to a command. */
export function addStudyOptions(command: Command): Command {
  return addScenarioOptions(command)
    .addOption(
      new Option(
        '--shifts <N>',
        `shifts to simulate, 2 to ${mostShifts} (default: the scenario's, or 100); with --precision the most (default ${usualMost})`,
      ).argParser(wholeBetween(2, mostShifts)),
    )
    .option(
      '--precision <SHARE>',
      'simulate until plus-minus is at most this share of the figure, such as "1 %"; at least 10 shifts',
    )
    .addOption(
      new Option(
        '--of <MEASURE>',
        'figure that --precision is about, such as throughput or equipment.sealer.jams; repeatable (default: throughput)',
      )
        .argParser(collected)
        .default([], 'throughput'),
    )
    .addOption(
      new Option(
        '--require <EXPR>',
        'end with exit code 4 unless the whole interval says so, such as "target-held >= 95 %", or: precision; repeatable',
      )
        .argParser(collected)
        .default([], 'none'),
    )
    .option('--plain', 'plain means and intervals, not narrowed by what is known of the arrivals')
    .option(
      '--confidence <SHARE>',
      'confidence of the intervals, "50 %" to "99.99 %" (default: the scenario\'s, or 95 %)',
    )
    .addOption(
      new Option('--workers <N>', 'threads that simulate, 1 to 256; the result does not depend on it')
        .argParser(wholeBetween(1, 256))
        .default(availableParallelism(), 'the cores of the machine'),
    )
    .option('--out <DIR>', 'folder for the files (default: out/<scenario>-<command>)')
    .option('--json', 'print the result document on standard output, and nothing else there')
    .option('--no-files', 'write no files')
    .option('--resume', 'go on with the shifts that an interrupted run has kept in its folder')
    .option('--quiet', 'no progress, no report: errors only')
}
