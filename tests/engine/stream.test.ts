/** Streams: open ends, reproducible, apart from each other whatever their keys. */
import alea from 'seedrandom/lib/alea.js'
import { describe, expect, it } from 'vitest'
import { Stream, streamKey } from '../../src/engine/stream.js'

function draws(seed: string, shift: number, owner: string, purpose: string, count: number): number[] {
  const stream = new Stream(owner, purpose)
  stream.begin(seed, shift)
  return Array.from({ length: count }, () => stream.next())
}

describe('stream', () => {
  it('gives the same numbers for the same key', () => {
    expect(draws('s', 1, 'line.a', 'time', 5)).toEqual(draws('s', 1, 'line.a', 'time', 5))
  })

  it('gives the numbers of the library, moved onto the open interval by half a step of its 32 bits', () => {
    // reference: seedrandom 3.0.5, lib/alea.js
    const library = alea(streamKey('s', 7, 'line.sealer', 'jam'))
    const numbers = draws('s', 7, 'line.sealer', 'jam', 100_000)
    expect(numbers.filter((number) => number !== library() + 2 ** -33)).toEqual([])
  })

  it('keeps keys apart that differ only in where their parts begin', () => {
    const keys: [string, number, string, string][] = [
      ['1', 1, '1', '1'],
      ['11', 1, '1', ''],
      ['1', 11, '1', ''],
      ['1', 1, '11', ''],
      ['1', 1, '1', '11'],
      ['', 111, '', ''],
    ]
    expect(new Set(keys.map((key) => streamKey(...key))).size).toBe(keys.length)
    expect(new Set(keys.map((key) => draws(...key, 3).join())).size).toBe(keys.length)
  })

  it('stays inside (0, 1): both ends excluded', () => {
    const numbers = draws('ends', 1, 'o', 'p', 200_000)
    expect(Math.min(...numbers.slice(0, 100_000))).toBeGreaterThan(0)
    expect(Math.max(...numbers.slice(0, 100_000))).toBeLessThan(1)
    // chi-square of 100 equal cells: 99 degrees of freedom, upper 0.1 % point 148.2 (NIST handbook table 1.3.6.7.4)
    const cells = new Array<number>(100).fill(0)
    for (const number of numbers) cells[Math.floor(number * 100)]!++
    expect(cells.reduce((sum, count) => sum + (count - 2000) ** 2 / 2000, 0)).toBeLessThan(148.2)
  })

  it('says so when it is drawn from before its shift', () => {
    expect(() => new Stream('o', 'p').next()).toThrow(/before its shift/)
  })
})
