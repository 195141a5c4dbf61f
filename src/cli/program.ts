/** The command line as a function of arguments and streams: it returns the exit code and never ends the process. */
import { Command, CommanderError } from 'commander'
import { Standstill } from '../line/standstill.js'
import { ScenarioError } from '../scenario/problems.js'
import { addCheck } from './check.js'
import { addCompare } from './compare.js'
import { exits, FileError, type Io, UsageError } from './io.js'
import { addNew } from './new.js'
import { addReport } from './report.js'
import { addRun } from './run.js'
import { addSize } from './size.js'
import { addSweep } from './sweep.js'
import { addTrace } from './trace.js'
import { UnsettledError } from './unsettled.js'
import { version } from './version.js'

/** Runs `argv` (without node and script). All that happens is in the streams and in the exit code. */
export async function main(argv: readonly string[], io: Io): Promise<number> {
  let code: number = exits.done
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
  tapeshift compare line.yaml             the line against its variants: what differs, and is it worth it
  tapeshift size line.yaml --choose "line.infeed.length=4..12/1 m" --holds "9 cases/min in 95 % of shifts"
  tapeshift sweep line.yaml --vary "line.infeed.length=4..12/1 m"   how much is enough
  tapeshift trace line.yaml --shift 3      one shift, event by event
  tapeshift report out/line-run/result.json   the page of a report again
`,
    )
    .addHelpText(
      'after',
      '\nExit codes: 0 done; 1 a bug of tapeshift; 2 wrong usage; 3 the scenario is invalid or cannot work; 4 a requirement is not met; 5 a file cannot be read or written; 130 interrupted',
    )
    .configureOutput({ writeOut: (text) => io.stdout.write(text), writeErr: (text) => io.stderr.write(text) })
    .exitOverride()
  const finish = (finished: number) => {
    code = finished
  }
  addCheck(program, io, finish)
  addRun(program, io, finish)
  addCompare(program, io, finish)
  addSize(program, io, finish)
  addSweep(program, io, finish)
  addTrace(program, io, finish)
  addReport(program, io, finish)
  addNew(program, io, finish)
  for (const command of program.commands) command.exitOverride().configureOutput(program.configureOutput())
  try {
    await program.parseAsync(argv, { from: 'user' })
    return code
  } catch (error) {
    return explain(error, io)
  }
}

/** Says what went wrong on standard error; returns the exit code. */
function explain(error: unknown, io: Io): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? exits.done : exits.usage
  if (error instanceof ScenarioError) {
    const count = error.problems.length
    io.stderr.write(
      `${error.message}\n\n${count === 1 ? 'One finding' : `${count} findings`}: the scenario was not simulated.\n`,
    )
    return exits.scenario
  }
  if (error instanceof Standstill) {
    io.stderr.write(
      `line.${error.piece}: ${error.rule}\n    mend:  ${error.fix}\n\nOne finding about the scenario: the simulation ended there.\n`,
    )
    return exits.scenario
  }
  if (error instanceof UnsettledError) {
    io.stderr.write(
      `${error.message}\n\nOne finding about the scenario: no figure of it would be one of a steady line.\n`,
    )
    return exits.scenario
  }
  if (error instanceof UsageError) {
    io.stderr.write(`error: ${error.message}\n`)
    return exits.usage
  }
  if (error instanceof FileError) {
    io.stderr.write(`error: ${error.message}\n`)
    return exits.file
  }
  io.stderr.write(
    `error: ${error instanceof Error ? error.message : String(error)}\nThis is a bug of tapeshift, not of your scenario.\n`,
  )
  if (io.env.TAPESHIFT_DEBUG && error instanceof Error) io.stderr.write(`${error.stack}\n`)
  return exits.bug
}
