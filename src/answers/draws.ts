/** Draws of the inputs beside a study: how many are asked for, their scenarios and their shifts. */
import { drawInputs } from '../inputs/draw.js'
import { Standstill } from '../line/standstill.js'
import { misuse } from '../scenario/fault.js'
import type { Evidence } from '../scenario/known.js'
import { isWithin } from '../scenario/within.js'
import type { Design, Simulation } from '../shifts/simulation.js'
import type { Draws, DrawsAsked, SimulatedDraw } from './with-inputs.js'

export interface DrawsOptions {
  /** Draws of the inputs, 10 at least; 60 where nobody says. */
  draws?: number | undefined
  /** `fixed`: the scenario as it is given, as if all of it were known; `drawn` where nobody says. */
  inputs?: string | undefined
}

/** How many are asked for, and how many shifts of each there are at most. Of 60 their spread is known to within 9 % of itself, one standard error. */
const usualDraws = 60
const usualEach = 25

/** What a question is asked of draws; null where inputs are held fixed or nothing is known of any. Throws `Fault` `asked`. */
export function drawsAsked(
  { draws, inputs = 'drawn' }: DrawsOptions,
  { evidence }: { evidence: readonly Evidence[] },
  shifts: number,
  shiftsEach = usualEach,
): DrawsAsked | null {
  if (inputs !== 'drawn' && inputs !== 'fixed')
    throw misuse(`--inputs ${inputs}: must be \`drawn\` (from their evidence) or \`fixed\``)
  if (inputs === 'fixed') {
    if (draws !== undefined)
      throw misuse('--draws draws the inputs, --inputs fixed keeps them fixed: choose one')
    return null
  }
  if (evidence.length === 0) {
    if (draws === undefined) return null
    throw misuse(
      '--draws: no value of the scenario says how well it is known, so there is nothing to draw. Write a value such as `36 in 40000 cases` or `{guess: 90 s, between: [60 s, 150 s]}`',
    )
  }
  return { draws: draws ?? usualDraws, shifts: Math.min(shiftsEach, shifts) }
}

/** Does a path lead into what stands at the other, or to the same? What a design sets so is not drawn of it. */
export const touches = (one: string, other: string): boolean => isWithin(one, other) || isWithin(other, one)

/** A draw: what was drawn of each input, in the order of the evidence, SI. */
export interface DrawOfInputs extends Design {
  inputs: readonly number[]
}

/** The draws of the inputs of a design, as designs of their own; `key`: of its shifts, `design`: its number. None where none are asked for. */
export const drawsOf = (
  of: Parameters<typeof drawInputs>[0] & { key?: string },
  asked: DrawsAsked | null,
  design = 0,
): DrawOfInputs[] => Array.from({ length: asked?.draws ?? 0 }, (_, index) => drawOf(of, index + 1, design))

/** The draw of that number, from 1. */
export function drawOf(of: Parameters<typeof drawsOf>[0], number: number, design: number): DrawOfInputs {
  const { scenario, inputs } = drawInputs(of, of.scenario.study.seed, number)
  return { scenario, inputs, key: [of.key ?? '', `draw ${number}`].join(' ').trim(), drawOf: design }
}

/** Their shifts; `first`: the number of the first of them among the designs of the simulation. Throws as `Simulation.first` does. */
export async function simulatedDraws(
  drawn: readonly DrawOfInputs[],
  asked: DrawsAsked | null,
  simulation: Simulation,
  first: number,
): Promise<Draws | null> {
  if (asked === null) return null
  const of: SimulatedDraw[] = []
  for (const [index, { inputs, scenario }] of drawn.entries()) {
    const shifts = await inDraw(index + 1, () => simulation.first(first + index, asked.shifts))
    of.push({ inputs, scenario, shifts })
  }
  return { ...asked, of }
}

/** Simulates what belongs to the draw of that number: a line that locks up says that it was with the inputs of that one. */
export async function inDraw<T>(number: number, simulate: () => Promise<T>): Promise<T> {
  try {
    return await simulate()
  } catch (error) {
    if (!(error instanceof Standstill)) throw error
    const { piece, rule, fix, shift } = error
    throw new Standstill(
      piece,
      `with the inputs of draw ${number} ${rule}`,
      `${fix}; or --inputs fixed, which uses only the values as given`,
      shift,
    )
  }
}
