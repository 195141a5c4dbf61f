/** `tapeshift fit`: what a plant's record says of the inputs of a scenario. */
import { existsSync } from 'node:fs'
import path from 'node:path'
import type { Command } from 'commander'
import { quoted } from '../answers/repeat.js'
import { Fault, misuse } from '../scenario/fault.js'
import { printable } from '../scenario/printable.js'
import { exits, type Io } from './io.js'
import type { SimulationOptions } from './options.js'

interface Options
  extends Pick<SimulationOptions, 'seed' | 'confidence' | 'out' | 'json' | 'full' | 'files' | 'quiet'> {
  holdOut?: string
  into?: string
  write?: string
}

/** Adds the command; `finish` takes its exit code. */
export function addFit(program: Command, io: Io, finish: (code: number) => void): void {
  program
    .command('fit')
    .argument('<RECORD>', 'record file (YAML) beside the CSV files of the plant')
    .description(
      "estimate inputs of a scenario from a plant's log: counts, distributions, how well they are known, and what speaks against them",
    )
    .addHelpText(
      'before',
      `Examples:
  tapeshift new record.yaml --record        a record file with every key explained
  tapeshift fit record.yaml
  tapeshift fit record.yaml --into line.yaml --write line-fitted.yaml
  tapeshift fit record.yaml --hold-out "30 %"     holds out days for validation
`,
    )
    .addHelpText(
      'after',
      '\nAll rows that were changed or left out are listed. A record that cannot be used is refused with a list of its errors.\nExit codes: 0 done; 3 the record, or the scenario with its values, is invalid.',
    )
    .option('--into <SCENARIO>', 'scenario to take the values; its comments and order are kept')
    .option('--write <FILE>', 'new scenario file, which must not exist yet; with --into')
    .option(
      '--hold-out <SHARE>',
      'share of the days that the fit does not use, "0 %" to "90 %" (default: none)',
    )
    .option('--confidence <SHARE>', 'confidence of the intervals (default: 95 %)')
    .option('--seed <TEXT>', 'any text; the same seed holds out the same days and draws the same numbers')
    .option('--out <DIR>', 'folder for the files (default: out/<record>-fit)')
    .option('--json', 'print the result as JSON on standard output, and nothing else')
    .option('--full', 'print all tables, not only the summary')
    .option('--no-files', 'write no files but that of --write')
    .option('--quiet', 'print no report, only errors; with --json the result too')
    .action(async (name: string, options: Options) => finish(await fitted(name, options, io)))
}

function refuseContradictions({ into, write, out }: Options): void {
  if ((into === undefined) !== (write === undefined))
    throw misuse('--into names the scenario and --write the new one: give both, or neither')
  if (out === '' || write === '') throw misuse('--out and --write need a name')
  if (into === '-') throw misuse('--into needs a file: its comments and its order are kept')
}

async function fitted(name: string, options: Options, io: Io): Promise<number> {
  refuseContradictions(options)
  const [{ readRecordFor }, { fitRecord }, { loadForCommand, stemOf }, { readText }] = await Promise.all([
    import('./record.js'),
    import('../questions/fit/study.js'),
    import('./scenario.js'),
    import('./files.js'),
  ])
  const folder = path.resolve(io.cwd, options.out ?? path.join('out', `${stemOf(name)}-fit`))
  if (options.write !== undefined) refuseExisting([path.resolve(io.cwd, options.write)])
  const read = await readRecordFor(name, io)
  if (options.files) refuseToOverwrite(folder, inputsOf(name, read.files, options, io), io)
  const { into, holdOut, confidence, seed } = options
  const scenario = into === undefined ? null : await loadForCommand(into, {}, io)
  const {
    document,
    rows,
    scenario: fittedText,
    observed,
  } = fitRecord(read, {
    ...{ holdOut, confidence, seed },
    ...(into === undefined || scenario === null
      ? {}
      : { into: { scenario, text: await readText(into, 'the scenario file', io), files: scenario.files } }),
  })
  const { json, quiet, files, write } = options
  const { print, sayWhere } = await import('./deliver.js')
  const report = print(document, options, io)
  if (write !== undefined) await written(path.resolve(io.cwd, write), fittedText!, observed)
  if (files) {
    const { writeResults } = await import('./result-files.js')
    await writeResults(folder, { document, report, tryPage: () => null, others: rows })
    sayWhere(folder, options, io)
  }
  if (write !== undefined && !json && !quiet)
    io.stdout.write(`Scenario: ${printable(write)}\nNext: tapeshift check ${quoted(write)}\n`)
  return exits.done
}

/** The files that a fit reads, and the scenario that it writes: no result may take their place. */
function inputsOf(
  name: string,
  logs: readonly { file: string }[],
  { into, write }: Options,
  { cwd }: Io,
): string[] {
  const home = name === '-' ? cwd : path.dirname(path.resolve(cwd, name))
  return [
    ...[name === '-' ? undefined : name, into, write].flatMap((file) =>
      file === undefined ? [] : [path.resolve(cwd, file)],
    ),
    ...logs.map(({ file }) => path.resolve(home, file)),
  ]
}

/** Throws where one of these would be lost under the files of a result in `folder`. */
function refuseToOverwrite(folder: string, inputs: readonly string[], { cwd }: Io): void {
  const isOwn = (file: string) =>
    /^(fitted\.yaml|report\.html|result\.json|observed-.*\.csv|charts[\\/].*)$/.test(
      path.relative(folder, file),
    )
  const lost = inputs.find(isOwn)
  if (lost !== undefined)
    throw misuse(`the results would overwrite ${printable(path.relative(cwd, lost))}: choose another --out`)
}

/** The new scenario with the files that its values draw on beside it: none of them may be there yet. */
async function written(file: string, scenario: string, observed: ReadonlyMap<string, string>): Promise<void> {
  const { writeNew } = await import('./files.js')
  const folder = path.dirname(file)
  refuseExisting([...observed.keys()].map((name) => path.join(folder, name)))
  for (const [name, text] of observed) await writeNew(path.join(folder, name), text)
  await writeNew(file, scenario)
}

/** Throws where one of the files is there already: before anything is reckoned or written. */
function refuseExisting(files: readonly string[]): void {
  const there = files.find((file) => existsSync(file))
  if (there !== undefined)
    throw new Fault('file', `cannot write ${printable(there)}: the file exists, and no file is overwritten`)
}
