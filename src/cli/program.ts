/** The command line as a function of arguments and streams: it returns the exit code and never ends the process. */

import { Command, CommanderError } from 'commander'
import type { Standstill } from '../line/standstill.js'
import { Fault } from '../scenario/fault.js'
import type { ScenarioError } from '../scenario/problems.js'
import { version } from '../version.js'
import { addCheck } from './check.js'
import { compareCommand } from './compare.js'
import { addCompletions } from './completions.js'
import { addFit } from './fit.js'
import { addHelp } from './help.js'
import { exits, exitWords, type Io } from './io.js'
import { addManual } from './manual.js'
import { addNew } from './new.js'
import { addReport } from './report.js'
import { runCommand } from './run.js'
import { sizeCommand } from './size.js'
import { addStudy } from './study.js'
import { sweepCommand } from './sweep.js'
import { addTrace } from './trace.js'
import { addTry } from './try.js'
import { addValidate } from './validate.js'
import { addWorker } from './worker.js'

/** Runs `argv` (without node and script). All that happens is in the streams and in the exit code. */
export async function main(argv: readonly string[], io: Io): Promise<number> {
  let code: number = exits.done
  const program = programOf(io, (finished) => {
    code = finished
  })
  try {
    await program.parseAsync(argv, { from: 'user' })
    return code
  } catch (error) {
    return explain(error, io)
  }
}

/** The program with all its commands; `finish` takes the exit code. */
export function programOf(io: Io, finish: (code: number) => void): Command {
  const program = new Command('tapeshift')
    .description(
      'Simulates a corrugated-case sealing line: how many sealers, heads, belts, buffers and people hold the rate, and at what cost.',
    )
    .version(version)
    .addHelpText(
      'before',
      `Examples:
  tapeshift new line.yaml                 a starter scenario with every key explained
  tapeshift run line.yaml                 simulate it and write the report
  tapeshift compare line.yaml             the line against its variants: what differs, and is it worth the money
  tapeshift size line.yaml --choose "line.infeed.length=4..12/1 m" --holds "9 cases/min in 95 % of shifts"
  tapeshift sweep line.yaml --vary "line.infeed.length=4..12/1 m"   how much is enough
  tapeshift fit record.yaml               inputs from a plant's log
  tapeshift validate line.yaml record.yaml --margin "3 %" --hold-out "30 %"   does the model match the plant?
  tapeshift trace line.yaml --shift 3      one shift, event by event
  tapeshift try line.yaml                 a page in which you change the line and see at once what it does
  tapeshift report out/line-run/result.json   make the report page again
  tapeshift help                          the topics of the manual; tapeshift manual writes it as a page
`,
    )
    .addHelpText(
      'after',
      `\nExit codes:\n${Object.entries(exits)
        .map(([name, each]) => `  ${String(each).padEnd(4)} ${exitWords[name as keyof typeof exits]}`)
        .join('\n')}`,
    )
    .helpCommand(false)
    .configureOutput({ writeOut: (text) => io.stdout.write(text), writeErr: (text) => io.stderr.write(text) })
    .exitOverride()
  addCheck(program, io, finish)
  addStudy(program, io, finish, runCommand)
  addStudy(program, io, finish, compareCommand)
  addStudy(program, io, finish, sizeCommand)
  addStudy(program, io, finish, sweepCommand)
  addTrace(program, io, finish)
  addTry(program, io, finish)
  addFit(program, io, finish)
  addValidate(program, io, finish)
  addWorker(program, io, finish)
  addReport(program, io, finish)
  addNew(program, io, finish)
  addHelp(program, io, finish)
  addManual(program, io, finish)
  addCompletions(program, io, finish)
  program.showHelpAfterError('All commands: tapeshift --help')
  for (const command of program.commands)
    command
      .exitOverride()
      .configureOutput(program.configureOutput())
      .showHelpAfterError(`How to use it: tapeshift ${command.name()} --help`)
  return program
}

/** Says what went wrong on standard error; returns the exit code. */
function explain(error: unknown, io: Io): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? exits.done : exits.usage
  if (error instanceof Fault) return explainFault(error, io)
  io.stderr.write(
    `error: ${error instanceof Error ? error.message : String(error)}\nThis is a bug of tapeshift, not of your scenario.\n`,
  )
  if (io.env.TAPESHIFT_DEBUG && error instanceof Error) io.stderr.write(`${error.stack}\n`)
  return exits.bug
}

/** What the user can mend. */
function explainFault(fault: Fault, { stderr }: Io): number {
  switch (fault.code) {
    case 'scenario': {
      const { length: count } = (fault as ScenarioError).problems
      const found = count === 1 ? 'One finding' : `${count} findings`
      stderr.write(`${fault.message}\n\n${found}: the scenario was not simulated.\n`)
      return exits.scenario
    }
    case 'record':
      stderr.write(`${fault.message}\n\nNothing was fitted: correct the record first.\n`)
      return exits.scenario
    case 'standstill': {
      const { piece, rule, fix } = fault as Standstill
      stderr.write(
        `line.${piece}: ${rule}\n    fix:   ${fix}\n\nOne finding about the scenario: the simulation stopped there.\n`,
      )
      return exits.scenario
    }
    case 'unsettled':
      stderr.write(
        `${fault.message}\n\nOne finding about the scenario: the line has no steady state to report.\n`,
      )
      return exits.scenario
    case 'asked':
    case 'file':
    case 'queue':
    case 'interrupted': {
      stderr.write(`error: ${fault.message}\n`)
      const { usage: asked, file, queue, interrupted } = exits
      return { asked, file, queue, interrupted }[fault.code]
    }
  }
}
