/** The board table and US units against what is printed of them. */
import { describe, expect, it } from 'vitest'
import { type BoardRow, boardRows, eFluteRows } from '../../src/trade/board.js'
import type { Wall } from '../../src/trade/case.js'
import * as us from '../../src/trade/us-units.js'

/** The row of a wall up to `weight` kg, held to what copies print of it: cm, kN/m. */
function rowAsPrinted(wall: Wall, weight: number, united: number, ect: number): BoardRow {
  const row = boardRows.find((each) => each.wall === wall && Math.abs(each.weight - weight) <= 0.05)!
  expect(Math.abs(row.united * 100 - united)).toBeLessThanOrEqual(0.5 + 1e-9)
  expect(Math.abs(row.ect / 1000 - ect)).toBeLessThanOrEqual(0.005)
  return row
}

describe('US units in SI', () => {
  // NIST Special Publication 811, appendix B.9, to the seven digits printed
  it.each([
    ['pound', us.pound, '0.4535924'],
    ['pound-force', us.poundForce, '4.448222'],
    ['pound-force an inch', us.poundForcePerInch, '175.1268'],
    ['psi', us.psi, '6894.757'],
    ['foot a minute', us.foot / 60, '0.005080000'],
  ])('%s', (_, value, printed) => {
    expect(value.toPrecision(7)).toBe(printed)
  })
})

describe('Item 222 / Rule 41', () => {
  // National Motor Freight Classification, Item 222, and Uniform Freight Classification, Rule 41, from two trade copies that agree:
  // kg, cm, kPa, kN/m, as rounded there
  it.each([
    ['single', 9.1, 102, 862, 4.03],
    ['single', 15.9, 127, 1034, 4.55],
    ['single', 22.7, 152, 1207, 5.08],
    ['single', 29.5, 190, 1379, 5.6],
    ['single', 36.3, 216, 1724, 7.01],
    ['single', 43.1, 241, 1896, 7.71],
    ['single', 54.4, 267, 2413, 9.63],
    ['double', 36.3, 216, 1379, 7.36],
    ['double', 45.4, 241, 1896, 8.41],
    ['double', 54.4, 267, 2413, 8.93],
    ['double', 63.5, 279, 2758, 10.68],
    ['double', 72.6, 292, 3447, 12.43],
    ['double', 81.6, 305, 4137, 14.36],
  ] as const)('%s wall up to %d kg', (wall, weight, united, burst, ect) => {
    const row = rowAsPrinted(wall, weight, united, ect)
    expect(row.basis).toBe('published')
    expect(Math.abs(row.burst! / 1000 - burst)).toBeLessThanOrEqual(0.5)
  })

  // same tables; edge crush of triple wall and all of E flute are not confirmed by a second copy
  it.each([
    [108.9, 279, 11.73],
    [117.9, 292, 14.01],
    [127, 305, 15.76],
    [136.1, 318, 19.61],
  ])('triple wall up to %d kg, edge crush from memory', (weight, united, ect) => {
    const row = rowAsPrinted('triple', weight, united, ect)
    expect(row.basis).toBe('from memory, low confidence')
    expect(row.burst).toBeNull()
  })

  it('E flute, from one trade copy: 35 lb, 50 in, 150 psi, 26 lb/in and 50 lb, 60 in, 200 psi, 32 lb/in', () => {
    const printed = eFluteRows.map(({ weight, united, burst, ect }) =>
      [weight / us.pound, united / us.inch, burst! / us.psi, ect / us.poundForcePerInch].map(Math.round),
    )
    expect(printed).toEqual([
      [35, 50, 150, 26],
      [50, 60, 200, 32],
    ])
    expect(eFluteRows.every(({ basis }) => basis !== 'published')).toBe(true)
  })

  it('has no other rows', () => {
    expect(boardRows).toHaveLength(7 + 6 + 4)
  })
})
