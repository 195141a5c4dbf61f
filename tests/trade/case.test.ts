/** Case geometry worked by hand. */
import { describe, expect, it } from 'vitest'
import {
  flutes,
  fluteTable,
  outsideFromInside,
  tightSeamGap,
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
    expect(fluteTable[name]).toMatchObject({ wall: 'single' })
  })

  it('double-wall board is 7 mm (common practice, no source) and 4.8 mm (from memory, low confidence) thick', () => {
    expect(fluteTable.BC).toEqual({ thickness: 0.007, wall: 'double' })
    expect(fluteTable.EB).toEqual({ thickness: 0.0048, wall: 'double' })
  })
})

describe('size and seam', () => {
  it('united size of 400 x 300 x 300 mm is 1 m, 39.4 in', () => {
    const united = unitedSize({ length: 0.4, width: 0.3, height: 0.3 })
    expect(united).toBeCloseTo(1, 12)
    expect((united / inch).toFixed(1)).toBe('39.4')
  })

  it('gaps of 1/8 in (common practice, no source) and 1/4 in (US Army FM 38-701)', () => {
    expect(tightSeamGap).toBeCloseTo(0.003175, 12)
    expect(widestSeamGap).toBeCloseTo(0.00635, 12)
  })
})
