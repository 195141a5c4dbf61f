/** The work of `tapeshift run`: simulate, judge, print, write. */
import path from 'node:path'
import { type Estimation, estimationOf } from '../answers/figures.js'
import { stoppingRule } from '../answers/precision.js'
import { Line } from '../line/line.js'
import { Standstill } from '../line/standstill.js'
import type { Workers } from '../shifts/replicate.js'
import { type Asked, askedOf } from './asked.js'
import { loadFiles } from './deliver.js'
import { exits, type Io } from './io.js'
import { Journal, ownerOf } from './journal.js'
import { refuseContradictions, type StudyOptions } from './options.js'
import { refuseToOverwrite } from './result-folder.js'
import { deliverRun } from './run-document.js'
import { loadForCommand } from './scenario.js'
import { simulating } from './simulating.js'
import { UnsettledError } from './unsettled.js'
import { exitCode } from './warned.js'

/** Runs the study of the scenario `name`, with `workers`; returns the exit code. */
export async function run(name: string, options: StudyOptions, io: Io, workers: Workers): Promise<number> {
  refuseContradictions(options)
  const loaded = await loadForCommand(name, options, io)
  const line = new Line(loaded.scenario)
  const asked = askedOf(options, line, loaded.scenario.shift.campaign)
  const folder = path.resolve(io.cwd, options.out ?? path.join('out', `${loaded.stem}-run`))
  if (options.files) refuseToOverwrite(folder, name, loaded, io)
  const note = (text: string) => io.stderr.write(`note: ${text}\n`)
  const journal = options.files ? Journal.open(folder, ownerOf(loaded), options.resume === true, note) : null
  const { scenario } = loaded
  const { seed, confidence, shifts } = scenario.study
  const most = asked.precision?.most ?? shifts
  try {
    loadFiles(options)
    const study = await simulating(
      {
        designs: [{ scenario, key: '' }],
        seed,
        total: most,
        isOpen: asked.precision !== null,
        counts: 'shifts',
        workers,
        isQuiet: options.quiet === true,
        isLean: !options.files && !options.json,
        journal,
        io,
      },
      async (simulated) => {
        const isPlain = options.plain === true
        // where counting begins is known when the first shifts come
        const how = () =>
          estimationOf(scenario, { confidence, isPlain }, simulated.warmUps[0]?.countFrom ?? 0)
        const isComplete = await simulated.ensure(0, most, enough(asked, how))
        if (!isComplete) simulated.sayInterrupted()
        return { isComplete, done: simulated.done, shifts: simulated.of[0]!, warmUp: simulated.warmUps[0]! }
      },
    )
    if (!study.isComplete) {
      // where fewer are asked for than before, those that are kept may all lie beyond
      if (study.done === 0 && journal?.isEmpty) journal.remove()
      return exits.interrupted
    }
    const result = await deliverRun({ name, options, loaded, line, asked, ...study }, workers, folder, io)
    journal?.remove()
    const isMet = result.requirements.every(({ judgement }) => judgement === 'met')
    return exitCode(result, isMet ? exits.done : exits.requirement, options, io)
  } catch (error) {
    // the scenario itself must change: what was simulated of it is of no use
    if (error instanceof Standstill || error instanceof UnsettledError) journal?.remove()
    throw error
  } finally {
    journal?.close()
  }
}

/** When the first shifts are enough; undefined where their number is given. */
const enough = ({ precision }: Asked, how: () => Estimation) =>
  precision === null ? undefined : stoppingRule(precision.of, precision.share, how)
