/** The cautions name each danger and defer to those who decide. */
import { describe, expect, it } from 'vitest'
import { cautionLine, cautions } from '../../src/trade/cautions.js'

const text = cautions.join('\n')

describe('cautions', () => {
  it.each([
    ['nips', /in-running nips/],
    ['the blade', /covered by a spring guard but sharp/],
    ['threading', /isolate power and release air before loading or threading/],
    ['jams', /Clear jams only with the machine stopped and isolated.*29 CFR 1910\.147; ISO 14118/],
    ['the emergency stop', /emergency stop alone is not isolation/],
    ['guards and interlocks', /Do not bypass guards or interlocks/],
    ['conveyors that feed a stopped one', /No conveyor may feed one that stands/],
    ['lifting', /lifting of rolls.*heavy cases/],
    ['board limits', /united inches must not exceed/],
    ['closure tests', /proved.*ASTM D4169, ISTA/],
    ['competent persons', /competent person.*ISO 12100.*EN 415-7/],
    ['local codes, manual, licence', /Local codes, the machine’s manual and licensed practice come before/],
  ])('speak of %s', (_, words) => {
    expect(text).toMatch(words)
  })

  it('open with what the program is not', () => {
    expect(cautions[0]).toMatch(/^Planning aid only.*no safety assessment/)
  })

  it('have a short form of one line', () => {
    expect(cautionLine.length).toBeLessThanOrEqual(80)
    expect(cautionLine).toMatch(/isolate.*manual and local codes/)
  })
})
