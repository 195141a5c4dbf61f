/** The numbers of the model stand for the rows of the catalogue in their order. */
import { describe, expect, it } from 'vitest'
import { stateLabel, states } from '../../src/catalogue/states.js'
import { Cause, causes, State, stateKeys } from '../../src/line/states.js'

describe('states', () => {
  it('have the numbers of their rows', () => {
    expect(Object.entries(State).map(([name, number]) => [name, stateKeys[number]])).toEqual([
      ['working', 'working'],
      ['waiting', 'waiting'],
      ['blocked', 'blocked'],
      ['jamWaiting', 'jam-waiting-for-crew'],
      ['jamClearing', 'jam-being-cleared'],
      ['tapeWaiting', 'tape-waiting-for-crew'],
      ['tapeChanging', 'tape-being-changed'],
      ['sizeWaiting', 'size-waiting-for-crew'],
      ['sizeSetting', 'size-being-set'],
      ['breakdownWaiting', 'breakdown-waiting-for-crew'],
      ['breakdownRepair', 'breakdown-being-repaired'],
      ['blade', 'blade-service'],
      ['plannedStop', 'planned-stop'],
      ['onBreak', 'on-break'],
    ])
    expect(stateKeys).toHaveLength(Object.keys(State).length)
  })

  it('name the stop first where several states are of one', () => {
    expect(stateLabel('jam-being-cleared')).toBe('jam: being cleared')
    expect(stateLabel('jam-being-cleared', ', ')).toBe('jam, being cleared')
    expect(stateLabel('blade-service')).toBe('blade service')
  })

  it('are of a kind of stop if and only if the piece stands for one', () => {
    expect(
      Object.values(states).filter(({ stop, group }) => (stop !== undefined) !== (group === 'stop')),
    ).toEqual([])
  })
})

describe('causes', () => {
  it('have the numbers of their rows, and the states that they bring', () => {
    const { none, ...own } = Cause
    expect(none).toBe(-1)
    expect(Object.entries(own).map(([name, number]) => [name, causes[number]])).toEqual([
      ['jam', { key: 'jams', skill: 'jams', waiting: State.jamWaiting, working: State.jamClearing }],
      [
        'tape',
        {
          key: 'roll-changes',
          skill: 'roll-change',
          waiting: State.tapeWaiting,
          working: State.tapeChanging,
        },
      ],
      [
        'size',
        {
          key: 'size-settings',
          skill: 'size-setting',
          waiting: State.sizeWaiting,
          working: State.sizeSetting,
        },
      ],
      [
        'breakdown',
        {
          key: 'breakdowns',
          skill: 'breakdowns',
          waiting: State.breakdownWaiting,
          working: State.breakdownRepair,
        },
      ],
      ['blade', { key: 'blade-services', skill: 'blade', waiting: State.blade, working: State.blade }],
      [
        'tapeBreak',
        { key: 'tape-breaks', skill: 'roll-change', waiting: State.tapeWaiting, working: State.tapeChanging },
      ],
    ])
    expect(causes).toHaveLength(Object.keys(own).length)
  })
})
