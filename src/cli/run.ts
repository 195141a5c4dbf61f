/** `tapeshift run`: how does this line do over many shifts? */
import path from 'node:path'
import type { Command } from 'commander'
import { Line, type ShiftResult } from '../line/line.js'
import { allCharts } from '../report/charts/index.js'
import { type Report, runReport } from '../report/content.js'
import { shiftsCsv } from '../report/csv.js'
import { reportPage } from '../report/page.js'
import { renderPng } from '../report/png.js'
import { terminalReport } from '../report/terminal.js'
import { printable } from '../scenario/problems.js'
import { type RunResult, runResult } from '../study/result.js'
import { simulateWith } from '../study/workers/pool.js'
import { copyWhole, writeWhole } from './files.js'
import { exits, type Io, showsStyle, UsageError } from './io.js'
import { addStudyOptions, type StudyOptions } from './options.js'
import { startProgress } from './progress.js'
import { resolvedYaml } from './resolved.js'
import { type CommandScenario, loadForCommand } from './scenario.js'
import { quoted } from './text.js'
import { version } from './version.js'

/** A recorded log longer than this is not copied beside the report, bytes. */
const mostCopied = 10_000_000

/** Adds the command; `finish` takes its exit code. */
export function addRun(program: Command, io: Io, finish: (code: number) => void): void {
  const command = program
    .command('run')
    .argument('<SCENARIO>', 'scenario file, or - for standard input')
    .description(
      'simulate many shifts: output, queues, stops, tape and cost with intervals, and a verdict on the target',
    )
    .addHelpText(
      'before',
      `Examples:
  tapeshift run line.yaml
  tapeshift run line.yaml --shifts 500 --set "line.sealer.belt-speed=22 m/min"
  tapeshift run line.yaml --json --no-files > result.json
`,
    )
  addStudyOptions(command).action(async (name: string, options: StudyOptions) =>
    finish(await run(name, options, io)),
  )
}

/** Names that the results use in their folder. */
const ownFiles = ['shifts.csv', 'scenario.yaml', 'report.html', 'result.json']

/** No input may lie where a result is written, nor bear the name of one: it would be lost. */
function refuseToOverwrite(folder: string, name: string, loaded: CommandScenario, io: Io): void {
  const home = name === '-' ? io.cwd : path.dirname(path.resolve(io.cwd, name))
  const copied = [...loaded.files.keys(), ...loaded.logs.keys()]
  for (const file of copied)
    if (ownFiles.includes(path.normalize(file)) || path.normalize(file).startsWith(`charts${path.sep}`))
      throw new UsageError(
        `the scenario reads \`${printable(file)}\`, a name that results use: rename that file, or give --no-files`,
      )
  const inputs = [
    ...(name === '-' ? [] : [path.resolve(io.cwd, name)]),
    ...copied.map((file) => path.resolve(home, file)),
  ]
  const outputs = new Set([...ownFiles, ...copied].map((file) => path.join(folder, file)))
  const lost = inputs.find((input) => outputs.has(input))
  if (lost !== undefined)
    throw new UsageError(
      `the results would overwrite ${printable(shownPath(lost, io.cwd))}: choose another --out`,
    )
}

async function run(name: string, options: StudyOptions, io: Io): Promise<number> {
  if (options.out === '') throw new UsageError('--out needs the name of a folder')
  if (options.json && options.quiet) throw new UsageError('--json and --quiet exclude each other: choose one')
  const loaded = await loadForCommand(name, options, io)
  const { study } = loaded.scenario
  const folder = path.resolve(io.cwd, options.out ?? path.join('out', `${loaded.stem}-run`))
  if (options.files) refuseToOverwrite(folder, name, loaded, io)
  const shifts = await simulate(loaded, options, io)
  if (shifts.length < study.shifts) {
    io.stderr.write(`interrupted after ${shifts.length} of ${study.shifts} shifts; nothing was written\n`)
    return exits.interrupted
  }
  const result = runResult(
    loaded.scenario,
    shifts,
    made(name, options, loaded),
    loaded.assumed,
    notes(loaded),
  )
  const report = runReport(result)
  if (options.json) io.stdout.write(`${JSON.stringify(result, null, 2)}\n`)
  else if (!options.quiet)
    io.stdout.write(
      terminalReport(report, { bold: boldIn(io), width: Math.min(io.stdout.columns ?? 100, 120) }),
    )
  if (options.files) {
    await writeFiles(folder, result, report, loaded, shifts)
    if (!options.quiet) sayWhatIsNotCopied(loaded, io)
    if (!options.json && !options.quiet)
      io.stdout.write(`\nReport: ${shownPath(path.join(folder, 'report.html'), io.cwd)}\n`)
  }
  return exits.done
}

