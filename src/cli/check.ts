/** `tapeshift check`: can this be built and run at all? Findings and the hand calculation, without simulating. */
import type { Command } from 'commander'
import type { CheckMade, CheckResult } from '../questions/check/document.js'
import { exits, type Io, textStyle } from './io.js'
import { addScenarioOptions, type ScenarioOptions, scenarioWords } from './options.js'
import { version } from './version.js'

interface CheckOptions extends ScenarioOptions {
  json?: boolean
  quiet?: boolean
}

/** Adds the command; `finish` takes its exit code. */
export function addCheck(program: Command, io: Io, finish: (code: number) => void): void {
  const command = program
    .command('check')
    .argument('<SCENARIO>', 'scenario file, or - for standard input')
    .description(
      'can this be built and run at all: findings, the line worked out by hand, what is assumed, cautions; no simulation',
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
      '\nExit codes: 0 nothing says that the line cannot work; 3 a finding is an error. Errors come first, then warnings and notes.',
    )
  addScenarioOptions(command)
    .option('--json', 'print the result document on standard output, and nothing else there')
    .option('--quiet', 'findings and one line of caution only; with --json nothing else changes')
    .action(async (name: string, options: CheckOptions) => finish(await check(name, options, io)))
}

async function check(name: string, options: CheckOptions, io: Io): Promise<number> {
  const result = await resultOf(name, options, io)
  if (options.json) io.stdout.write(`${JSON.stringify(result, null, 2)}\n`)
  else {
    const { checkText } = await import('../questions/check/report.js')
    io.stdout.write(checkText(result, textStyle(io), options.quiet === true))
  }
  return result.canWork ? exits.done : exits.scenario
}

/** The document; a scenario that breaks the rules of the format has a document too where one was asked for. */
async function resultOf(name: string, options: CheckOptions, io: Io): Promise<CheckResult> {
  const [{ loadForCommand }, { ScenarioError }, { checkScenario }, { checkResult, refusedResult }] =
    await Promise.all([
      import('./scenario.js'),
      import('../scenario/problems.js'),
      import('../hand/check.js'),
      import('../questions/check/document.js'),
    ])
  try {
    const loaded = await loadForCommand(name, options, io)
    return checkResult(
      loaded,
      checkScenario(loaded),
      made(name, options, loaded.scenario.title, loaded.sha256),
    )
  } catch (error) {
    if (options.json && error instanceof ScenarioError) return refusedResult(error.problems)
    throw error
  }
}

function made(name: string, options: CheckOptions, title: string, sha256: string): CheckMade {
  const repeat = scenarioWords('check', name, options).join(' ')
  return { version, node: process.version, scenario: { title, sha256 }, repeat }
}
