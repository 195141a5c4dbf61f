/** Streams of neighbouring keys: as independent of each other as published critical values can tell. */
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'

// keys as a line makes them, each a neighbour of others in every part: 10 seeds x 100 shifts x 10 owners x 10 purposes
const seeds = Array.from({ length: 10 }, (_, index) => `study-${index + 1}`)
const shifts = Array.from({ length: 100 }, (_, index) => index + 1)
const owners = [
  'arrivals.packing',
  'crew.operators 1',
  'crew.operators 2',
  'line.infeed',
  'line.sealer',
  'line.sealer-1',
  'line.sealer-2',
  'line.sealer-11',
  'line.sealer-22',
  'line.palletiser',
]
const purposes = [
  'time between',
  'mix',
  'walk',
  'time',
  'fold',
  'size setting',
  'roll change',
  'jam clearing',
  'time to breakdown',
  'repair',
]
const sizes = [seeds.length, shifts.length, owners.length, purposes.length]
const keys = sizes.reduce((product, size) => product * size, 1)
const drawsPerKey = 8

/** First draws of every key, one key after the other; the last part of a key changes fastest. */
const draws = new Float64Array(keys * drawsPerKey)
const streams = owners.map((owner) => purposes.map((purpose) => new Stream(owner, purpose)))
let filled = 0
for (const seed of seeds)
  for (const shift of shifts)
    for (const ofOwner of streams)
      for (const stream of ofOwner) {
        stream.begin(seed, shift)
        for (let draw = 0; draw < drawsPerKey; draw++) draws[filled++] = stream.next()
      }

/** Draw `which`, from 0, of a key. */
const drawn = (key: number, which = 0): number => draws[key * drawsPerKey + which]!

/** 99 degrees of freedom, exceeded once in a thousand times: NIST/SEMATECH e-Handbook, table 1.3.6.7.4. */
const critical = 148.23

/** Chi-square statistic of counts that should be alike. */
function chiSquare(counts: ArrayLike<number>): number {
  const total = Array.from(counts).reduce((sum, count) => sum + count, 0)
  const each = total / counts.length
  return Array.from(counts).reduce((sum, count) => sum + (count - each) ** 2 / each, 0)
}

/** Counts of pairs in 10 x 10 cells. */
function cells(pairs: Iterable<readonly [number, number]>): Int32Array {
  const counts = new Int32Array(100)
  for (const [first, second] of pairs) counts[Math.floor(first * 10) * 10 + Math.floor(second * 10)]!++
  return counts
}

/** Correlation of pairs of uniform numbers on (0, 1), whose mean 1/2 and variance 1/12 are known. */
function correlation(pairs: Iterable<readonly [number, number]>): { value: number; bound: number } {
  let [sum, count] = [0, 0]
  for (const [first, second] of pairs) {
    sum += (first - 0.5) * (second - 0.5)
    count++
  }
  // four standard errors of a correlation that is none
  return { value: (12 * sum) / count, bound: 4 / Math.sqrt(count) }
}

/** First draws of keys that differ by one step in one part, each key in one pair only, as a chi-square of pairs needs. */
function* neighbours(part: number): Generator<[number, number]> {
  const stride = sizes.slice(part + 1).reduce((product, size) => product * size, 1)
  for (let key = 0; key < keys; key++) {
    const place = Math.floor(key / stride) % sizes[part]!
    if (place % 2 === 0) yield [drawn(key), drawn(key + stride)]
  }
}

function* lagged(lag: number): Generator<[number, number]> {
  for (let key = 0; key + lag < keys; key++) yield [drawn(key), drawn(key + lag)]
}

function* consecutive(which: number): Generator<[number, number]> {
  for (let key = 0; key < keys; key++) yield [drawn(key, which), drawn(key, which + 1)]
}

describe('100 000 streams of neighbouring keys', () => {
  it('are evenly spread in their first draws', () => {
    const counts = new Int32Array(100)
    for (let key = 0; key < keys; key++) counts[Math.floor(drawn(key) * 100)]!++
    expect(chiSquare(counts)).toBeLessThan(critical)
  })

  it.each([
    ['study seed', 0],
    ['shift', 1],
    ['owner', 2],
    ['purpose', 3],
  ])('neighbours in %s: pairs of first draws fill the square evenly', (_, part) => {
    expect(chiSquare(cells(neighbours(part)))).toBeLessThan(critical)
    const { value, bound } = correlation(neighbours(part))
    expect(Math.abs(value)).toBeLessThan(bound)
  })

  it.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])('%d keys apart, first draws are not correlated', (lag) => {
    const { value, bound } = correlation(lagged(lag))
    expect(Math.abs(value)).toBeLessThan(bound)
  })

  it('the second draw of a stream does not follow from the first', () => {
    expect(chiSquare(cells(consecutive(0)))).toBeLessThan(critical)
    const { value, bound } = correlation(consecutive(0))
    expect(Math.abs(value)).toBeLessThan(bound)
  })

  it('no two begin alike', () => {
    const beginnings = new Set<string>()
    for (let key = 0; key < keys; key++)
      beginnings.add(draws.subarray(key * drawsPerKey, (key + 1) * drawsPerKey).join())
    expect(beginnings.size).toBe(keys)
  })
})

describe('the checks themselves', () => {
  it('see streams that are the same, or follow each other', () => {
    const same = Array.from({ length: 10_000 }, (_, key): [number, number] => [drawn(key), drawn(key)])
    const shifted = same.map(([first]): [number, number] => [first, (first + 0.25) % 1])
    expect(chiSquare(cells(same))).toBeGreaterThan(critical)
    expect(chiSquare(cells(shifted))).toBeGreaterThan(critical)
    expect(correlation(same).value).toBeGreaterThan(correlation(same).bound)
  })
})
