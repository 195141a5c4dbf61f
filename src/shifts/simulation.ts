/** Simulates the shifts of one design or several, with whatever keeps them and looks on: what all questions share. */
import type { ShiftResult } from '../line/line.js'
import { Fault } from '../scenario/fault.js'
import type { Scenario } from '../scenario/schema.js'
import type { Executor } from './executor.js'
import { inProcess } from './in-process.js'
import { type Order, type Replicated, replicate } from './replicate.js'
import type { LogEyes } from './seen-stops.js'
import { findWarmUp, unsettled, type WarmUp } from './steady.js'
import { nothingHeld } from './work.js'

/** Keeps what is finished, by the key of its design, so that a study that was cut off can go on. */
export interface Keeper {
  knownOf(design: string): ReadonlyMap<number, ShiftResult>
  keep(design: string, from: number, results: readonly ShiftResult[]): void
  /** What came of a design whose shifts are not kept; undefined where it is not known. */
  outcomeOf(design: string): unknown
  keepOutcome(design: string, outcome: unknown): void
}

/** What is to be done: at most `total`, less where the study is open; `known` of it was done before. */
export interface Extent {
  total: number
  known: number
  isOpen: boolean
  counts: 'shifts' | 'designs' | 'designs and draws'
}

/** Told of what is done, and how much of it took no time: known from before, or ruled out. */
export interface Progress {
  update(done: number, free: number): void
  stop(): void
}

/** Who simulates, who keeps what is finished and who looks on. All of it may be left out. */
export interface Context {
  /** Without one this thread simulates. It stays open. */
  executor?: Executor
  /** Ends the study after the shifts in hand, with a `Fault` `interrupted`. */
  signal?: AbortSignal
  /** Opens what keeps finished work; `course`: a hash of all that it depends on. */
  keeper?: (course: string) => Keeper
  /** Told when simulating begins. */
  watch?: (extent: Extent) => Progress
  /** Told when nothing is simulated any more. */
  released?: () => void
}

/** A design, with the key under which its shifts are kept. */
export interface Design {
  scenario: Scenario
  key: string
  /** Number of its first shift, 1 where nobody says: designs that must not have the same luck begin apart. */
  first?: number
  /** It is a draw of the inputs of the design of that number: counted from where that one is, and without the held-over-the-shift picture. */
  drawOf?: number
}

/** What is to be simulated, and how. */
export interface Plan {
  designs: readonly Design[]
  seed: string
  /** Shifts of all designs together, or designs; where the study is open, the most. */
  total: number
  isOpen: boolean
  /** What is counted of the progress. Of designs, and their draws, only what came of them is kept, and none is held longer than it is needed. */
  counts: Extent['counts']
  /** Nobody asks for the held-over-the-shift picture. */
  isLean?: boolean
  /** Shifts are simulated with the stops that such a log would show. */
  eyes?: LogEyes
  /** Hash of all that what is kept depends on. */
  course: string
}

const silent: Progress = { update: () => {}, stop: () => {} }

/** The shifts of the designs as they come. */
export class Simulation {
  /** Of each design those that have come and have no gap before them. */
  readonly of: ShiftResult[][]
  /** Warm-ups that were looked for; null of lines that start every shift empty. */
  readonly warmUps: (WarmUp | null)[] = []
  /** Shifts simulated or kept from before, whether or not there are gaps between them; or designs that are done with. */
  private done = 0
  /** Those of them that took no time. */
  private free = 0
  private readonly known: Map<number, ShiftResult>[]
  private readonly designs: Design[]

  constructor(
    private readonly plan: Plan,
    readonly executor: Executor,
    readonly keeper: Keeper | null,
    private readonly progress: Progress,
    private readonly signal: AbortSignal | undefined,
  ) {
    this.designs = [...plan.designs]
    this.of = plan.designs.map(() => [])
    const isKept = plan.counts === 'shifts'
    this.known = plan.designs.map(({ key }) => new Map(isKept ? keeper?.knownOf(key) : []))
  }

  /** Where counting begins in the shifts of a design, s since their start; known once the first have come. */
  countFrom(design: number): number {
    return this.warmUps[design]?.countFrom ?? 0
  }

  /** One more design is done with. */
  tell(isSimulated: boolean): void {
    this.done++
    if (!isSimulated) this.free++
    this.progress.update(this.done, this.free)
  }

  /** Takes a design that was not planned, such as a draw of one of which it was not known before that it would be drawn; its number. */
  add(design: Design): number {
    this.known.push(new Map())
    this.of.push([])
    return this.designs.push(design) - 1
  }

  /** Of a design that has all its shifts: nobody asks for their held-over-the-shift picture any more, which is half of what they take. */
  withoutHeld(design: number): void {
    this.of[design] = this.of[design]!.map((shift) => ({ ...shift, held: nothingHeld }))
    this.known[design]!.clear()
  }

