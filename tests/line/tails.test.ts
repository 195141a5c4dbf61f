/** One bed in pieces puts out what it does in one, and no case lies on another at any event of any row of conveyors and belts. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { tell } from './story.js'
import { overlapOf, rows, textOf } from './tails.js'

/** A bed of 4 m in `pieces`, cases of `share` of an eighth of it, before a table. */
const bed = (options: { carries: string; pieces: number; share: number; between: string; time: string }) => {
  const { carries, pieces, share, between, time } = options
  const keys = `type: conveyor, carries: ${carries}, length: ${4000 / pieces} mm, speed: 30 m/min, spacing: 20 mm`
  const names = Array.from({ length: pieces }, (_, index) => `  c${index}: {${keys}}`)
  return tell(`cases: {a: {length: ${500 * share} mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: ${between}}}
line:
${names.join('\n')}
  table: {type: station, time: {exponential: {mean: ${time}}}}
shift: {length: 4 h}`).read('measures.output')
}

describe('a bed in 1 to 8 pieces', () => {
  const always = '10 ms'
  const atRandom = '{exponential: {mean: 6 s}}'
  // the paths are the same, but for the rounding of their sums: 1 case of some 2000. Belts with gaps between their cases are left
  // out, for drives that stop one by one close gaps that one drive keeps
  it.each([
    ['accumulating', always, '5 s'],
    ['accumulating', always, '1 s'],
    ['accumulating', atRandom, '5 s'],
    ['belt', always, '5 s'],
    ['belt', always, '1 s'],
  ])('%s, a case every %s, %s of work: puts out the same', (carries, between, time) => {
    for (const share of [0.2, 0.5, 0.95]) {
      const outputs = [1, 2, 3, 5, 8].map((pieces) => bed({ carries, pieces, share, between, time }))
      expect(Math.max(...outputs) - Math.min(...outputs), `${share}: ${outputs}`).toBeLessThanOrEqual(1)
    }
  })
})

describe('rows of conveyors, belts and sealers', () => {
  it('have no case on another at any event', () => {
    fc.assert(
      fc.property(rows, fc.integer({ min: 1, max: 1000 }), (row, shift) => {
        expect(overlapOf(row, shift)).toBeNull()
      }),
      { numRuns: 60, seed: 20261129 },
    )
  })

  it('nor where every case has a length of its own', () => {
    const law = '{triangular: {low: 200 mm, mode: 200 mm, high: 750 mm}}'
    fc.assert(
      fc.property(rows, fc.integer({ min: 1, max: 1000 }), (row, shift) => {
        const text = textOf(row).replace('length: 0.5 m', `length: ${law}`)
        expect(text).toContain(law)
        expect(overlapOf(row, shift, text)).toBeNull()
      }),
      { numRuns: 40, seed: 20261130 },
    )
  })
})
