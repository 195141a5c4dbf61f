/** Motion: where cases are between the instants that are recorded, by hand and on the stretches of the demos. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { StateKey } from '../../src/catalogue/states.js'
import { Line } from '../../src/line/line.js'
import { DeadlockError } from '../../src/line/standstill.js'
import type { Layout } from '../../src/pictures/layout.js'
import { type Move, motionOf, placeAt, stateAt } from '../../src/pictures/motion.js'
import { loadScenario } from '../../src/scenario/load.js'
import { recordStretch, type Stretch } from '../../src/shifts/stretch.js'
import { demos, loadDemo } from '../demo.js'
import { lines } from '../line/topology.js'
import { plainLayout } from './plain-layout.js'

/** 0.4 m cases on one piece of `length`. */
function layoutOf(length: number): Layout {
  const piece = {
    name: 'a',
    type: 'conveyor' as const,
    x: 0,
    y: 0,
    length,
    width: 0.5,
    speed: 0.5,
    heads: [],
    next: ['exit'],
  }
  return {
    pieces: [piece],
    arrivals: [{ name: 'in', next: 'a' }],
    cases: [{ name: 'box', length: 0.4, width: 0.3 }],
    crews: [],
    length,
    width: 0.5,
  }
}

function stretchOf(
  piece: Partial<Stretch['pieces'][number]>,
  times: [number, number | null][],
  drive: [number, number][] = [[0, 0.5]],
  belts: (number | null)[] = [],
): Stretch {
  return {
    shift: 1,
    from: 0,
    to: 100,
    why: '',
    cases: times.map(([from, to], index) => ({
      id: index + 1,
      kind: 0,
      path: [[0, from, to]],
      came: [0, from],
      ...(belts.length > 0 ? { belts: [belts[index] ?? null] } : {}),
    })),
    states: [[[0, 'working']]],
    drives: [drive],
    breaks: [],
    held: [[0, 0]],
    pieces: [
      { moves: 'accumulating', length: 5, speed: 0.5, pitches: [0.5], startDelay: 0, servers: 1, ...piece },
    ],
    sources: [{ name: 'in', whenFull: 'wait' }],
  }
}

const corners = (move: Move) =>
  [...move.times].map((time, index) => [round(time), round(move.places[index]!)])
const round = (value: number) => Math.round(value * 1e6) / 1e6

describe('an accumulating conveyor, by hand', () => {
  // 5 m at 0.5 m/s: 10 s of free flow; a case and its spacing take 0.5 m, so 1 s
  it('carries freely, closes up behind one that stands, and follows it', () => {
    const [first, second, third] = motionOf(
      stretchOf({}, [
        [0, 20],
        [4, 21],
        [6, null],
      ]),
      layoutOf(5),
    )
    expect(corners(first!)).toEqual([
      [0, 0],
      [10, 5],
      [20, 5],
    ])
    expect(corners(second!)).toEqual([
      [4, 0],
      [13, 4.5],
      [20, 4.5],
      [21, 5],
    ])
    // behind the second at 4.0 m until the first leaves; at the end when the second has moved on by its pitch
    expect(corners(third!)).toEqual([
      [6, 0],
      [14, 4],
      [20, 4],
      [22, 5],
      [100, 5],
    ])
  })

  it('starts in a wave where cases follow after a delay', () => {
    // Newell (2002): shifted by the pitch in space and the delay in time
    const cases: [number, number | null][] = [
      [0, 20],
      [4, 23],
      [8, 26],
    ]
    const moves = motionOf(stretchOf({ startDelay: 2 }, cases), layoutOf(5))
    expect(corners(moves[1]!).slice(-3)).toEqual([
      [13, 4.5],
      [22, 4.5],
      [23, 5],
    ])
    expect(corners(moves[2]!).slice(-3)).toEqual([
      [16, 4],
      [24, 4],
      [26, 5],
    ])
  })

  it('stands with all on it during a breakdown', () => {
    const drive: [number, number][] = [
      [0, 0.5],
      [5, 0],
      [15, 0.5],
    ]
    const [move] = motionOf(stretchOf({}, [[0, 20]], drive), layoutOf(5))
    expect(corners(move!)).toEqual([
      [0, 0],
      [5, 2.5],
      [15, 2.5],
      [20, 5],
    ])
  })
})

