/** What the study asks of its lines: the documents that the command line makes of them, from shifts that are simulated once. */
import type { CompareResult } from '../../questions/compare/document.js'
import { compare } from '../../questions/compare/study.js'
import type { RunResult } from '../../questions/run/document.js'
import { run } from '../../questions/run/study.js'
import { isMap } from '../../scenario/is-map.js'
import type { ReadScenario } from '../../scenario/read.js'
import type { Executor } from '../../shifts/executor.js'
import { KeptShifts } from './kept-shifts.js'
import { numbered } from './numbered.js'

/** How a line is asked about. */
export interface How {
  shifts: number
  signal: AbortSignal
  /** Draws its inputs where they have evidence; else they are as given. */
  isDrawn?: boolean
  /** Records a stretch of an ordinary shift. */
  hasMoment?: boolean
}

/** A scenario by the name that it has in a comparison, and what differs in it, in words of the format. */
export interface Other {
  name: string
  read: ReadScenario
  set: Record<string, unknown>
}

export class Lines {
  private readonly executor: Executor
  private readonly kept = new KeptShifts()

  constructor(executor: Executor) {
    this.executor = numbered(executor)
  }

  /** The document of `tapeshift run`. Throws `Fault`. */
  async run(read: ReadScenario, { shifts, signal, isDrawn, hasMoment = false }: How): Promise<RunResult> {
    const asked = { ...inputsOf([read], isDrawn), moment: hasMoment }
    const context = { executor: this.executor, signal, keeper: this.kept.ofRun(read) }
    return (await run(withShifts(read, shifts), asked, context)).document
  }

  /** The document of `tapeshift compare`: the others against `base`. Throws `Fault`. */
  async compare(base: ReadScenario, others: readonly Other[], how: How): Promise<CompareResult> {
    const { shifts, signal, isDrawn } = how
    const all = withVariants(withShifts(base, shifts), others)
    const asked = inputsOf([base, ...others.map(({ read }) => read)], isDrawn)
    const context = { executor: this.executor, signal, keeper: this.kept.ofComparison(base) }
    return (await compare(all, asked, context)).document
  }
}

/** Nothing is said of inputs where none could be drawn: the command that repeats the answer is the plain one then. */
const inputsOf = (of: readonly ReadScenario[], isDrawn = false): { inputs?: 'fixed' } =>
  isDrawn || of.every(({ evidence }) => evidence.length === 0) ? {} : { inputs: 'fixed' }

/** The scenario with another number of shifts: what `--shifts` makes of it. */
function withShifts(read: ReadScenario, shifts: number): ReadScenario {
  const { scenario, resolved, asked, assumed } = read
  const study = isMap(resolved.study) ? resolved.study : {}
  const tree = { ...resolved, study: { ...study, shifts } }
  return {
    ...read,
    scenario: { ...scenario, study: { ...scenario.study, shifts } },
    resolved: tree,
    assumed: assumed.filter(({ path }) => path !== 'study.shifts'),
    asked: { ...asked, shifts },
    sha256: read.hashOf(tree),
  }
}

/** The scenario with others as its variants, whatever variants it had. */
const withVariants = (base: ReadScenario, others: readonly Other[]): ReadScenario => ({
  ...base,
  variants: others.map(({ name, read, set }) => ({ ...read, name, note: '', set })),
})
