/** Options that mean the same for every command. */

import { availableParallelism } from 'node:os'
import { type Command, InvalidArgumentError, Option } from 'commander'
import { misuse } from '../scenario/fault.js'
import { leastDraws, mostDraws, mostShifts } from '../scenario/limits.js'
import type { ScenarioAsked } from '../scenario/read.js'
import { addQueueOptions, type QueueFlags } from './queue.js'

/** Options that say which scenario and which random numbers. */
export type ScenarioOptions = Pick<ScenarioAsked, 'set' | 'seed' | 'variant'>

/** Options of every command that simulates many shifts. */
export interface SimulationOptions
  extends Pick<ScenarioAsked, 'set' | 'seed' | 'shifts' | 'confidence' | 'engine'>,
    QueueFlags {
  resume?: boolean
  workers: number
  out?: string
  json?: boolean
  files: boolean
  /** All tables in place of the first screen. */
  full?: boolean
  /** The exit code is that of the figures, whatever `check` says. */
  anyway?: boolean
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

/** The option that says how many threads simulate. */
export const workersOption = (words: string): Option =>
  new Option('--workers <N>', words)
    .argParser(wholeBetween(1, 256))
    .default(availableParallelism(), 'the cores of the machine')

const collected = (value: string, before: string[]) => [...before, value]

/** Adds the options that change the scenario and say which random numbers. */
export function addOverrideOptions(command: Command): Command {
  return addRepeatable(
    command,
    '--set <PATH=VALUE>',
    'change one value of the scenario, such as "line.sealer.belt-speed=30 m/min"; repeatable',
  ).option(
    '--seed <TEXT>',
    'any text; the same seed gives the same shifts (default: from the scenario, or tapeshift)',
  )
}

/** Adds the option that lets a variant stand for the scenario. */
export const addVariantOption = (command: Command): Command =>
  command.option('--variant <NAME>', 'simulate this variant of the scenario instead of the base')

/** Adds the options that say which scenario and which random numbers. */
export const addScenarioOptions = (command: Command): Command => addVariantOption(addOverrideOptions(command))

/** Adds an option that may be given several times: a list of texts. */
export function addRepeatable(command: Command, flags: string, words: string, usually = 'none'): Command {
  return command.addOption(new Option(flags, words).argParser(collected).default([], usually))
}

/** Options that exclude each other. Throws `Fault` `asked`. */
export function refuseContradictions(options: SimulationOptions): void {
  if (options.out === '') throw misuse('--out needs the name of a folder')
  if (options.resume && !options.files)
    throw misuse('--resume needs a folder with results: leave out --no-files')
}

/** Adds the options of commands that draw inputs. */
export const addDrawsOptions = (command: Command, usual = '60'): Command =>
  command
    .addOption(
      new Option(
        '--draws <N>',
        `number of draws of the uncertain inputs, ${leastDraws} to ${mostDraws}, if the scenario says how well values are known (default: ${usual})`,
      ).argParser(wholeBetween(leastDraws, mostDraws)),
    )
    .addOption(
      new Option(
        '--inputs <HOW>',
        'fixed: use the inputs as given, as if they were all known exactly',
      ).choices(['drawn', 'fixed']),
    )

/** Adds the options of commands whose figures are judged. */
export function addJudgingOptions(command: Command): Command {
  addRepeatable(
    command,
    '--require <EXPR>',
    'end with exit code 4 unless the whole interval meets this, such as "target-held >= 95 %", or: precision; repeatable',
  )
  return command.option('--plain', 'plain means and intervals, without control variates on the arrivals')
}

/** Adds the options of every command that simulates many shifts; `shifts` is what is said of their number. */
export function addSimulationOptions(command: Command, shifts: string): Command {
  command.addOption(new Option('--shifts <N>', shifts).argParser(wholeBetween(2, mostShifts)))
  command
    .option(
      '--confidence <SHARE>',
      'confidence of the intervals, "50 %" to "99.99 %" (default: from the scenario, or 95 %)',
    )
    .addOption(
      new Option(
        '--engine <WHICH>',
        'ahead: work a row of pieces ahead of the clock; events: every event; the shifts are the same (default: from the scenario, or ahead)',
      ).choices(['ahead', 'events']),
    )
    .addOption(workersOption('number of threads, 1 to 256; the result does not depend on it'))
  return addQueueOptions(command)
    .option('--out <DIR>', 'folder for the files (default: out/<scenario>-<command>)')
    .option('--json', 'print the result as JSON on standard output, and nothing else')
    .option('--no-files', 'write no files')
    .option('--resume', 'continue with the saved shifts of an interrupted run')
    .option('--full', 'print all tables, not only the summary')
    .option('--quiet', 'print no progress and no report, only errors; with --json the result too')
    .option('--anyway', 'do not end with exit code 3 if check finds an error; the error is still shown first')
}
