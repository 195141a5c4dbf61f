/**
 * The closure index: ratios of the shear formula t = n w L^2 / (2 h F) of S. Abbott's text on practical adhesion, in which
 * viscosity and thickness drop out.
 */
import { describe, expect, it } from 'vitest'
import { compareClosures } from '../../src/hand/closing.js'
import { handCalculation } from '../../src/hand/hand.js'
import { loadedWith } from './line.js'

function compared(sets: readonly string[]) {
  const { scenario } = loadedWith(sets)
  return compareClosures(scenario, handCalculation(scenario).line)!
}

const of = (sets: readonly string[], width: number) => compared(sets).rows.find((row) => row.width === width)!

const reference = 'closure={seam-gap: 0 mm, centring-error: 0 mm, reference: {width: 48 mm, leg: 70 mm}}'

describe('closure index', () => {
  it('is one for the reference itself', () => {
    expect(of([reference], 0.048).index).toEqual({ leg: 1, peel: 1, seam: 1, coverage: 1 })
  })

  it('of 72 mm over 48 mm: legs and peel 1.5, seam 2.25', () => {
    expect(of([reference], 0.072).index).toEqual({
      leg: expect.closeTo(1.5, 12),
      peel: expect.closeTo(1.5, 12),
      seam: expect.closeTo(2.25, 12),
      coverage: expect.closeTo(1.5, 12),
    })
  })

  it('of legs of 70 mm over 50 mm: 1.96', () => {
    const { index } = of(['closure={reference: {width: 48 mm, leg: 50 mm}}'], 0.048)
    expect(index!.leg).toBeCloseTo(1.96, 12)
  })

  it('of a gap of 3 mm and 5 mm off centre: 0.53 with 48 mm, 1.51 with 72 mm, over 48 mm laid true', () => {
    const sloppy = 'closure={seam-gap: 3 mm, centring-error: 5 mm, reference: {width: 48 mm, leg: 70 mm}}'
    // (45 / 2 - 5)^2 / 24^2 and (69 / 2 - 5)^2 / 24^2
    expect(of([sloppy], 0.048).index!.seam).toBeCloseTo(17.5 ** 2 / 24 ** 2, 12)
    expect(of([sloppy], 0.072).index!.seam).toBeCloseTo(29.5 ** 2 / 24 ** 2, 12)
    expect(of([sloppy], 0.048).coverage).toBeCloseTo(0.0175, 12)
    expect(compared([sloppy]).notes.join(' ')).toContain('which makes the other closures look worse')
  })

  it('goes down with the load, as a share or as a force, and with the weight of lighter cases', () => {
    const load = (text: string) =>
      `closure={load: ${text}, reference: {width: 48 mm, leg: 70 mm, load: 40 N}}`
    expect(of([load('125 %')], 0.048).index!.leg).toBeCloseTo(0.8, 12)
    expect(of([load('50 N')], 0.048).index!.leg).toBeCloseTo(0.8, 12)
    const two = [
      'cases.box.weight=6 kg',
      'cases={box: {length: 400 mm, width: 300 mm, height: 300 mm, weight: 6 kg}, big: {length: 400 mm, width: 300 mm, height: 300 mm, weight: 12 kg}}',
      load('50 N'),
    ]
    expect(of(two, 0.048).index!.leg).toBeCloseTo(1.6, 12)
  })

  it('is not told without a closure that is known to hold, and its seam not without gap and centring', () => {
    expect(of(['closure={seam-gap: 2 mm, centring-error: 3 mm}'], 0.048).index).toBeNull()
    const bare = of(['closure={reference: {width: 48 mm, leg: 70 mm}}'], 0.072)
    expect(bare.index).toMatchObject({ leg: expect.closeTo(1.5, 12), seam: null, coverage: null })
    expect(bare.coverage).toBeNull()
  })

  it('stands beside what a width costs: 1.5 times the mass and price, heads that cannot take it, and what must be spared', () => {
    const priced = ['tape.price=40 EUR/roll', 'tape.roll=1080 m', 'cases.box.contents-value=50 EUR']
    const { widths, breakEven } = compared(priced)
    const [two, three] = widths
    // 2 strips of 0.54 m are a thousandth of the roll: 1000 cases use one
    expect(two).toMatchObject({ width: 0.048, isChosen: true, unfit: [], cost: expect.closeTo(40, 9) })
    expect(three).toMatchObject({
      width: 0.072,
      unfit: ['sealer top', 'sealer bottom'],
      cost: expect.closeTo(60, 9),
    })
    expect(three!.mass / two!.mass).toBeCloseTo(1.5, 12)
    // 20 EUR more for 1000 cases, 50 EUR lost with each that opens
    expect(breakEven).toBeCloseTo(0.4, 9)
    expect(compared(['tape.price=40 EUR/roll']).breakEven).toBeNull()
  })
})
