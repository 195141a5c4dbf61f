/** Shifts that were simulated, by design: a line that stays, or comes back by undo, is not simulated again. */
import type { ShiftResult } from '../../line/line.js'
import type { ReadScenario } from '../../scenario/read.js'
import type { Keeper } from '../../shifts/simulation.js'

/** Shifts that are kept, of all designs and their draws: some 50 MB of a usual line. */
const most = 8000

type Shifts = Map<number, ShiftResult>

export class KeptShifts {
  /** What was asked for last stands last. */
  private readonly of = new Map<string, Shifts>()

  /** Keeps for a run of a scenario: its design has no name, and its draws have numbers. */
  ofRun = ({ shiftsSha256, scenario }: ReadScenario) => this.keeper(`${scenario.study.seed} ${shiftsSha256} `)

  /** Keeps for a comparison: its designs are named by what their shifts depend on. */
  ofComparison = ({ scenario }: ReadScenario) => this.keeper(`${scenario.study.seed} `)

  private keeper(before: string): () => Keeper {
    const of = (design: string) => this.shiftsOf(`${before}${design}`.trim())
    return () => ({
      knownOf: of,
      keep: (design, from, results) => {
        const shifts = of(design)
        for (const [index, result] of results.entries()) shifts.set(from + index, result)
        this.forget()
      },
      outcomeOf: () => undefined,
      keepOutcome: () => {},
    })
  }

  private shiftsOf(design: string): Shifts {
    const shifts: Shifts = this.of.get(design) ?? new Map()
    this.of.delete(design)
    this.of.set(design, shifts)
    return shifts
  }

  /** Forgets what was not asked for longest; never what was asked for last. */
  private forget(): void {
    let count = 0
    for (const shifts of this.of.values()) count += shifts.size
    for (const [design, shifts] of this.of) {
      if (count <= most || this.of.size === 1) return
      count -= shifts.size
      this.of.delete(design)
    }
  }
}
