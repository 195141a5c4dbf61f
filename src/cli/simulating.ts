/** Simulates the shifts of one design or several, with threads, progress, interrupts and a journal: what all studies share. */
import type { ShiftResult } from '../line/line.js'
import type { Scenario } from '../scenario/schema.js'
import { replicate, type Workers } from '../shifts/replicate.js'
import { findWarmUp, type WarmUp } from '../shifts/steady.js'
import type { Io } from './io.js'
import type { Journal } from './journal.js'
import { type Progress, startProgress } from './progress.js'
import { shownPath } from './result-folder.js'
import { UnsettledError } from './unsettled.js'

/** What is to be simulated, and how. */
export interface Setup {
  /** Each with the key under which the journal keeps its shifts. */
  designs: readonly { scenario: Scenario; key: string }[]
  seed: string
  /** Shifts of all designs together, or designs; where the study is open, the most. */
  total: number
  isOpen: boolean
  /** What is counted of the progress. Of designs only what came of them is kept, and none is held longer than it is needed. */
  counts: 'shifts' | 'designs'
  workers: Workers
  isQuiet: boolean
  /** Nobody asks for the held-over-the-shift picture. */
  isLean?: boolean
  journal: Journal | null
  io: Io
}

/** The shifts of the designs as they come. */
export class Shifts {
  /** Of each design those that have come and have no gap before them. */
  readonly of: ShiftResult[][]
  /** Warm-ups that were looked for; null of lines that start every shift empty. */
  readonly warmUps: (WarmUp | null)[] = []
  isCancelled = false
  /** Shifts simulated or kept from before, whether or not there are gaps between them; or designs that are done with. */
  done = 0
  /** Those of them that took no time. */
  private free = 0
  private readonly known: Map<number, ShiftResult>[]

  constructor(
    private readonly setup: Setup,
    private readonly progress: Pick<Progress, 'update'>,
  ) {
    this.of = setup.designs.map(() => [])
    const isKept = setup.counts === 'shifts'
    this.known = setup.designs.map(({ key }) => new Map(isKept ? setup.journal?.knownOf(key) : []))
  }

  /** One more design is done with. */
  tell(isSimulated: boolean): void {
    this.done++
    if (!isSimulated) this.free++
    this.progress.update(this.done, this.free)
  }

  /** The shifts of a design are not needed any more. */
  forget(design: number): void {
    this.of[design] = []
    this.known[design]!.clear()
  }

  /**
   * Sees to it that a design has its first `count` shifts, or as many of them as `isEnough`; false where it was cancelled before.
   * Throws `Standstill`, and `UnsettledError` of an open-ended line that does not come to its stride.
   */
  async ensure(
    design: number,
    count: number,
    isEnough?: (shifts: readonly ShiftResult[]) => boolean,
  ): Promise<boolean> {
    const { designs, seed, total, workers } = this.setup
    const { scenario, key } = designs[design]!
    const isKept = this.setup.counts === 'shifts'
    const known = this.known[design]!
    if (this.warmUps[design] === undefined) {
      this.warmUps[design] = await this.warmUpOf(design, scenario)
      // of an open study `count` is only the next few of them
      const most = total / designs.length
      if (isKept)
        for (const shift of known.keys())
          if (shift <= most) {
            this.done++
            this.free++
          }
    }
    const { shifts, isComplete } = await replicate(workers, {
      seed,
      scenario,
      design,
      isLean: this.setup.isLean ?? !isKept,
      shifts: count,
      countFrom: this.warmUps[design]?.countFrom ?? 0,
      known,
      ...(isEnough ? { isEnough } : {}),
      onShifts: (from, results) => {
        for (const [index, result] of results.entries()) known.set(from + index, result)
        if (!isKept) return
        this.setup.journal?.keep(key, from, results)
        this.done += results.length
        this.progress.update(this.done, this.free)
      },
      isCancelled: () => this.isCancelled,
    })
    this.of[design] = shifts
    return isComplete
  }

  /**
   * So many shifts of a design from number `first` on, beside its others; null where it was cancelled before. They are
   * neither kept nor counted. Throws as `ensure` does.
   */
  async afresh(design: number, first: number, count: number): Promise<ShiftResult[] | null> {
    const { designs, seed, workers } = this.setup
    const { scenario } = designs[design]!
    if (this.warmUps[design] === undefined) this.warmUps[design] = await this.warmUpOf(design, scenario)
    const { shifts, isComplete } = await replicate(workers, {
      ...{ seed, scenario, design, first, shifts: count, isLean: true },
      countFrom: this.warmUps[design]?.countFrom ?? 0,
      isCancelled: () => this.isCancelled,
    })
    return isComplete ? shifts : null
  }

  private async warmUpOf(design: number, scenario: Scenario): Promise<WarmUp | null> {
    if (scenario.shift.start === 'empty') return null
    const warmUp = await findWarmUp(this.setup.workers, { seed: this.setup.seed, scenario, design })
    if (scenario.shift.start === 'steady' && !warmUp.isSettled) throw new UnsettledError(warmUp, scenario)
    return warmUp
  }

  /** Says what is kept of an interrupted study. */
  sayInterrupted(): void {
    const { journal, io, total, counts } = this.setup
    const kept =
      journal && this.done > 0
        ? `they are kept in ${shownPath(journal.file, io.cwd)}: the same command with --resume goes on with them`
        : 'nothing was written'
    io.stderr.write(`interrupted after ${this.done} of ${total} ${counts}; ${kept}\n`)
  }
}

/** Does `work` with the shifts of the designs; whatever happens, the progress ends with it. */
export async function simulating<T>(setup: Setup, work: (shifts: Shifts) => Promise<T>): Promise<T> {
  const { io, designs, total, isOpen, isQuiet, journal, counts } = setup
  const known =
    counts === 'shifts' ? designs.reduce((sum, { key }) => sum + (journal?.knownOf(key).size ?? 0), 0) : 0
  const progress = startProgress({ total, known: Math.min(known, total), isOpen, counts }, io, isQuiet)
  const shifts = new Shifts(setup, progress)
  const stopListening = io.onInterrupt(() => {
    shifts.isCancelled = true
    io.stderr.write('\nstopping after the shifts in hand; press again to stop at once\n')
  })
  try {
    return await work(shifts)
  } finally {
    progress.stop()
    stopListening()
  }
}
