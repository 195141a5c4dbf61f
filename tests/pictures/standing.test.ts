/** Who stands before the line and how many cases are on it: by hand, and counted case by case in the stretches of the demos. */
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { countAt, countOnLine, standingOf } from '../../src/pictures/standing.js'
import { recordStretch, type Stretch } from '../../src/shifts/stretch.js'
import { demos, loadDemo } from '../demo.js'

describe('who stands before the line', () => {
  const stretch = {
    sources: [
      { name: 'packing', whenFull: 'queue' },
      { name: 'van', whenFull: 'turn-away' },
    ],
    cases: [
      { came: [0, 1], path: [[0, 1, 9]] },
      { came: [0, 2], path: [[0, 5, 12]] },
      { came: [1, 3], path: [] },
      { came: [0, 4], path: [] },
    ],
    // the third is turned away at the instant at which it comes
    held: [
      [0, 0],
      [1, 1],
      [2, 2],
      [4, 3],
      [12, 2],
    ],
  } as unknown as Stretch
  const standing = standingOf(stretch)

  it('is each case from when it came until it is taken; nobody who was turned away', () => {
    expect(standing).toEqual([
      [
        [2, 1],
        [4, 2],
        [5, 1],
        [Infinity, 0],
      ],
      [],
    ])
    expect([1, 2, 4, 5, 100].map((time) => countAt(standing[0]!, time))).toEqual([0, 1, 2, 1, 1])
  })

  it('is not on the line', () => {
    expect([0, 1, 2, 4, 5, 12].map((time) => countOnLine(stretch, standing, time))).toEqual([
      0, 1, 1, 1, 2, 1,
    ])
  })
})

describe('cases on the line, at any instant of a demo', () => {
  it.each([
    ...demos.map((demo) => [demo, [] as string[]] as const),
    ['soap-works', ['arrivals.packing.when-full=turn-away', 'line.infeed.length=3 m']] as const,
  ])('%s %s: those that have been taken and have not left', async (demo, sets) => {
    const scenario = await loadDemo(demo, [...sets])
    const stretch = recordStretch(new Line(scenario), scenario, 'standing', 1, { length: 1200 })
    const standing = standingOf(stretch)
    const [told, counted]: number[][] = [[], []]
    for (let time = stretch.from + 0.1234; time < stretch.to; time += 7.7) {
      told!.push(countOnLine(stretch, standing, time))
      const isOn = ({ path }: Stretch['cases'][number]) =>
        path.length > 0 && path[0]![1] <= time && (path.at(-1)![2] ?? Infinity) > time
      counted!.push(stretch.cases.filter(isOn).length)
    }
    expect(told).toEqual(counted)
    expect(Math.max(...counted!)).toBeGreaterThan(0)
  })
})