describe('belts, by hand', () => {
  it('stand while they are blocked', () => {
    const drive: [number, number][] = [
      [0, 0.5],
      [10, 0],
      [16, 0.5],
    ]
    const moves = motionOf(
      stretchOf(
        { moves: 'belt' },
        [
          [0, 16],
          [4, 20],
        ],
        drive,
      ),
      layoutOf(5),
    )
    expect(corners(moves[0]!)).toEqual([
      [0, 0],
      [10, 5],
      [16, 5],
    ])
    expect(corners(moves[1]!)).toEqual([
      [4, 0],
      [10, 3],
      [16, 3],
      [20, 5],
    ])
  })

  it('of a sealer carry from the flap place past a jam', () => {
    // 0.4 m of flap place, at 1 m/s there in 0.4 s; 2 m of belts in 4 s and 30 s of jam
    const drive: [number, number][] = [
      [0, 0.5],
      [3, 0],
      [33, 0.5],
    ]
    const piece = { moves: 'sealer' as const, length: 2 }
    const [move] = motionOf(stretchOf(piece, [[0, 35]], drive, [1]), layoutOf(2.4))
    expect(corners(move!)).toEqual([
      [0, 0],
      [0.4, 0.4],
      [1, 0.4],
      [3, 1.4],
      [33, 1.4],
      [35, 2.4],
    ])
  })
})

describe('a station, by hand', () => {
  it('lets cases wait in a row and work side by side', () => {
    const piece = { moves: 'station' as const, length: 0, speed: null, servers: 2 }
    const moves = motionOf(
      stretchOf(piece, [
        [0, 20],
        [1, 30],
        [2, 40],
        [3, 50],
      ]),
      layoutOf(2),
    )
    expect(moves.map(({ lane }) => lane)).toEqual([0, 1, 0, 1])
    // places are 0.6 m apart: the end, 1.4 m and 0.8 m
    expect(moves.map((move) => round(placeAt(move, 15)))).toEqual([2, 2, 1.4, 0.8])
    expect(moves.slice(2).map((move) => round(placeAt(move, 28)))).toEqual([2, 1.4])
  })
})

it('the state at an instant is the one that has begun', () => {
  const states: [number, StateKey][] = [
    [5, 'working'],
    [9, 'blocked'],
  ]
  expect([4, 5, 8.9, 9, 50].map((time) => stateAt(states, time))).toEqual([
    'waiting',
    'working',
    'working',
    'blocked',
    'blocked',
  ])
})

/** Paths that do not begin and end as recorded, go back, or are faster than anything on the line. */
function faults(stretch: Stretch, layout: Layout, moves: readonly Move[]): string[] {
  const wrong: string[] = []
  // behind the tail of one ahead a case goes at the speed of that one, at most that of going to a place
  const fastest = Math.max(1, ...stretch.pieces.map(({ speed }) => 2 * (speed ?? 0)))
  for (const { item, piece, times, places, in: from, out } of moves) {
    const { length, name } = layout.pieces[piece]!
    const { moves: how, length: way } = stretch.pieces[piece]!
    // of a zoned conveyor the rest that holds no case is drawn as if it were way
    const most = fastest * (length / way)
    const { lost, path, id } = stretch.cases[item]!
    const isOut = out <= stretch.to && !(lost && path.at(-1)![1] === from)
    if (times[0] !== from || places[0] !== 0) wrong.push(`${name}: case ${id} begins at ${places[0]}`)
    if (isOut && (times.at(-1) !== out || places.at(-1) !== length))
      wrong.push(`${name}: case ${id} ends at ${places.at(-1)}`)
    for (let corner = 1; corner < times.length; corner++) {
      const passed = times[corner]! - times[corner - 1]!
      const gone = places[corner]! - places[corner - 1]!
      if (!(gone >= 0 && passed >= 0)) wrong.push(`${name}: case ${id} goes back at ${times[corner]}`)
      if ((how === 'accumulating' || how === 'belt') && gone > most * passed + 1e-6)
        wrong.push(`${name}: case ${id} jumps ${gone} m in ${passed} s at ${times[corner]}`)
      if (how === 'sealer' && isOut && passed === 0 && gone > 1e-6 && times[corner] === out)
        wrong.push(`${name}: the belts have not brought case ${id} to the end at ${out}`)
    }
  }
  return wrong
}