async function simulate(loaded: CommandScenario, options: StudyOptions, io: Io): Promise<ShiftResult[]> {
  const { scenario } = loaded
  let isCancelled = false
  const stopListening = io.onInterrupt(() => {
    isCancelled = true
    io.stderr.write('\nstopping after the shifts in hand; press again to stop at once\n')
  })
  const progress = startProgress(scenario.study.shifts, io, options.quiet === true)
  try {
    return await simulateWith(options.workers)({
      scenario,
      seed: scenario.study.seed,
      shifts: scenario.study.shifts,
      onShift: (done) => progress.update(done),
      isCancelled: () => isCancelled,
    })
  } finally {
    progress.stop()
    stopListening()
  }
}

function made(name: string, options: StudyOptions, { scenario, sha256 }: CommandScenario): RunResult['made'] {
  const parts = ['tapeshift', 'run', quoted(name), ...options.set.map((set) => `--set ${quoted(set)}`)]
  if (options.variant !== undefined) parts.push(`--variant ${quoted(options.variant)}`)
  parts.push(`--shifts ${scenario.study.shifts}`, `--seed ${quoted(scenario.study.seed)}`)
  if (options.confidence !== undefined) parts.push(`--confidence ${quoted(options.confidence)}`)
  return {
    version,
    node: process.version,
    seed: scenario.study.seed,
    scenario: { title: scenario.title, sha256 },
    shifts: scenario.study.shifts,
    confidence: scenario.study.confidence,
    repeat: parts.join(' '),
  }
}

/** Stops that the scenario does not name do not happen, and orders end: said beside the figures. */
function notes({ scenario }: CommandScenario): string[] {
  const missing: string[] = []
  for (const [name, piece] of Object.entries(scenario.line)) {
    const hasDrive = piece.type !== 'conveyor' || piece.carries !== 'gravity'
    if (hasDrive && !piece.breakdowns) missing.push(`breakdowns of ${name}`)
    if (piece.type === 'sealer' && !piece.jams) missing.push(`jams at ${name}`)
    if (piece.type === 'sealer' && !piece.blade) missing.push(`blade service at ${name}`)
  }
  if (scenario.shift.breaks.length === 0) missing.push('breaks')
  const ordered = Object.entries(scenario.arrivals).flatMap(([name, { orders }]) => (orders ? [name] : []))
  return [
    ...(missing.length > 0 ? [`The scenario names no ${missing.join(', no ')}: none happen here.`] : []),
    ...ordered.map((name) => `After the last order of ${name} nothing more comes from there in a shift.`),
  ]
}

async function writeFiles(
  folder: string,
  result: RunResult,
  report: Report,
  loaded: CommandScenario,
  shifts: ShiftResult[],
): Promise<void> {
  const { columns } = new Line(loaded.scenario)
  const pictures = allCharts(result).map((chart) => ({ chart, png: renderPng(chart) }))
  await writeWhole(path.join(folder, 'shifts.csv'), shiftsCsv(columns, shifts))
  await writeWhole(path.join(folder, 'scenario.yaml'), resolvedYaml(loaded))
  for (const [name, text] of loaded.files) await writeWhole(path.join(folder, name), text)
  for (const [name, { file, bytes }] of loaded.logs)
    if (bytes <= mostCopied) await copyWhole(file, path.join(folder, name))
  for (const { chart, png } of pictures)
    await writeWhole(path.join(folder, 'charts', `${chart.name}.png`), png)
  await writeWhole(path.join(folder, 'report.html'), reportPage(report, pictures))
  await writeWhole(path.join(folder, 'result.json'), `${JSON.stringify(result, null, 2)}\n`)
}

/** A long log stays where it is: said, because the scenario beside the report asks for it. */
function sayWhatIsNotCopied({ logs }: CommandScenario, io: Io): void {
  for (const [name, { bytes }] of logs)
    if (bytes > mostCopied)
      io.stderr.write(
        `note: ${printable(name)} (${Math.round(bytes / 1e6)} MB) was not copied: put it beside scenario.yaml to simulate that file\n`,
      )
}

function boldIn(io: Io): (text: string) => string {
  return showsStyle(io.stdout, io.env) ? (text) => `\u001b[1m${text}\u001b[22m` : (text) => text
}

function shownPath(file: string, cwd: string): string {
  const relative = path.relative(cwd, file)
  return relative.startsWith('..') ? file : relative
}
