/** What is given for a cost and cannot be used: by hand, and held against what the model counts. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { droppedFix, droppedOf, droppedText } from '../../src/scenario/dropped.js'
import { loadScenario } from '../../src/scenario/load.js'

const load = (money: string, others = '', line = 'sealer: {type: sealer}', sets: string[] = []) =>
  loadScenario(
    `cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}}
arrivals: {p: {time-between: 6 s}}
line: {infeed: {type: conveyor, length: 12 m}, ${line}}
shift: {length: 1 h}
${money}
${others}
`,
    { sets },
  ).scenario

const said = (...of: Parameters<typeof load>) =>
  droppedOf(load(...of)).map(({ leavesOut, given, missing }) => [
    leavesOut,
    given.join(' '),
    missing.map(({ path }) => path).join(' '),
  ])

describe('a price that cannot be used', () => {
  it('capital alone: capital recovery takes its life, the interest and the shifts of a year too', () => {
    const money = 'money: {currency: EUR, labour: 31 EUR/h, capital: {line.infeed: 900 EUR/m}}'
    expect(said(money)).toEqual([
      ['capital recovery', 'money.capital', 'money.life money.interest money.shifts'],
    ])
    const [dropped] = droppedOf(load(money))
    // 12 m at 900 EUR, and nothing of the three others
    expect(dropped!.amounts).toEqual([10_800, null, null, null])
    expect(droppedOf(load(money, '', undefined, ['line.infeed.length=18 m']))[0]!.amounts[0]).toBe(16_200)
    expect(droppedText(dropped!)).toBe(
      '`money.capital` is given, but not `money.life`, `money.interest` and `money.shifts`. So the cost does not include capital recovery.',
    )
    expect(droppedFix(dropped!)).toBe(
      'add `money.life` (such as `8 yr`), `money.interest` (such as `8 %`) and `money.shifts` (such as `480 per yr`)',
    )
  })

  it('energy without power, and the reverse; both together are counted', () => {
    expect(said('money: {currency: USD, energy: 0.2 USD/kWh}')).toEqual([
      ['energy', 'money.energy', 'money.power'],
    ])
    expect(said('money: {currency: USD, power: {line.sealer: 400 W}}')).toEqual([
      ['energy', 'money.power', 'money.energy'],
    ])
    expect(said('money: {currency: USD, energy: 0.2 USD/kWh, power: {line.sealer: 400 W}}')).toEqual([])
    const [energy] = droppedOf(load('money: {currency: USD, energy: 0.2 USD/kWh}'))
    // in the currency of the scenario, and of a piece that it has
    expect(droppedFix(energy!)).toBe('add `money.power` (such as `{line.sealer: 0.4 kW}`)')
  })

  it('maintenance without what was bought, work on closures without a wage, prices of sealing where nothing seals', () => {
    expect(said('money: {currency: EUR, maintenance: 4 %, shifts: 480 per yr}')).toEqual([
      ['maintenance', 'money.maintenance', 'money.capital'],
    ])
    expect(said('', 'closure: {reopens: {chance: 1 %, cost: 14 EUR, repair: 5 min}}')).toEqual([
      ['closing those again', 'closure.reopens.repair', 'money.labour'],
    ])
    const hand = 'desk: {type: station, time: 3 s}'
    const prices = ['money: {currency: EUR, downtime: 90 EUR/h}', 'tape: {price: 40 EUR/roll}'] as const
    expect(said(...prices, hand)).toEqual([
      ['tape', 'tape.price', 'line'],
      ['stops of the sealers', 'money.downtime', 'line'],
    ])
    expect(said(...prices)).toEqual([])
  })

  it('what is 0 is not missed, and what nobody gives is no price', () => {
    expect(said('')).toEqual([])
    expect(said('money: {currency: EUR}')).toEqual([])
    expect(said('money: {currency: EUR, labour: 31 EUR/h, shifts: 480 per yr}')).toEqual([])
    expect(said('money: {currency: EUR, maintenance: 0 %, capital: {line.sealer: 0 EUR}}')).toEqual([])
  })

  it('is what the model leaves out of what is given, whichever keys are given', () => {
    const keys: Record<string, string> = {
      labour: '31 EUR/h',
      energy: '0.2 EUR/kWh',
      power: '{line.sealer: 400 W}',
      maintenance: '4 %',
      life: '8 yr',
      interest: '8 %',
      shifts: '480 per yr',
      capital: '{line.sealer: 24000 EUR}',
    }
    /** Keys that serve one element alone. */
    const own: Record<string, string[]> = {
      energy: ['energy', 'power'],
      maintenance: ['maintenance'],
      'capital recovery': ['capital', 'life', 'interest'],
      'closing those again': ['repair'],
    }
    fc.assert(
      fc.property(fc.subarray(Object.keys(keys)), fc.boolean(), (given, isRepaired) => {
        const scenario = load(
          `money: {${['currency: EUR', ...given.map((key) => `${key}: ${keys[key]}`)].join(', ')}}`,
          isRepaired ? 'closure: {reopens: {chance: 1 %, repair: 5 min}}' : '',
        )
        const leftOut = new Line(scenario).costLeftOut
        const named = isRepaired ? [...given, 'repair'] : given
        const expected = Object.keys(own).filter(
          (element) => leftOut.includes(element) && own[element]!.some((key) => named.includes(key)),
        )
        expect(droppedOf(scenario).map(({ leavesOut }) => leavesOut)).toEqual(expected)
      }),
      { seed: 1 },
    )
  })
})
