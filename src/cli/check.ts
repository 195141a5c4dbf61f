/** `tapeshift check`: can this be built and run at all? Findings and the hand calculation, without simulating. */
import type { Command } from 'commander'
import type { CheckResult } from '../questions/check/document.js'
import type { ScenarioError } from '../scenario/problems.js'
import { exits, type Io, screenStyle, textStyle } from './io.js'
import { addScenarioOptions, type ScenarioOptions, type SimulationOptions } from './options.js'

type CheckOptions = ScenarioOptions & Pick<SimulationOptions, 'json' | 'quiet' | 'full'>

/** Adds the command; `finish` takes its exit code. */
export function addCheck(program: Command, io: Io, finish: (code: number) => void): void {
  const command = program
    .command('check')
    .argument('<SCENARIO>', 'scenario file, or - for standard input')
    .description(
      'can the line work at all? Findings, hand calculation, assumed values and cautions; no simulation',
    )
    .addHelpText(
      'before',
      `Examples:
  tapeshift check line.yaml
  tapeshift check line.yaml --variant three-inch
  tapeshift check line.yaml --set "tape.leg=50 mm" --quiet     findings only
  tapeshift check line.yaml --json > check.json
`,
    )
    .addHelpText(
      'after',
      '\nExit codes: 0 no finding is an error; 3 a finding is an error. Errors come first, then warnings and notes.',
    )
  addScenarioOptions(command)
    .option('--json', 'print the result as JSON on standard output, and nothing else')
    .option('--full', 'print all findings and the whole hand calculation')
    .option('--quiet', 'print only the findings and one line of caution; no effect on --json')
    .action(async (name: string, options: CheckOptions) => finish(await checked(name, options, io)))
}

async function checked(name: string, options: CheckOptions, io: Io): Promise<number> {
  const result = await resultOf(name, options, io)
  if (options.json) io.stdout.write(`${JSON.stringify(result, null, 2)}\n`)
  else if (options.full || options.quiet) {
    const { checkText } = await import('../questions/check/report.js')
    io.stdout.write(checkText(result, textStyle(io), options.quiet === true))
  } else {
    const [{ checkScreen }, { screenText }] = await Promise.all([
      import('../questions/check/first-screen.js'),
      import('../report/screen-text.js'),
    ])
    io.stdout.write(`${screenText(checkScreen(result), screenStyle(io))}All findings: --full.\n`)
  }
  return result.canWork ? exits.done : exits.scenario
}

/** The document; a scenario that breaks the rules of the format has a document too where one was asked for. */
async function resultOf(
  name: string,
  { set, seed, variant, json }: CheckOptions,
  io: Io,
): Promise<CheckResult> {
  const [{ loadForCommand }, { isFault }, { refusedResult }, { check }] = await Promise.all([
    import('./scenario.js'),
    import('../scenario/fault.js'),
    import('../questions/check/document.js'),
    // the face holds all questions: this one alone loads in less time
    import('../questions/check/study.js'),
  ])
  try {
    return check(await loadForCommand(name, { set, seed, variant }, io))
  } catch (error) {
    if (json && isFault(error, 'scenario')) return refusedResult((error as ScenarioError).problems)
    throw error
  }
}
