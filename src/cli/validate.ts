/** `tapeshift validate`: is the model the plant, on days of a record that no fit has used? */
import path from 'node:path'
import { type Command, Option } from 'commander'
import type { Driver, ValidateOptions } from '../questions/validate/asked.js'
import { misuse } from '../scenario/fault.js'
import { printable } from '../scenario/printable.js'
import type { ScenarioAsked } from '../scenario/read.js'
import { exits, type Io } from './io.js'
import { addScenarioOptions, type SimulationOptions, wholeBetween, workersOption } from './options.js'
import { addQueueOptions, simulatorsOf } from './queue.js'
import { keeping, watching } from './study.js'

interface Flags
  extends Omit<SimulationOptions, 'shifts' | 'engine' | 'anyway'>,
    Pick<ScenarioAsked, 'variant'>,
    Pick<ValidateOptions, 'margin' | 'runs' | 'holdOut' | 'unseen' | 'drivenBy' | 'sheet'> {
  heldOut?: string
  write?: string
}

const examples = `Examples:
  tapeshift fit record.yaml --hold-out "30 %" --into line.yaml --write line-fitted.yaml
  tapeshift validate line-fitted.yaml record.yaml --margin "3 %" --hold-out "30 %"    the days that this fit held out
  tapeshift validate line-fitted.yaml record.yaml --margin "3 %" --held-out out/record-fit/fitted.yaml
  tapeshift validate line.yaml new-record.yaml --margin "3 %" --unseen
  tapeshift validate line.yaml new-record.yaml --margin "3 %" --unseen --driven-by both    with simulated stops, and with the plant's own
  tapeshift validate line.yaml new-record.yaml --margin "3 %" --unseen --sheet 14    reports for people who know the line
`

/** Adds the command; `finish` takes its exit code. */
export function addValidate(program: Command, io: Io, finish: (code: number) => void): void {
  const command = program
    .command('validate')
    .argument('<SCENARIO>', 'scenario file, or - for standard input')
    .argument('<RECORD>', 'record file (YAML) beside the CSV files of the plant')
    .description('does the model match the plant? Compares days that no fit has used with simulations')
    .addHelpText('before', examples)
    .addHelpText(
      'after',
      '\nWithout --hold-out, --held-out or --unseen all days count, and the report says that this is calibration, not validation.\nExit codes: 0 shown within the margin; 4 not shown, or shown outside; 2 no margin given; 3 the scenario or the record is invalid.',
    )
  addScenarioOptions(command)
  command
    .option(
      '--margin <SHARE>',
      'how far the mean of good cases of the model may be off, such as "3 %"; decide it before you look',
    )
    .option('--hold-out <SHARE>', 'the share of the days that `fit` held out, with the same --seed')
    .option('--held-out <FILE>', 'the fitted.yaml that `fit` wrote; it names the days')
    .option('--unseen', 'no fit has used this record: all of its days count')
    .addOption(
      new Option(
        '--driven-by <WHAT>',
        "arrivals: cases arrive as logged, stops are simulated (default); stops: the plant's own stops too, so differences come from the model of the line; both: one beside the other",
      ).choices(['arrivals', 'stops', 'both'] satisfies Driver[]),
    )
    .addOption(
      new Option('--runs <N>', 'runs of each day, 39 to 1999 (default: 199)').argParser(
        wholeBetween(39, 1999),
      ),
    )
    .addOption(
      new Option(
        '--sheet <N>',
        'write this number of daily reports, real and simulated, not marked as such, and a key to them',
      ).argParser(wholeBetween(4, 1000)),
    )
    .option(
      '--write <FILE>',
      'write a copy of the scenario that says by what it was validated; the file must not exist yet',
    )
    .option(
      '--confidence <SHARE>',
      'confidence of the verdict; the risk of a wrong yes is 100 % less this (default: from the scenario, or 95 %)',
    )
    .addOption(workersOption('number of threads, 1 to 256; the result does not depend on it'))
  addQueueOptions(command)
    .option('--resume', 'continue with the saved shifts of an interrupted validation')
    .option('--out <DIR>', 'folder for the files (default: out/<scenario>-validate)')
    .option('--json', 'print the result as JSON on standard output, and nothing else')
    .option('--full', 'print all tables, not only the summary')
    .option('--no-files', 'write no files but that of --write')
    .option('--quiet', 'print no progress and no report, only errors; with --json the result too')
    .action(async (scenario: string, record: string, flags: Flags) =>
      finish(await validated({ scenario, record }, flags, io)),
    )
}

/** The files that are named. */
interface Named {
  scenario: string
  record: string
}

function refuseContradictions(
  { scenario, record }: Named,
  { out, write, files, resume, sheet }: Flags,
): void {
  if (out === '' || write === '') throw misuse('--out and --write need a name')
  if (resume && !files) throw misuse('--resume needs a folder with results: leave out --no-files')
  if (sheet !== undefined && !files)
    throw misuse('--sheet writes reports into a folder: leave out --no-files')
  if (scenario === '-' && record === '-')
    throw misuse('scenario and record cannot both come from standard input: name a file for one of them')
  if (scenario === '-' && write !== undefined)
    throw misuse('--write copies a scenario file: give its path instead of -')
}

async function validated(named: Named, flags: Flags, io: Io): Promise<number> {
  refuseContradictions(named, flags)
  const [
    { readRecordFor },
    { loadForCommand },
    { readText, writeNew },
    { validateScenario },
    { refuseToOverwrite },
  ] = await Promise.all([
    import('./record.js'),
    import('./scenario.js'),
    import('./files.js'),
    import('../index.js'),
    import('./result-folder.js'),
  ])
  const { set, seed, variant, confidence, margin, runs, holdOut, unseen, drivenBy, sheet, heldOut, write } =
    flags
  const loaded = await loadForCommand(named.scenario, { set, seed, variant, confidence }, io)
  const folder = path.resolve(io.cwd, flags.out ?? path.join('out', `${loaded.stem}-validate`))
  if (flags.files) refuseToOverwrite(folder, named.scenario, loaded, io)
  const options: ValidateOptions = {
    ...{ margin, runs, holdOut, unseen, drivenBy, seed, sheet },
    ...(heldOut === undefined
      ? {}
      : { heldOut: { name: heldOut, text: await readText(heldOut, 'what a fit wrote', io) } }),
    ...(write === undefined ? {} : { writeInto: await readText(named.scenario, 'the scenario file', io) }),
  }
  const read = await readRecordFor(named.record, io)
  const [{ executor, ready, told }, { startProgress }] = await Promise.all([
    simulatorsOf(flags, flags.workers, io),
    import('./progress.js'),
  ])
  try {
    const ofStudy = { folder, seed: loaded.scenario.study.seed, isResumed: flags.resume === true, io }
    return await keeping(ofStudy, async (keeper) => {
      await ready()
      const answer = await validateScenario(loaded, read, options, {
        ...{ executor, released: () => void executor.close() },
        ...watching(startProgress, io, flags.quiet === true, told),
        ...(flags.files ? { keeper } : {}),
      })
      const { deliver } = await import('./deliver.js')
      if (write !== undefined) await writeNew(path.resolve(io.cwd, write), answer.scenario!)
      await deliver(answer, { folder, loaded, options: flags, io })
      if (write !== undefined && !flags.json && !flags.quiet)
        io.stdout.write(`Scenario: ${printable(write)}\n`)
      return () => (answer.isMet ? exits.done : exits.requirement)
    })
  } finally {
    await executor.close()
  }
}
