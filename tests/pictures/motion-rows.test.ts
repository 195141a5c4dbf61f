/** Motion in any row of conveyors, belts and sealers, with sensors and speeds by level: as told, no case jumps, and none lies on another. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { Drive } from '../../src/pictures/drive.js'
import { layoutOf } from '../../src/pictures/layout.js'
import { type Move, motionOf, placeAt } from '../../src/pictures/motion.js'
import { loadScenario } from '../../src/scenario/load.js'
import { recordStretch, type Stretch } from '../../src/shifts/stretch.js'
import { choices, sensor, steps, unlessRefused, withKeys } from '../line/sensed.js'
import { type Row, rows } from '../line/tails.js'

/** Rounding of sums of times and ways, m. */
const hair = 1e-6

const isCarrier = ({ pieces }: Stretch, piece: number) =>
  pieces[piece]!.moves === 'accumulating' || pieces[piece]!.moves === 'belt'

/** What is wrong in a motion, m: ways in no time, ways faster than the drive but at the end of a piece, and how deep one case lies on another. */
interface Worst {
  jump: number
  haste: number
  overlap: number
}

/**
 * A sealer takes a case in whole while the tail of the one before lies in its flap place, and what is before it is drawn behind that tail:
 * at the speed of gliding. So is the end of a way to which the line brings a case as soon as the tail ahead has crossed, though its
 * own conveyor stood meanwhile.
 */
function pace(stretch: Stretch, moves: readonly Move[], worst: Worst): void {
  const drives = stretch.drives.map((each) => new Drive(each))
  const lastSealer = stretch.pieces.findLastIndex(({ moves: how }) => how === 'sealer')
  const glide = Math.max(1, ...stretch.pieces.map(({ speed }) => 2 * (speed ?? 0)))
  for (const { piece, out, times, places } of moves) {
    if (!isCarrier(stretch, piece)) continue
    const drive = drives[piece]!
    for (let corner = 1; corner < times.length; corner++) {
      const [begin, end] = [times[corner - 1]!, times[corner]!]
      const gone = places[corner]! - places[corner - 1]!
      expect(gone).toBeGreaterThanOrEqual(0)
      worst.jump = Math.max(worst.jump, gone - glide * (end - begin))
      if (piece < lastSealer || out - end < 1) continue
      worst.haste = Math.max(worst.haste, gone - drive.wayAt(end) + drive.wayAt(begin))
    }
  }
}

/** At any corner of any way: of two that follow one another on a run of conveyors, tails across joints included. */
function overlaps(stretch: Stretch, moves: readonly Move[], lengths: readonly number[], worst: Worst): void {
  const lastSealer = stretch.pieces.findLastIndex(({ moves: how }) => how === 'sealer')
  const times = new Set(moves.flatMap((move) => [...move.times]).filter((time) => time > stretch.from))
  for (const time of times) {
    const here = moves.filter((move) => move.in <= time && time < move.out)
    here.sort((a, b) => b.piece - a.piece || a.in - b.in)
    for (const [index, behind] of here.entries()) {
      const ahead = here[index - 1]
      if (!ahead) continue
      const run = stretch.pieces.slice(behind.piece, ahead.piece + 1)
      if (run.some((_, step) => !isCarrier(stretch, behind.piece + step))) continue
      if (behind.piece < lastSealer) continue
      const joints = run.slice(0, -1).reduce((sum, { length }) => sum + length, 0)
      const apart = joints + placeAt(ahead, time) - placeAt(behind, time)
      worst.overlap = Math.max(worst.overlap, lengths[ahead.kind]! - apart)
    }
  }
}

const shifts = fc.integer({ min: 1, max: 1000 })
const spans = fc.constantFrom(120, 600)

/** The worst of all that is drawn of such rows. */
function worstOf(row: fc.Arbitrary<Row>, keys: typeof sensor) {
  const worst = { jump: 0, haste: 0, overlap: 0, cases: 0, held: 0 }
  fc.assert(
    fc.property(row, choices, shifts, spans, (one, some, shift, length) => {
      const drawn = unlessRefused(() => {
        const { scenario } = loadScenario(withKeys(one, some, keys))
        const stretch = recordStretch(new Line(scenario), scenario, 'motion', shift, { length })
        return { stretch, layout: layoutOf(scenario) }
      })
      if (drawn === 'refused') return
      const { stretch, layout } = drawn
      const moves = motionOf(stretch, layout)
      worst.cases += stretch.cases.length
      worst.held += stretch.cases.filter((each) => each.held).length
      pace(stretch, moves, worst)
      overlaps(
        stretch,
        moves,
        layout.cases.map((each) => each.length),
        worst,
      )
    }),
    { numRuns: 40, seed: 20261129 },
  )
  return worst
}

/**
 * The same row, but that conveyors with a start delay have no stops of their own: after one the line lets all on it move at once, and the drawing
 * lets each wait its delay as always.
 */
const plain = rows.map((row) => ({
  ...row,
  stops: 'arrivals-and-manual-work' as const,
  pieces: row.pieces.map((each) => (each.delay > 0 ? { ...each, fails: 0, jams: 0, planned: 0 } : each)),
}))

describe('the motion of any row', () => {
  it('keeps to the drives and has no case on another, tails across joints included', {
    timeout: 60_000,
  }, () => {
    const { jump, haste, overlap, cases, held } = worstOf(plain, steps)
    expect(Math.max(jump, haste, overlap)).toBeLessThan(hair)
    expect(cases).toBeGreaterThan(1000)
    expect(held).toBeGreaterThan(5)
  })

  it.each([
    ['sensors', sensor],
    ['steps of speed', steps],
  ])('jumps nowhere, with %s', { timeout: 60_000 }, (_, keys) => {
    const { jump, cases } = worstOf(rows, keys)
    expect(jump).toBeLessThan(hair)
    expect(cases).toBeGreaterThan(1000)
  })
})
