/** Options that mean the same for every command. */
import { availableParallelism } from 'node:os'
import { type Command, InvalidArgumentError, Option } from 'commander'
import { mostShifts } from '../scenario/schema.js'

/** Options that say which scenario and which random numbers. */
export interface ScenarioOptions {
  set: string[]
  variant?: string
  seed?: string
}

export interface StudyOptions extends ScenarioOptions {
  shifts?: number
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

/** Adds the options that say which scenario and which random numbers. */
export function addScenarioOptions(command: Command): Command {
  return command
    .addOption(
      new Option(
        '--set <PATH=VALUE>',
        'change one value of the scenario, such as "line.sealer.belt-speed=30 m/min"; repeatable',
      )
        .argParser((value: string, before: string[]) => [...before, value])
        .default([], 'none'),
    )
    .option('--variant <NAME>', 'simulate this variant of the scenario instead of the base')
    .option(
      '--seed <TEXT>',
      "any text; the same seed gives the same shifts (default: the scenario's, or tapeshift)",
    )
}

/** Adds the options of a study to a command. */
export function addStudyOptions(command: Command): Command {
  return addScenarioOptions(command)
    .addOption(
      new Option(
        '--shifts <N>',
        `shifts to simulate, 2 to ${mostShifts} (default: the scenario's, or 100)`,
      ).argParser(wholeBetween(2, mostShifts)),
    )
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
    .option('--quiet', 'no progress, no report: errors only')
}
