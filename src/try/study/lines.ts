/** What the study asks of its lines: the documents that the command line makes of them, from shifts that are simulated once. */
import type { CompareResult } from '../../questions/compare/document.js'
import { compare } from '../../questions/compare/study.js'
import type { RunResult } from '../../questions/run/document.js'
import { run } from '../../questions/run/study.js'
import type { ReadScenario } from '../../scenario/read.js'
import type { Executor } from '../../shifts/executor.js'
import { type Other, withShifts, withVariants } from './composed.js'
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
