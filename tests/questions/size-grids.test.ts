/** The search for the cheapest design on random grids, against all designs simulated to the end. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import type { Candidate, Tried } from '../../src/questions/size/search.js'
import { condition, drive } from './searches.js'

describe('on random grids', () => {
  const near = 0.03
  const goal = {
    promises: () => [condition(0, { value: 0.9, near })],
    confidence: 0.95,
    most: 4000,
    isFull: false,
  }

  it('searching picks what all designs simulated to the end say, on a small part of the shifts', async () => {
    const spent = { search: 0, full: 0, designs: 0, all: 0 }
    let compared = 0
    let run = 0
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 5 }),
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 5 }),
        fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: 25, maxLength: 25 }),
        async (rises, otherRises, prices) => {
          run++
          const [rows, columns] = [rises.length, otherRises.length]
          const sum = (values: number[], upTo: number) =>
            values.slice(0, upTo + 1).reduce((total, each) => total + each, 0)
          // more of either never hurts: the share of shifts kept rises with both
          const share = (row: number, column: number) =>
            1 - Math.exp(-(sum(rises, row) + sum(otherRises, column)) / 5)
          const designs = Array.from({ length: rows * columns }, (_, index) => ({
            row: Math.floor(index / columns),
            column: index % columns,
            price: prices[index]!,
          })).sort((a, b) => a.price - b.price || a.row - b.row || a.column - b.column)
          const shares = designs.map(({ row, column }) => share(row, column))
          fc.pre(shares.every((each) => Math.abs(each - 0.9) > near))
          compared++
          const candidates = designs.map(
            (mine): Candidate => ({
              ruledOut: () => null,
              isBelow: (other) => mine.row <= designs[other]!.row && mine.column <= designs[other]!.column,
            }),
          )
          // one number a shift for all designs: a shift that one holds is held by all with a higher share
          const stream = new Stream('designs', 'luck')
          const luck: number[] = []
          stream.begin(`grid-${run}`, 1)
          const figure = (design: number, shift: number) => {
            while (luck.length < shift) luck.push(stream.next())
            return [luck[shift - 1]! < shares[design]! ? 1 : 0]
          }
          const search = await drive({ figure, candidates, goal })
          const full = await drive({ figure, candidates, goal: { ...goal, isFull: true } })
          expect(full.found!.pick).toBe(
            shares.some((each) => each > 0.9) ? shares.findIndex((each) => each > 0.9) : null,
          )
          const total = (tried: readonly Tried[]) => tried.reduce((all, { shifts }) => all + shifts, 0)
          spent.search += total(search.told)
          spent.full += total(full.told)
          spent.designs += search.told.filter(({ without }) => without === null).length
          spent.all += designs.length
          expect(search.found!.pick).toBe(full.found!.pick)
        },
      ),
      { seed: 1, numRuns: 50 },
    )
    console.log(
      `${compared} grids: searching ${spent.designs} designs and ${spent.search} shifts, to the end ${spent.all} and ${spent.full}`,
    )
    expect(compared).toBe(50)
    expect(spent.search).toBeLessThan(spent.full / 20)
  })
})