  /** The shifts of a design are not needed any more. */
  forget(design: number): void {
    this.of[design] = []
    this.known[design]!.clear()
  }

  /**
   * The first shifts of a design, `count` at least, or as many as `isEnough`. Throws `Standstill`, and a `Fault`: `unsettled` of an
   * open-ended line that does not come to its stride, `interrupted`.
   */
  async first(
    design: number,
    count: number,
    isEnough?: (shifts: readonly ShiftResult[]) => boolean,
  ): Promise<readonly ShiftResult[]> {
    if (this.of[design]!.length >= count) return this.of[design]!
    const { counts, eyes } = this.plan
    const { key, first = 1, drawOf } = this.designs[design]!
    const isKept = counts === 'shifts'
    const known = this.known[design]!
    if (this.warmUps[design] === undefined) {
      await this.warmUpOf(design)
      this.countKnown(known, first)
    }
    const { shifts, isComplete } = await this.replicated(design, {
      known,
      isLean: drawOf !== undefined || (this.plan.isLean ?? !isKept),
      ...{ first, shifts: count },
      ...(eyes ? { eyes } : {}),
      ...(isEnough ? { isEnough } : {}),
      onShifts: (from, results) => {
        for (const [index, result] of results.entries()) known.set(from + index, result)
        if (!isKept) return
        this.keeper?.keep(key, from, results)
        this.done += results.length
        this.progress.update(this.done, this.free)
      },
    })
    this.of[design] = shifts
    if (!isComplete) throw this.interrupted()
    return shifts
  }

  /** So many shifts of a design from number `first` on, beside its others: neither kept nor counted. Throws as `first` does. */
  async afresh(design: number, first: number, count: number): Promise<readonly ShiftResult[]> {
    if (this.warmUps[design] === undefined) await this.warmUpOf(design)
    const { shifts, isComplete } = await this.replicated(design, { first, shifts: count, isLean: true })
    if (!isComplete) throw this.interrupted()
    return shifts
  }

  private replicated(
    design: number,
    order: Omit<Order, 'seed' | 'scenario' | 'design' | 'countFrom' | 'isCancelled'>,
  ): Promise<Replicated> {
    const { seed } = this.plan
    return replicate(this.executor, {
      ...{ seed, design, scenario: this.designs[design]!.scenario, ...order },
      countFrom: this.countFrom(design),
      isCancelled: () => this.signal?.aborted === true,
    })
  }

  /** Shifts kept from before are done: of those that are asked for, from number `first` on. */
  private countKnown(known: ReadonlyMap<number, ShiftResult>, first: number): void {
    const { counts, total, designs } = this.plan
    if (counts !== 'shifts') return
    // of an open study what is asked for is only the next few of them
    const most = total / designs.length
    const kept = [...known.keys()].filter((shift) => shift >= first && shift < first + most).length
    this.done += kept
    this.free += kept
  }

  private async warmUpOf(design: number): Promise<void> {
    const { seed } = this.plan
    const { scenario, drawOf } = this.designs[design]!
    if (drawOf !== undefined) {
      if (this.warmUps[drawOf] === undefined) await this.warmUpOf(drawOf)
      this.warmUps[design] = this.warmUps[drawOf]!
      return
    }
    const { start } = scenario.shift
    const warmUp = start === 'empty' ? null : await findWarmUp(this.executor, { seed, scenario, design })
    if (start === 'steady' && warmUp?.isSettled === false) throw unsettled(warmUp, scenario)
    this.warmUps[design] = warmUp
  }

  private interrupted(): Interrupted {
    return new Interrupted(
      this.done,
      `interrupted after ${this.done} of ${this.plan.total} ${this.plan.counts}`,
    )
  }
}

/** The study was ended before it was done. */
export class Interrupted extends Fault {
  constructor(
    /** Shifts or designs that were done. */
    readonly done: number,
    message: string,
  ) {
    super('interrupted', message)
  }
}

/** Does `work` with the shifts of the designs; whatever happens, the progress ends with it. */
export async function simulating<T>(
  plan: Plan,
  { executor = inProcess(), signal, keeper, watch, released }: Context,
  work: (simulation: Simulation) => Promise<T>,
): Promise<T> {
  const { designs, total, isOpen, counts } = plan
  const kept = keeper?.(plan.course) ?? null
  const before =
    counts === 'shifts' ? designs.reduce((sum, { key }) => sum + (kept?.knownOf(key).size ?? 0), 0) : 0
  const progress = watch?.({ total, known: Math.min(before, total), isOpen, counts }) ?? silent
  try {
    return await work(new Simulation(plan, executor, kept, progress, signal))
  } finally {
    progress.stop()
    released?.()
  }
}
