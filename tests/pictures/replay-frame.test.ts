/** Frame of a replay: scale, rows and lanes by hand, and words that do not run into each other. */
import { describe, expect, it } from 'vitest'
import type { Layout } from '../../src/pictures/layout.js'
import { pad, replayFrame } from '../../src/pictures/replay-frame.js'
import { demos, loadDemo } from '../demo.js'
import { plainLayout } from './plain-layout.js'

const letters = (text: string) => text.length * 7

function lineOf(lengths: number[], y: number[] = []): Layout {
  let x = 0
  const pieces = lengths.map((length, index) => {
    const piece = {
      name: `piece ${index}`,
      type: 'conveyor' as const,
      x,
      y: y[index] ?? 0,
      length,
      width: 0.5,
      speed: 0.3,
      heads: [],
      next: [],
    }
    x += length
    return piece
  })
  return {
    pieces,
    arrivals: [{ name: 'in', next: 'piece 0' }],
    cases: [{ name: 'box', length: 0.4, width: 0.3 }],
    crews: [],
    length: x,
    width: 0.5,
  }
}

describe('the frame of a replay', () => {
  it('is to scale in one row where the line fits', () => {
    const frame = replayFrame(lineOf([10, 10]), 1020, letters)
    expect(frame.rows.length).toBe(1)
    expect(frame.scale).toBe(50)
    expect([frame.across(0, 0), frame.across(0, 20)]).toEqual([pad, 1010])
  })

  it('breaks a long line into rows on a narrow page, of one scale', () => {
    // 40 m at no less than 24 px/m in 370 px: three rows
    const layout = lineOf([20, 20])
    const frame = replayFrame(layout, 390, letters)
    expect(frame.rows.length).toBe(3)
    expect(frame.scale).toBeCloseTo((370 * 3) / 40, 9)
    expect(frame.across(0, 40 / 3)).toBeCloseTo(380, 9)
    expect(frame.across(1, 40 / 3)).toBeCloseTo(pad, 9)
    for (let row = 1; row < 3; row++)
      expect(frame.rows[row]!.top).toBeGreaterThan(frame.rows[row - 1]!.bottom)
    expect(frame.rowOf(layout.pieces[0]!)).toBe(0)
    expect(frame.rowOf(layout.pieces[1]!)).toBe(2)
  })

  it('puts pieces that lie beside one another into strips, each with its words above it', () => {
    const frame = replayFrame(lineOf([10, 10], [0, 2]), 1020, letters)
    expect(frame.middle(0, 1)).toBeGreaterThan(frame.middle(0, 0) + 0.5 * frame.scale)
    for (const { piece, y, pieceY } of frame.labels) {
      expect(y).toBeLessThan(pieceY)
      expect(pieceY).toBeCloseTo(frame.middle(0, piece) - 0.25 * frame.scale, 9)
    }
  })

  it.each(demos.flatMap((demo) => [390, 1440].map((width): [string, number] => [demo, width])))(
    'shows every name of %s at %d px, none on another',
    async (demo, width) => {
      const layout = plainLayout(await loadDemo(demo))
      const { labels, height, rows } = replayFrame(layout, width, letters)
      expect(labels.map(({ piece }) => piece).sort((a, b) => a - b)).toEqual(
        layout.pieces.map((_, index) => index),
      )
      expect(height).toBeGreaterThan(rows.at(-1)!.top)
      for (const { x, half } of labels) {
        expect(x - half).toBeGreaterThanOrEqual(0)
        expect(x + half).toBeLessThanOrEqual(width)
      }
      for (const [index, one] of labels.entries())
        for (const other of labels.slice(index + 1))
          expect(one.y !== other.y || Math.abs(one.x - other.x) >= one.half + other.half).toBe(true)
    },
  )
})
