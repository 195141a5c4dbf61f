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
import { rows } from '../line/tails.js'

/** Rounding of sums of times and ways, m. */
const hair = 1e-6

const isCarrier = ({ pieces }: Stretch, piece: number) =>
  pieces[piece]!.moves === 'accumulating' || pieces[piece]!.moves === 'belt'

/** Ways on conveyors that are faster than their drive, or do not bring a case to the end at the instant at which it goes on. */
function jumps(stretch: Stretch, moves: readonly Move[]): string[] {
  const drives = stretch.drives.map((each) => new Drive(each))
  const lastSealer = stretch.pieces.findLastIndex(({ moves }) => moves === 'sealer')
  // a sealer takes a case in whole while the tail of the one before lies in its flap place: what is before it is drawn behind that tail
  const glide = Math.max(1, ...stretch.pieces.map(({ speed }) => 2 * (speed ?? 0)))
  return moves.flatMap(({ item, piece, times, places }) => {
    if (!isCarrier(stretch, piece)) return []
    const drive = drives[piece]!
    for (let corner = 1; corner < times.length; corner++) {
      const gone = places[corner]! - places[corner - 1]!
      const most =
        piece < lastSealer
          ? glide * (times[corner]! - times[corner - 1]!)
          : drive.wayAt(times[corner]!) - drive.wayAt(times[corner - 1]!)
      if (gone < 0 || gone > most + hair)
        return [
          `p${piece}: case ${stretch.cases[item]!.id} goes ${gone} of ${most} m until ${times[corner]} s`,
        ]
    }
    return []
  })
}

/** Cases on one another at any corner of any way: of two that follow one another on a run of conveyors, tails across joints included. */
function overlaps(stretch: Stretch, moves: readonly Move[], lengths: readonly number[]): string[] {
  const found: string[] = []
  const times = [...new Set(moves.flatMap((move) => [...move.times]))].filter((time) => time > stretch.from)
  for (const time of times.sort((a, b) => a - b)) {
    const here = moves.filter((move) => move.in <= time && time < move.out)
    here.sort((a, b) => b.piece - a.piece || a.in - b.in)
    for (const [index, behind] of here.entries()) {
      const ahead = here[index - 1]
      if (!ahead || !isCarrier(stretch, ahead.piece) || !isCarrier(stretch, behind.piece)) continue
      let apart = placeAt(ahead, time) - placeAt(behind, time)
      for (let piece = behind.piece; piece < ahead.piece; piece++) apart += stretch.pieces[piece]!.length
      const isRun = stretch.pieces
        .slice(behind.piece, ahead.piece + 1)
        .every((_, step) => isCarrier(stretch, behind.piece + step))
      if (isRun && apart < lengths[ahead.kind]! - hair)
        found.push(`p${behind.piece}: case ${stretch.cases[behind.item]!.id} ${apart} m behind at ${time} s`)
    }
  }
  return found
}

describe('the motion of any row', () => {
  it('keeps to the drives, jumps nowhere, and has no case on another', { timeout: 60_000 }, () => {
    let held = 0
    let drawn = 0
    fc.assert(
      fc.property(
        rows,
        choices,
        fc.integer({ min: 1, max: 1000 }),
        fc.constantFrom(120, 600),
        fc.boolean(),
        (row, some, shift, length, isSensed) => {
          const text = withKeys(row, some, isSensed ? sensor : steps)
          const stretch = unlessRefused(() => {
            const { scenario } = loadScenario(text)
            return {
              layout: layoutOf(scenario),
              ...recordStretch(new Line(scenario), scenario, 'motion', shift, { length }),
            }
          })
          if (stretch === 'refused') return
          const { layout } = stretch
          const moves = motionOf(stretch, layout)
          drawn += moves.length
          held += stretch.cases.filter((each) => each.held).length
          expect(jumps(stretch, moves).slice(0, 3)).toEqual([])
          expect(
            overlaps(
              stretch,
              moves,
              layout.cases.map((each) => each.length),
            ).slice(0, 3),
          ).toEqual([])
        },
      ),
      { numRuns: 150, seed: 20261129 },
    )
    expect(held).toBeGreaterThan(20)
    expect(drawn).toBeGreaterThan(10_000)
  })
})