describe.each(demos)('the stretch of %s', (demo) => {
  it('agrees with what was recorded, never goes back, keeps to the speed and never overlaps', {
    timeout: 120_000,
  }, async () => {
    const scenario = await loadDemo(demo)
    const stretch = recordStretch(new Line(scenario), scenario, scenario.study.seed, 1, { length: 1200 })
    const layout = plainLayout(scenario)
    const moves = motionOf(stretch, layout)
    expect(moves.length).toBe(stretch.cases.reduce((sum, { path }) => sum + path.length, 0))
    expect(faults(stretch, layout, moves).slice(0, 10)).toEqual([])
    expect(overlaps(stretch, layout, moves).slice(0, 10)).toEqual([])
  })
})

describe('stretches of lines of random shape', () => {
  it('agree with what was recorded', { timeout: 120_000 }, () => {
    let drawn = 0
    fc.assert(
      fc.property(
        lines,
        fc.integer({ min: 1, max: 1000 }),
        fc.constantFrom(150, 960),
        (text, shift, length) => {
          const { scenario } = loadScenario(text)
          let stretch: Stretch
          try {
            stretch = recordStretch(new Line(scenario), scenario, 'shape', shift, { length })
          } catch (error) {
            if (error instanceof DeadlockError) return
            throw error
          }
          const layout = plainLayout(scenario)
          const moves = motionOf(stretch, layout)
          drawn += moves.length
          expect(faults(stretch, layout, moves).slice(0, 5)).toEqual([])
        },
      ),
      { numRuns: 200, seed: 20261125 },
    )
    expect(drawn).toBeGreaterThan(10_000)
  })
})

/** Cases that stand on one another by more than a millimetre: on a piece, or across its end on their way to the same next one. */
function overlaps(stretch: Stretch, layout: Layout, moves: readonly Move[]): string[] {
  const found: string[] = []
  const nextOf = (move: Move) => {
    const { path } = stretch.cases[move.item]!
    return path[path.findIndex(([piece, from]) => piece === move.piece && from === move.in) + 1]?.[0]
  }
  for (let time = stretch.from; time < stretch.to; time += 1.3) {
    const here = moves.filter((move) => move.in <= time && time < move.out)
    for (const [piece, { length, name }] of layout.pieces.entries()) {
      const { moves: how, servers } = stretch.pieces[piece]!
      // side by side, or on one another where more wait than there are places drawn
      const places = Math.round(length / (Math.max(...layout.cases.map((kind) => kind.length)) + 0.2))
      if (servers > 1 || (how === 'station' && here.filter((move) => move.piece === piece).length > places))
        continue
      // the tail of the last one that went on, then those on the piece in order of coming
      const onward = here.filter(({ before }) => before === piece).sort((a, b) => a.in - b.in)
      const on = here.filter((move) => move.piece === piece)
      const gone = onward.at(-1)
      const row = on.map((move) => ({ move, at: placeAt(move, time) }))
      const isShared = gone && on[0] && (nextOf(on[0]) ?? gone.piece) === gone.piece
      if (isShared) row.unshift({ move: gone, at: length + placeAt(gone, time) })
      for (let index = 1; index < row.length; index++) {
        const ahead = row[index - 1]!
        const room = ahead.at - layout.cases[ahead.move.kind]!.length - row[index]!.at
        if (room < -1e-3 && row[index]!.at > 0)
          found.push(`${name} at ${time}: ${stretch.cases[row[index]!.move.item]!.id} by ${room}`)
      }
    }
  }
  return found
}
