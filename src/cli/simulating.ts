/** Simulates the shifts of one design or several, with threads, progress, interrupts and a journal: what all studies share. */
import type { ShiftResult } from '../line/line.js'
import type { Scenario } from '../scenario/schema.js'
import { replicate, type Workers } from '../study/replicate.js'
import { findWarmUp, type WarmUp } from '../study/steady.js'
import { workersOf } from '../study/workers/pool.js'
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
  /** Shifts of all designs together; where the study is open, the most. */
  total: number
  isOpen: boolean
  workers: number
  isQuiet: boolean
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
  /** Shifts simulated or kept from before, whether or not there are gaps between them. */
  done = 0
  private readonly known: Map<number, ShiftResult>[]

  constructor(
    private readonly setup: Setup,
    private readonly workers: Workers,
    private readonly progress: Pick<Progress, 'update'>,
  ) {
    this.of = setup.designs.map(() => [])
    this.known = setup.designs.map(({ key }) => new Map(setup.journal?.knownOf(key)))
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
    const { scenario, key } = this.setup.designs[design]!
    const known = this.known[design]!
    if (this.warmUps[design] === undefined) {
      this.warmUps[design] = await this.warmUpOf(design, scenario)
      for (const shift of known.keys()) if (shift <= count) this.done++
    }
    const { shifts, isComplete } = await replicate(this.workers, {
      design,
      shifts: count,
      countFrom: this.warmUps[design]?.countFrom ?? 0,
      known,
      ...(isEnough ? { isEnough } : {}),
      onShifts: (from, results) => {
        this.setup.journal?.keep(key, from, results)
        for (const [index, result] of results.entries()) known.set(from + index, result)
        this.done += results.length
        this.progress.update(this.done)
      },
      isCancelled: () => this.isCancelled,
    })
    this.of[design] = shifts
    return isComplete
  }

  private async warmUpOf(design: number, scenario: Scenario): Promise<WarmUp | null> {
    if (scenario.shift.start === 'empty') return null
    const warmUp = await findWarmUp(this.workers, scenario, design)
    if (scenario.shift.start === 'steady' && !warmUp.isSettled) throw new UnsettledError(warmUp, scenario)
    return warmUp
  }

  /** Says what is kept of an interrupted study. */
  sayInterrupted(): void {
    const { journal, io, total } = this.setup
    const kept =
      journal && this.done > 0
        ? `they are kept in ${shownPath(journal.file, io.cwd)}: the same command with --resume goes on with them`
        : 'nothing was written'
    io.stderr.write(`interrupted after ${this.done} of ${total} shifts; ${kept}\n`)
  }
}

/** Does `work` with the shifts of the designs; whatever happens, threads and progress end with it. */
export async function simulating<T>(setup: Setup, work: (shifts: Shifts) => Promise<T>): Promise<T> {
  const { io, designs, seed, total, isOpen, isQuiet, journal } = setup
  const workers = workersOf(Math.min(setup.workers, total), {
    designs: designs.map(({ scenario }) => scenario),
    seed,
  })
  const known = designs.reduce((sum, { key }) => sum + (journal?.knownOf(key).size ?? 0), 0)
  const progress = startProgress({ total, known: Math.min(known, total), isOpen }, io, isQuiet)
  const shifts = new Shifts(setup, workers, progress)
  const stopListening = io.onInterrupt(() => {
    shifts.isCancelled = true
    io.stderr.write('\nstopping after the shifts in hand; press again to stop at once\n')
  })
  try {
    return await work(shifts)
  } finally {
    progress.stop()
    stopListening()
    await workers.close()
  }
}
