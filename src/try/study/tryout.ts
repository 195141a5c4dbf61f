/** The study behind the page: answers the last ask, first roughly and at once, then ever more surely. */
import { layoutOf } from '../../pictures/layout.js'
import { motionOf } from '../../pictures/motion.js'
import { check } from '../../questions/check/study.js'
import type { RunResult } from '../../questions/run/document.js'
import { Fault, isFault } from '../../scenario/fault.js'
import type { ReadScenario } from '../../scenario/read.js'
import type { Executor } from '../../shifts/executor.js'
import { Lines, type Other } from './lines.js'
import { type Ask, changedName, type Figures, type Told } from './messages.js'
import { problemsOf } from './problems-of.js'
import { Reader } from './reader.js'
import { isPrecise, stagesOf } from './stages.js'

/** An ask while it is answered. */
interface Asking<What extends Ask['what']> {
  ask: Ask & { what: What }
  signal: AbortSignal
  tell: (told: Told) => void
}

/** The two lines of an ask; one and the same where nothing is changed yet. */
interface Both {
  before: ReadScenario
  after: ReadScenario
}

/** What a fault is of: one of the lines, or a pin by its name. */
class FaultOf {
  constructor(
    readonly of: string,
    readonly cause: unknown,
  ) {}
}

/** Shifts of pinned designs at most: there may be many. */
const mostOfPins = 500

export class Tryout {
  private readonly lines: Lines
  private readonly reader = new Reader()
  private current = new AbortController()

  constructor(
    executor: Executor,
    private readonly tell: (told: Told) => void,
  ) {
    this.lines = new Lines(executor)
  }

  /** Answers `ask` and gives up the one before it. Done when all is told, or another ask has come; throws nothing. */
  async take(ask: Ask): Promise<void> {
    this.current.abort()
    this.current = new AbortController()
    const { signal } = this.current
    const tell = (told: Told) => {
      if (!signal.aborted) this.tell(told)
    }
    try {
      if (ask.what === 'try') await this.tryLines({ ask, signal, tell })
      else await this.comparePins({ ask, signal, tell })
    } catch (error) {
      const [of, cause] = error instanceof FaultOf ? [error.of, error.cause] : ['after', error]
      if (isFault(cause, 'interrupted')) return
      tell(toldOf(cause, of, ask))
    }
  }

  /** Gives up what is asked. */
  stop(): void {
    this.current.abort()
  }

  private async tryLines(asking: Asking<'try'>): Promise<void> {
    const { ask, signal, tell } = asking
    const { number, home } = ask
    const after = await blaming('after', () => this.reader.read(ask.after, home))
    const stages = stagesOf(after.scenario.study.shifts)
    const first = blaming('after', () => this.lines.run(after, { shifts: stages[0]!, signal }))
    // others simulate meanwhile; what goes wrong there is told below
    first.catch(() => {})
    tell({ what: 'checked', number, check: check(after), layout: layoutOf(after.scenario) })
    await first
    const before =
      ask.before === ask.after ? after : await blaming('before', () => this.reader.read(ask.before, home))
    const shifts = await this.stageByStage(asking, { before, after }, stages)
    if (before.evidence.length + after.evidence.length === 0) return
    const how = { shifts, signal, isDrawn: true }
    tell({ what: 'drawn', number, ...(await this.figures({ before, after }, how)) })
  }

  /** Tells what is known after ever more shifts; their number at the end. */
  private async stageByStage(
    { ask: { number }, signal, tell }: Asking<'try'>,
    both: Both,
    stages: readonly number[],
  ): Promise<number> {
    const { before, after } = both
    const asked = after.scenario.study.shifts
    for (const [stage, shifts] of stages.entries()) {
      // the stretch is recorded when the first figures are out
      const how = { shifts, signal, hasMoment: stage === 1 }
      const { stretch, ...now } = await blaming('after', () => this.lines.run(after, how))
      if (stage === 0 && before !== after) {
        const then = await blaming('before', () => this.lines.run(before, { shifts, signal }))
        tell({ what: 'figures', number, isDone: false, shifts, before: then, after: now, compared: null })
      }
      const figures = await this.figures(both, { shifts, signal }, now)
      const isEnough = shifts >= asked && isPrecise(figures.after) && isPrecise(figures.before)
      const isDone = isEnough || stage === stages.length - 1
      tell({ what: 'figures', number, isDone, ...figures })
      if (stretch) {
        const layout = layoutOf(after.scenario)
        tell({ what: 'stretch', number, layout, stretch, moves: motionOf(stretch, layout) })
      }
      await giveWay(signal)
      if (isDone) return shifts
    }
    return stages.at(-1)!
  }

  /** What is known of both lines; `now`: of the line as it is now, where that is known already. */
  private async figures(
    { before, after }: Both,
    how: { shifts: number; signal: AbortSignal; isDrawn?: boolean },
    now?: RunResult,
  ): Promise<Figures> {
    const { shifts } = how
    const ofAfter = now ?? (await blaming('after', () => this.lines.run(after, how)))
    if (before === after) return { shifts, before: ofAfter, after: ofAfter, compared: null }
    const ofBefore = await blaming('before', () => this.lines.run(before, how))
    const other = { name: changedName, read: after, set: {} }
    const compared = await blaming('after', () => this.lines.compare(before, [other], how))
    return { shifts, before: ofBefore, after: ofAfter, compared }
  }

  /** Tells the table of the pins after ever more shifts. */
  private async comparePins({ ask, signal, tell }: Asking<'pins'>): Promise<void> {
    const { number, home, pins } = ask
    const read: Other[] = []
    for (const { name, text } of pins)
      read.push({ name, read: await blaming(name, () => this.reader.read(text, home)), set: {} })
    const [base, ...others] = read
    if (!base || others.length === 0) return
    const stages = stagesOf(base.read.scenario.study.shifts).filter((shifts) => shifts <= mostOfPins)
    const hows = stages.map((shifts) => ({ shifts, isDrawn: false }))
    if (read.some((each) => each.read.evidence.length > 0)) hows.push({ ...hows.at(-1)!, isDrawn: true })
    for (const how of hows) {
      const compared = await this.lines.compare(base.read, others, { ...how, signal })
      tell({ what: 'pinned', number, isDone: how === hows.at(-1), compared })
      await giveWay(signal)
    }
  }
}

/** Does `work`; what goes wrong is of `of`. */
async function blaming<T>(of: string, work: () => T | Promise<T>): Promise<T> {
  try {
    return await work()
  } catch (error) {
    throw error instanceof FaultOf ? error : new FaultOf(of, error)
  }
}

/** Lets messages in, such as another ask; throws `Fault` `interrupted` where one came. */
async function giveWay(signal: AbortSignal): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve))
  if (signal.aborted) throw new Fault('interrupted', 'another ask has come')
}

/** What is told of an ask that came to nothing. */
function toldOf(cause: unknown, of: string, { number, home }: Ask): Told {
  const problems = problemsOf(cause, home.name)
  if (problems) return { what: 'problems', number, of, problems }
  return { what: 'bug', number, message: cause instanceof Error ? cause.message : String(cause) }
}
