/** What a search without a pick hands on: which design came nearest, and which choices stand at an end; fresh shifts. By hand. */

import { describe, expect, it } from 'vitest'
import { freshShifts } from '../../src/questions/size/judged-afresh.js'
import { endsOf, nearestOf } from '../../src/questions/size/nearest.js'
import type { Tried } from '../../src/questions/size/search.js'
import { Fault } from '../../src/scenario/fault.js'
import { condition, shiftOf } from './searches.js'

const tried = (
  design: number,
  share: number | null,
  shifts: number,
  verdict: Tried['verdict'] = 'refused',
): Tried => ({
  ...{ design, verdict, shifts },
  without: share === null ? { reason: 'too slow' } : null,
  figures: share === null ? [] : [{ mean: share, low: null, high: null }],
})

/** Chooses among designs whose first shifts keep the promise as often as `keeps` says of 100; tells what was simulated for it. */
async function nearest(all: readonly Tried[], keeps: (design: number) => number = () => 0, most = 2000) {
  const asked: [design: number, count: number][] = []
  const promises = () => [condition(0, { value: 0.9, near: 0.02 })]
  const found = await nearestOf(all, {
    goal: { promises, confidence: 0.95, most, isFull: false },
    more: async (design, count) => {
      asked.push([design, count])
      return Array.from({ length: count }, (_, shift) => shiftOf([shift % 100 < keeps(design) ? 1 : 0]))
    },
  })
  return { design: found?.design, asked, tried: found?.tried }
}

describe('the nearest design', () => {
  it('is that with most to spare; nothing is simulated where all have shifts enough', async () => {
    const all = [tried(0, 0.7, 200), tried(1, 0.8, 300), tried(2, 0.75, 250)]
    expect(await nearest(all)).toEqual({ design: 1, asked: [], tried: all })
  })

  it('is one that could not be told before one that was refused, though that has more', async () => {
    const all = [tried(0, 0.89, 900), tried(1, 0.88, 2000, 'undecided'), tried(2, 0.87, 2000, 'undecided')]
    expect(await nearest(all)).toEqual({ design: 1, asked: [], tried: all })
  })

  it('of equals is the cheapest, and none where none was simulated', async () => {
    expect((await nearest([tried(2, 0.8, 200), tried(1, 0.8, 200), tried(0, null, 0)])).design).toBe(1)
    expect((await nearest([tried(0, null, 0)])).design).toBeNull()
    // one alone needs no comparison
    expect(await nearest([tried(0, null, 0), tried(1, 0.2, 20)])).toMatchObject({ design: 1, asked: [] })
  })

  it('is not one whose few shifts were lucky: those with fewer than 200 are simulated on to them', async () => {
    const all = [tried(0, 0.85, 40), tried(1, 0.84, 60), tried(2, 0.83, 400)]
    const { design, asked, tried: longer } = await nearest(all, (each) => [74, 84, 99][each]!)
    expect(design).toBe(1)
    expect(longer).toEqual([tried(0, 0.74, 200), tried(1, 0.84, 200), all[2]])
    // 2 had shifts enough
    expect(asked).toEqual([
      [0, 200],
      [1, 200],
    ])
    expect((await nearest(all, () => 50, 100)).asked).toEqual([
      [0, 100],
      [1, 100],
    ])
  })

  it('is sought among the eight that seemed nearest', async () => {
    const all = Array.from({ length: 12 }, (_, design) => tried(design, 0.5 + design / 100, 30))
    const { asked } = await nearest(all, () => 50)
    expect(asked.map(([design]) => design)).toEqual([11, 10, 9, 8, 7, 6, 5, 4])
  })

  it('ends when it is interrupted', async () => {
    const goal = { promises: () => [condition(0)], confidence: 0.95, most: 2000, isFull: false }
    const more = async () => Promise.reject(new Fault('interrupted', 'enough'))
    const found = nearestOf([tried(0, 0.2, 20), tried(1, 0.3, 20)], { goal, more })
    await expect(found).rejects.toMatchObject({ code: 'interrupted' })
  })
})

describe('choices at an end', () => {
  const choices = [
    { path: 'length', values: ['3 m', '4 m', '5 m'] },
    { path: 'people', values: [2, 1] },
    { path: 'variant', values: ['base', 'wide'] },
    { path: 'speed', values: ['18 m/min'] },
    { path: 'mixed', values: ['6 m', '2 m', '4 m'] },
  ]
  const set = { length: '5 m', people: 1, variant: 'wide', speed: '18 m/min', mixed: '4 m' }

  it('are those of numbers whose first or last value it has, whichever way they are given', () => {
    expect(endsOf(choices, set, [])).toEqual([{ path: 'length', value: '5 m', end: 'largest' }])
    // below one of something there is none; of two to three people two may be too many
    expect(endsOf([{ path: 'people', values: [3, 2] }], { people: 2 }, [])).toEqual([
      { path: 'people', value: 2, end: 'smallest' },
    ])
    expect(endsOf(choices, { ...set, length: '4 m', people: 2 }, [])).toEqual([
      { path: 'people', value: 2, end: 'largest' },
    ])
    expect(endsOf(choices, { ...set, length: '3 m', people: 2 }, []).map(({ end }) => end)).toEqual([
      'smallest',
      'largest',
    ])
  })

  it('of a choice of which more never hurts less is no way out', () => {
    expect(endsOf(choices, { ...set, length: '3 m' }, ['length', 'people'])).toEqual([])
    expect(endsOf(choices, set, ['length'])[0]!.path).toBe('length')
  })
})

describe('fresh shifts', () => {
  it('begin after all that a search may have seen, as many as it took, 200 at least, never more than the most', () => {
    expect(freshShifts({ shifts: 603 }, 2000)).toEqual({ first: 2001, count: 603 })
    expect(freshShifts({ shifts: 18 }, 2000)).toEqual({ first: 2001, count: 200 })
    expect(freshShifts({ shifts: 18 }, 50)).toEqual({ first: 51, count: 50 })
    expect(freshShifts({ shifts: 1000 }, 1000)).toEqual({ first: 1001, count: 1000 })
  })
})
