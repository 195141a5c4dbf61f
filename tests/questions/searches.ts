/** A search for the cheapest design that is driven by figures made by hand. */

import type { Condition } from '../../src/answers/condition.js'
import type { ShiftResult } from '../../src/line/line.js'
import {
  type Candidate,
  findCheapest,
  type Search,
  type SizeGoal,
  type Tried,
} from '../../src/questions/size/search.js'
import { Fault, isFault } from '../../src/scenario/fault.js'

/** A promise on the number of a shift at that place. */
export const condition = (index: number, change: Partial<Condition> = {}): Condition => ({
  text: `figure ${index}`,
  measure: { path: ['figure'], label: 'figure', unit: 'share', index, kind: 'mean' },
  isShare: true,
  isLeast: true,
  sign: '>=',
  value: 0.5,
  bound: 1,
  near: 0.25,
  figureOf: (values) => values[index]!,
  ...change,
})

const nothing = new Float64Array(0)

/** A shift of which only these figures are known. */
export const shiftOf = (figures: readonly number[]): ShiftResult => ({
  values: Float64Array.from(figures),
  ...{ controls: nothing, outputs: nothing, held: nothing },
})

/** The first shifts of a design, made one by one until there are so many, or enough; `mine` holds those that were made before. */
export function brought(
  mine: ShiftResult[],
  count: number,
  isEnough: Parameters<Search['more']>[2],
  make: (shift: number) => ShiftResult,
): readonly ShiftResult[] {
  for (let shift = 1; shift <= count; shift++) {
    if (mine.length < shift) mine.push(make(shift))
    const first = mine.length === shift ? mine : mine.slice(0, shift)
    if (isEnough?.(first) || shift === count) return first
  }
  return []
}

/** How a search goes that is driven by hand. */
export interface Driven {
  /** Figures of the shift, from 1, of a design. */
  figure: (design: number, shift: number) => number[]
  candidates: readonly Candidate[]
  goal?: Partial<SizeGoal>
  known?: (design: number) => Tried | null
  /** Shifts of all designs after which it is cancelled. */
  cancelAfter?: number
}

/** Searches, and tells also what was asked for, in order. */
export async function drive({
  figure,
  candidates,
  goal = {},
  known = () => null,
  cancelAfter = Infinity,
}: Driven) {
  const asked: [design: number, count: number][] = []
  const told: Tried[] = []
  const rows = new Map<number, ShiftResult[]>()
  const found = await findCheapest({
    candidates,
    goal: { promises: () => [condition(0)], confidence: 0.95, most: 400, isFull: false, ...goal },
    more: async (design, count, isEnough) => {
      asked.push([design, count])
      const mine = rows.get(design) ?? []
      rows.set(design, mine)
      return brought(mine, count, isEnough, (shift) => {
        if ([...rows.values()].reduce((sum, each) => sum + each.length, 0) >= cancelAfter)
          throw new Fault('interrupted', 'enough')
        return shiftOf(figure(design, shift))
      })
    },
    known,
    onTried: (tried) => told.push(tried),
  }).catch((error) => {
    if (isFault(error, 'interrupted')) return null
    throw error
  })
  const made = [...rows].map(([design, shifts]) => [design, shifts.length])
  return { found, asked, made, told, tried: told.map(({ design }) => design) }
}
