/** What all commands do alike that simulate: load, ask the question, keep what is finished, show progress, hand the answer over. */
import path from 'node:path'
import type { Command } from 'commander'
import type { Answer } from '../answers/made.js'
import type { ResultDocument } from '../questions/charts-of-document.js'
import { isFault } from '../scenario/fault.js'
import type { ReadScenario, ScenarioAsked } from '../scenario/read.js'
import type { Context, Extent, Interrupted, Progress } from '../shifts/simulation.js'
import { exits, type Io } from './io.js'
import type { Journal } from './journal.js'
import {
  addOverrideOptions,
  addSimulationOptions,
  refuseContradictions,
  type SimulationOptions,
} from './options.js'
import type { startProgress } from './progress.js'
import { type Simulators, simulatorsOf } from './queue.js'
import { shownPath } from './result-folder.js'

/** A command that simulates. */
export interface StudyCommand<Options extends SimulationOptions> {
  name: ResultDocument['command']
  description: string
  examples: string
  /** Said after the options. */
  after: string
  /** Adds its own options, after those that change the scenario and before those of the simulation. */
  options: (command: Command) => void
  /** What is said of the option `--shifts`. */
  shifts: string
  /** Which scenario is asked for. */
  scenario: (options: Options) => ScenarioAsked
  answer: (loaded: ReadScenario, options: Options, context: Context) => Promise<Answer<ResultDocument>>
}

/** What every scenario is asked for with. */
export function scenarioAsked({ set, seed, shifts, confidence, engine }: SimulationOptions): ScenarioAsked {
  return { set, seed, shifts, confidence, engine }
}

/** Adds the command; `finish` takes its exit code. */
export function addStudy<Options extends SimulationOptions>(
  program: Command,
  io: Io,
  finish: (code: number) => void,
  command: StudyCommand<Options>,
): void {
  const added = program
    .command(command.name)
    .argument('<SCENARIO>', 'scenario file, or - for standard input')
    .description(command.description)
    .addHelpText('before', command.examples)
    .addHelpText('after', command.after)
  addOverrideOptions(added)
  command.options(added)
  addSimulationOptions(added, command.shifts).action(async (name: string, options: Options) =>
    finish(await study(command, name, options, io)),
  )
}

/** Answers the question of the command about the scenario `name`; returns the exit code. */
async function study<Options extends SimulationOptions>(
  command: StudyCommand<Options>,
  name: string,
  options: Options,
  io: Io,
): Promise<number> {
  refuseContradictions(options)
  // threads load while modules and scenario are read; what simulates takes long to load: not for --help
  const { workers, shifts = workers, files } = options
  const { executor, ready, told } = await simulatorsOf(options, Math.min(workers, shifts), io)
  try {
    const [{ loadForCommand }, { refuseToOverwrite }, { deliver, exitOf }, { startProgress }] =
      await Promise.all([
        import('./scenario.js'),
        import('./result-folder.js'),
        import('./deliver.js'),
        import('./progress.js'),
      ])
    const loaded = await loadForCommand(name, command.scenario(options), io)
    const folder = path.resolve(io.cwd, options.out ?? path.join('out', `${loaded.stem}-${command.name}`))
    if (files) refuseToOverwrite(folder, name, loaded, io)
    // what draws takes long to load: it is loaded while threads simulate
    if (files) void import('./result-files.js')
    const { seed } = loaded.scenario.study
    return await keeping({ folder, seed, isResumed: options.resume === true, io }, async (keeper) => {
      await ready()
      const answer = await command.answer(loaded, options, {
        executor,
        // they take a while to end: let them while the document is made
        released: () => void executor.close(),
        ...watching(startProgress, io, options.quiet === true, told),
        ...(files ? { keeper } : {}),
      })
      await deliver(answer, { folder, loaded, options, io })
      return () => exitOf(answer, options, io)
    })
  } finally {
    await executor.close()
  }
}

/** Where a journal stands, and of what. */
interface KeptIn {
  folder: string
  seed: string
  isResumed: boolean
  io: Io
}

/**
 * Does `work` with a journal that is opened when it asks for one: removed once all is written, and kept where it was interrupted. Returns the
 * exit code: what `work` hands back gives it once the journal is gone.
 */
export async function keeping(
  { folder, seed, isResumed, io }: KeptIn,
  work: (keeper: NonNullable<Context['keeper']>) => Promise<() => number>,
): Promise<number> {
  const { openJournal } = await import('./journal.js')
  let journal: Journal | null = null
  const keeper = (course: string): Journal => {
    journal = openJournal(folder, course, seed, isResumed, io)
    return journal
  }
  try {
    const exit = await work(keeper)
    ;(journal as Journal | null)?.remove()
    return exit()
  } catch (error) {
    return afterFault(error, journal, io)
  } finally {
    ;(journal as Journal | null)?.close()
  }
}

/** Shows progress on standard error, and ends the study at an interrupt. */
export function watching(
  begin: typeof startProgress,
  io: Io,
  isQuiet: boolean,
  workersTold: Simulators['told'] = null,
): Pick<Context, 'signal' | 'watch'> {
  const controller = new AbortController()
  const watch = (extent: Extent): Progress => {
    const progress = begin(extent, io, isQuiet, workersTold)
    const stopListening = io.onInterrupt(() => {
      controller.abort()
      io.stderr.write('\nstopping after the current shifts; press again to stop at once\n')
    })
    return {
      update: (done, free) => progress.update(done, free),
      stop() {
        progress.stop()
        stopListening()
      },
    }
  }
  return { signal: controller.signal, watch }
}

/** What is kept of a study that did not end; the exit code where it was interrupted. Throws what else happened. */
function afterFault(error: unknown, journal: Journal | null, io: Io): number {
  // what is asked for must change, or the scenario itself: what was simulated of it is of no use
  if (isFault(error, 'standstill', 'unsettled', 'asked')) journal?.remove()
  if (isFault(error, 'queue') && journal) {
    io.stderr.write(
      `error: ${error.message}\nWhat was simulated is saved in ${shownPath(journal.file, io.cwd)}: to continue, repeat the command with --resume, with or without --queue\n`,
    )
    return exits.queue
  }
  if (!isFault(error, 'interrupted')) throw error
  const { done } = error as Interrupted
  // where fewer are asked for than before, those that are kept may all lie beyond
  if (done === 0 && journal?.isEmpty) journal.remove()
  const kept =
    journal && done > 0
      ? `they are saved in ${shownPath(journal.file, io.cwd)}: to continue, repeat the command with --resume`
      : 'nothing was written'
  io.stderr.write(`${error.message}; ${kept}\n`)
  return exits.interrupted
}
