/** States and causes of stops as the model numbers them, in the order of the catalogue: a piece is in exactly one state at a time. */
import { causeKeys, causes as rows } from '../catalogue/causes.js'
import { type StateKey, stateKeys } from '../catalogue/states.js'

export const State = {
  working: 0,
  waiting: 1,
  blocked: 2,
  jamWaiting: 3,
  jamClearing: 4,
  tapeWaiting: 5,
  tapeChanging: 6,
  sizeWaiting: 7,
  sizeSetting: 8,
  breakdownWaiting: 9,
  breakdownRepair: 10,
  blade: 11,
  plannedStop: 12,
  onBreak: 13,
} as const
export type State = (typeof State)[keyof typeof State]

/** Key of each in the catalogue, by number. */
export { stateKeys }

/** Why a piece stands until somebody has put it right; `none` when it does not. */
export const Cause = { none: -1, jam: 0, tape: 1, size: 2, breakdown: 3, blade: 4, tapeBreak: 5 } as const
export type Cause = (typeof Cause)[keyof typeof Cause]

/** By cause: its key in the catalogue, the skill that it needs, and its states, while it waits for somebody and while they work. */
export const causes = causeKeys.map((key) => {
  const { skill, waiting, working } = rows[key]
  const state = (of: StateKey) => stateKeys.indexOf(of) as State
  return { key, skill, waiting: state(waiting), working: state(working) }
})
