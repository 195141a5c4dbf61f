/** Reading a box certificate: which row it satisfies, and what that allows. */
import { describe, expect, it } from 'vitest'
import { adequateRow, allows, limitsOf, rowsFor } from '../../src/trade/board.js'

const pound = 0.45359237
const inch = 0.0254
const perInch = 175.126835
const psi = 6894.757293

describe('a certificate', () => {
  it('of 32 lb/in single wall satisfies the first four rows: up to 65 lb and 75 in', () => {
    const certificate = { wall: 'single', ect: 32 * perInch } as const
    expect(rowsFor(certificate)).toHaveLength(4)
    expect(limitsOf(certificate)!.name).toBe('single wall, 65 lb and 75 in')
  })

  it('reads the same by burst, and takes the better of both', () => {
    expect(limitsOf({ wall: 'single', burst: 200 * psi })!.name).toBe('single wall, 65 lb and 75 in')
    expect(limitsOf({ wall: 'single', burst: 199 * psi })!.name).toBe('single wall, 50 lb and 60 in')
    expect(limitsOf({ wall: 'single', ect: 29 * perInch, burst: 200 * psi })!.name).toMatch(/65 lb/)
  })

  it('in metric loses no row by its rounding, but a weaker board does', () => {
    expect(limitsOf({ wall: 'single', ect: 5600 })!.name).toMatch(/65 lb/)
    expect(limitsOf({ wall: 'single', ect: 5590 })!.name).toMatch(/50 lb/)
    expect(limitsOf({ wall: 'double', burst: 1379e3 })!.name).toMatch(/80 lb/)
  })

  it('of 44 lb/in allows 95 lb in single wall but 80 lb in double', () => {
    expect(limitsOf({ wall: 'single', ect: 44 * perInch })!.name).toMatch(/95 lb/)
    expect(limitsOf({ wall: 'double', ect: 44 * perInch })!.name).toMatch(/80 lb/)
  })

  it('of E flute reads rows of its own', () => {
    expect(limitsOf({ wall: 'single', ect: 32 * perInch, flute: 'E' })!.name).toBe('E flute, 50 lb and 60 in')
    expect(limitsOf({ wall: 'single', ect: 32 * perInch, flute: 'C' })!.name).toMatch(/65 lb/)
  })

  it('that is weaker than the table, or says nothing, satisfies no row', () => {
    expect(limitsOf({ wall: 'single', ect: 22 * perInch })).toBeUndefined()
    expect(rowsFor({ wall: 'single' })).toEqual([])
    // triple wall is certified by puncture, so burst says nothing of it
    expect(rowsFor({ wall: 'triple', burst: 1e9 })).toEqual([])
  })
})

describe('a case', () => {
  const row = limitsOf({ wall: 'single', ect: 32 * perInch })!

  it('is held to weight and size at once, ends included', () => {
    expect(allows(row, 65 * pound, 75 * inch)).toBe(true)
    expect(allows(row, 65.1 * pound, 75 * inch)).toBe(false)
    expect(allows(row, 65 * pound, 75.1 * inch)).toBe(false)
  })

  it('asks for the weakest row that bears both', () => {
    // 40 lb asks for the 50 lb row; 40 lb in 70 in for the 65 lb row
    expect(adequateRow('single', 40 * pound, 55 * inch)!.name).toMatch(/50 lb/)
    expect(adequateRow('single', 40 * pound, 70 * inch)!.name).toMatch(/65 lb/)
    expect(adequateRow('single', 130 * pound, 70 * inch)).toBeUndefined()
    expect(adequateRow('double', 130 * pound, 70 * inch)!.name).toMatch(/140 lb/)
    expect(adequateRow('single', 60 * pound, 50 * inch, 'E')).toBeUndefined()
  })
})
