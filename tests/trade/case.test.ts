/** Case geometry worked by hand. */
import { describe, expect, it } from 'vitest'
import {
  blankSize,
  flapLength,
  flutes,
  fluteTable,
  innerFlapGap,
  insideFromOutside,
  outsideFromInside,
  seamLength,
  tightSeamGap,
  unitedInches,
  unitedSize,
  widestSeamGap,
} from '../../src/trade/case.js'

const inch = 0.0254

describe('inside and outside', () => {
  it('C flute adds about 5/16, 5/16 and 5/8 in: two boards and four (from memory)', () => {
    const inside = { length: 0.4, width: 0.3, height: 0.25 }
    const outside = outsideFromInside(inside, flutes.C)
    expect(outside.length).toBeCloseTo(0.408, 12)
    expect(outside.width).toBeCloseTo(0.308, 12)
    expect(outside.height).toBeCloseTo(0.266, 12)
    // 4 mm is 0.8 % more than 5/32 in
    expect(Math.abs(outside.length - inside.length - (5 / 16) * inch)).toBeLessThan(0.0001)
    expect(Math.abs(outside.height - inside.height - (5 / 8) * inch)).toBeLessThan(0.00013)
    const back = insideFromOutside(outside, flutes.C)
    expect(back.length).toBeCloseTo(inside.length, 12)
    expect(back.width).toBeCloseTo(inside.width, 12)
    expect(back.height).toBeCloseTo(inside.height, 12)
  })

  // Fibre Box Handbook by way of trade copies: A 3/16, B 1/8, C 5/32, E 1/16, F 1/32 in, all nominal, to 0.1 mm
  it.each([
    ['A', 3 / 16],
    ['B', 1 / 8],
    ['C', 5 / 32],
    ['E', 1 / 16],
    ['F', 1 / 32],
  ] as const)('%s flute is %d in thick', (name, inches) => {
    expect(Math.abs(flutes[name] - inches * inch)).toBeLessThanOrEqual(0.00005)
    expect(fluteTable[name]).toMatchObject({ wall: 'single', basis: 'published' })
  })

  it('double-wall board is not from a published table', () => {
    expect(fluteTable.BC).toEqual({ thickness: 0.007, wall: 'double', basis: 'common practice, no source' })
    expect(fluteTable.EB).toEqual({ thickness: 0.0048, wall: 'double', basis: 'from memory, low confidence' })
  })
})

describe('seams, flaps and blank', () => {
  it('united size of 400 x 300 x 300 mm is 1 m, 39.4 in', () => {
    const size = { length: 0.4, width: 0.3, height: 0.3 }
    expect(unitedSize(size)).toBeCloseTo(1, 12)
    expect(unitedInches(size).toFixed(1)).toBe('39.4')
    expect(seamLength(size)).toBe(0.4)
  })

  it('inner flaps of a 600 x 300 mm case leave 300 mm, of a square one nothing', () => {
    expect(innerFlapGap(0.6, 0.3)).toBeCloseTo(0.3, 12)
    expect(innerFlapGap(0.3, 0.3)).toBe(0)
    expect(innerFlapGap(0.2, 0.3)).toBe(0)
  })

  it('blank of 400 x 300 x 250 mm in C flute: 1448 mm by 562 mm', () => {
    // 2 x (400 + 4) + 2 x (300 + 4) + 32; flaps of 152 each way and 250 + 8 between
    expect(flapLength(0.3, 0.004)).toBeCloseTo(0.152, 12)
    const blank = blankSize({ length: 0.4, width: 0.3, height: 0.25 }, 0.004)
    expect(blank.length).toBeCloseTo(1.448, 12)
    expect(blank.width).toBeCloseTo(0.562, 12)
  })

  it('gaps of 1/8 in (common practice, no source) and 1/4 in (US Army FM 38-701)', () => {
    expect(tightSeamGap).toBeCloseTo(0.003175, 12)
    expect(widestSeamGap).toBeCloseTo(0.00635, 12)
  })
})
