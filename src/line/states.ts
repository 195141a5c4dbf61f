/** The states of a piece of equipment: it is in exactly one of them at a time. */

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

/** Name in results and label in reports of each state, by number. */
export const states: readonly { key: string; label: string }[] = [
  { key: 'working', label: 'working' },
  { key: 'waiting', label: 'waiting for a case' },
  { key: 'blocked', label: 'blocked ahead' },
  { key: 'jam-waiting-for-crew', label: 'jam: waiting for crew' },
  { key: 'jam-being-cleared', label: 'jam: being cleared' },
  { key: 'tape-waiting-for-crew', label: 'tape: waiting for crew' },
  { key: 'tape-being-changed', label: 'tape: being changed' },
  { key: 'size-waiting-for-crew', label: 'size: waiting for crew' },
  { key: 'size-being-set', label: 'size: being set' },
  { key: 'breakdown-waiting-for-crew', label: 'breakdown: waiting for crew' },
  { key: 'breakdown-being-repaired', label: 'breakdown: being repaired' },
  { key: 'blade-service', label: 'blade service' },
  { key: 'planned-stop', label: 'planned stop' },
  { key: 'on-break', label: 'on break' },
]

/** Why a piece stands until somebody has put it right; `none` when it does not. */
export const Cause = { none: -1, jam: 0, tape: 1, size: 2, breakdown: 3, blade: 4, tapeBreak: 5 } as const
export type Cause = (typeof Cause)[keyof typeof Cause]

/** By cause: the state while it waits for somebody, the state while they work, the skill that it needs, and its words. */
export const causes = [
  { waiting: State.jamWaiting, working: State.jamClearing, skill: 'jams', key: 'jams', label: 'Jams' },
  {
    waiting: State.tapeWaiting,
    working: State.tapeChanging,
    skill: 'roll-change',
    key: 'roll-changes',
    label: 'Roll changes',
  },
  {
    waiting: State.sizeWaiting,
    working: State.sizeSetting,
    skill: 'size-setting',
    key: 'size-settings',
    label: 'Size settings',
  },
  {
    waiting: State.breakdownWaiting,
    working: State.breakdownRepair,
    skill: 'breakdowns',
    key: 'breakdowns',
    label: 'Breakdowns',
  },
  {
    waiting: State.blade,
    working: State.blade,
    skill: 'blade',
    key: 'blade-services',
    label: 'Blade services',
  },
  {
    waiting: State.tapeWaiting,
    working: State.tapeChanging,
    skill: 'roll-change',
    key: 'tape-breaks',
    label: 'Tape breaks',
  },
] as const
