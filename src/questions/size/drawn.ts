/** Draws of what the inputs may be of the designs of a sizing: whether each keeps the promises, and shifts of each. */
import type { ChosenDesign } from '../../answers/designs.js'
import { type DrawOfInputs, drawOf, inDraw } from '../../answers/draws.js'
import type { Draws, DrawsAsked, SimulatedDraw } from '../../answers/with-inputs.js'
import type { Simulation } from '../../shifts/simulation.js'
import { inputsBeside } from './asked.js'
import { promiseFigure } from './promise-figure.js'
import { type Search, type Tried, tryOne } from './search.js'

/**
 * Chance at most with which a draw is judged to keep what it misses by more than may go either way, and with which the
 * other way round: each draw is judged by itself with the confidence that is asked.
 */
export const wrongOf = (confidence: number): number => (1 - confidence) / 2

/** A draw: what was drawn of each input, SI, what came of it, by how many shifts, and the figure of the first promise over those that all draws have. */
export interface DrawRow extends Pick<Tried, 'verdict' | 'shifts'> {
  inputs: readonly number[]
  figure: number | null
}

/**
 * Draws of designs, simulated as they are asked for. A draw is judged as the search judges a design, by a sequential test of each promise: it
 * takes as many shifts as tell it, a few where it is far off, and is left open where the most do not. Draws have shifts of
 * their own, which neither the search nor the fresh shifts saw: so one knows nothing of the luck of another, and their number that keeps
 * is binomial. Designs share theirs, number by number: what tells them apart is no luck.
 */
export class DrawnDesigns {
  private readonly made = new Map<string, { draw: DrawOfInputs; at: number }>()
  private readonly outcomes = new Map<string, Tried>()
  private last: number | null = null

  constructor(
    private readonly ordered: readonly ChosenDesign[],
    readonly asked: { draws: DrawsAsked; choices: readonly { path: string }[] },
    private readonly goal: Search['goal'],
    private readonly simulation: Simulation,
    /** The name of a design in the journal. */
    private readonly keyOf: (design: number) => string,
  ) {}

  /** Whether a draw, from 1, of a design keeps the promises. Throws as `Simulation.first` does. */
  async verdictOf(design: number, number: number): Promise<Tried['verdict']> {
    if (this.last !== design) this.forget()
    this.last = design
    const { keeper } = this.simulation
    const key = `${this.keyOf(design)} draw ${number}`
    const known = keeper?.outcomeOf(key) as Tried | undefined
    const tried = known ?? (await this.judge(design, number))
    if (!known) keeper?.keepOutcome(key, tried)
    this.simulation.tell(!known)
    this.outcomes.set(`${design} ${number}`, tried)
    return tried.verdict
  }

  private judge(design: number, number: number): Promise<Tried> {
    const { at } = this.draw(design, number)
    const more: Search['more'] = (_, count, isEnough) => this.simulation.first(at, count, isEnough)
    const goal = { ...this.goal, isFull: false }
    return inDraw(number, () => tryOne(design, { goal, more }, wrongOf(goal.confidence)))
  }

  /** All draws of a design, as many shifts of each. Throws as `Simulation.first` does. */
  async shiftsOf(design: number): Promise<Draws> {
    const { draws, shifts: each } = this.asked.draws
    const of: SimulatedDraw[] = []
    for (let number = 1; number <= draws; number++) {
      const { at, draw } = this.draw(design, number)
      const shifts = await inDraw(number, () => this.simulation.first(at, each))
      of.push({ inputs: draw.inputs, scenario: draw.scenario, shifts: shifts.slice(0, each) })
    }
    return { draws, shifts: each, of }
  }

  /** What was drawn and what came of it, draw by draw, of a design of which all are judged. */
  rowsOf(design: number, { of }: Draws): DrawRow[] {
    const [promise] = this.goal.promises(design)
    const how = { confidence: this.goal.confidence, exposure: 1 }
    return of.map(({ inputs, shifts: seen }, index) => {
      const { verdict, shifts } = this.outcomes.get(`${design} ${index + 1}`)!
      return { inputs, verdict, shifts, figure: promiseFigure(promise!, seen, how).mean }
    })
  }

  private draw(design: number, number: number): { draw: DrawOfInputs; at: number } {
    const name = `${design} ${number}`
    const known = this.made.get(name)
    if (known) return known
    const { scenario, evidence, key } = this.ordered[design]!
    const of = { scenario, key, evidence: inputsBeside(evidence, this.asked.choices) }
    const draw = drawOf(of, number, design)
    const { most } = this.goal
    // the search goes up to `most`, fresh shifts up to as many more
    const at = this.simulation.add({ ...draw, first: (number + 1) * most + 1 })
    const made = { draw, at }
    this.made.set(name, made)
    return made
  }

  private forget(): void {
    for (const { at } of this.made.values()) this.simulation.forget(at)
    this.made.clear()
  }
}
