/** A tape layout by hand: three designs of one roll worked out from width, thickness and price. */
import { describe, expect, it } from 'vitest'
import { tapeLayout } from '../../src/hand/tape-layout.js'
import { loadScenario } from '../../src/scenario/load.js'

const layoutOf = (tape: string, more = '', heads = '') =>
  tapeLayout(
    loadScenario(`cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 8 s}}
line: {sealer: {type: sealer, heads: {top: {position: 1 m, takes: [36 mm, 80 mm]${heads}}}}}
tape: {roll: 1000 m, ${tape}}
shift: {length: 8 h}
${more}`).scenario,
  )!

describe('a tape layout', () => {
  it('48 mm of 48 micrometres: 28 of film at 905 kg/m3 and 20 of adhesive at 1000 weigh 45.34 g/m2', () => {
    const layout = layoutOf('width: 48 mm, thickness: 48 um, price: 30 EUR/roll')
    expect(layout.massPerMetre).toBeCloseTo(0.048 * 0.04534, 9)
    expect(layout.rollMass).toBeCloseTo(1000 * 0.048 * 0.04534, 6)
    expect(layout.pricePerMetre).toBeCloseTo(0.03, 12)
    // ring of 1000 m x 48 um around a core of 85 mm: sqrt(0.085^2 + 4 x 0.048 / pi) m
    expect(layout.rollDiameter).toBeCloseTo(Math.sqrt(0.007225 + 0.192 / Math.PI), 9)
    expect(layout.fits).toBeNull()
  })

  it('half as wide again: the mass grows with it, the diameter does not', () => {
    const [narrow, wide] = [layoutOf('width: 48 mm'), layoutOf('width: 72 mm')]
    expect(wide.massPerMetre / narrow.massPerMetre).toBeCloseTo(1.5, 12)
    expect(wide.rollDiameter).toBe(narrow.rollDiameter)
    expect(wide.pricePerMetre).toBeNull()
    expect(wide.legIndex).toBeNull()
  })

  it('against a reference that is the same closure it is 1, of 72 mm 1.5 by the legs; a drum too small is an error', () => {
    const closure =
      'closure: {seam-gap: 1 mm, centring-error: 2 mm, reference: {width: 48 mm, leg: 70 mm, seam-length: 400 mm, seam-gap: 1 mm, centring-error: 2 mm}}'
    const same = layoutOf('width: 48 mm', closure, ', drum: 300 mm')
    expect([same.legIndex, same.seamIndex, same.fits]).toEqual([1, 1, true])
    expect(layoutOf('width: 72 mm', closure).legIndex).toBeCloseTo(1.5, 12)
    const large = layoutOf('width: 48 mm', '', ', drum: 250 mm')
    expect(large.fits).toBe(false)
    expect(large.errors).toContain('roll-does-not-fit')
  })

  it('of a line without a sealer there is none', () => {
    const { scenario } = loadScenario(`cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 8 s}}
line: {end: {type: station, time: 3 s}}
shift: {length: 8 h}
`)
    expect(tapeLayout(scenario)).toBeNull()
  })
})
