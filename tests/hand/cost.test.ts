/** Cost of a shift by hand, element by element, as designs are put in order by it. */
import { describe, expect, it } from 'vitest'
import { shiftCostByHand } from '../../src/hand/hand.js'
import { loadScenario } from '../../src/scenario/load.js'

/** A case of 400 mm with legs of 50 mm takes 0.5 m of tape a head, 1 m in all: 1000 of them a roll of 1000 m. */
const text = (money: string, others = '') => `title: priced
cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 10 s, when-full: queue}}
line:
  infeed: {type: conveyor, length: 5 m}
  sealer: {type: sealer, roll-change: {time: 60 s, low-tape-warning: 10 m}}
tape: {width: 48 mm, roll: 1000 m, leg: 50 mm, stretch: 0 %, lost-per-roll: 0 m${others}}
crew: {operator: {people: 2, does: [roll-change]}}
shift: {length: 8 h, breaks: [{at: 4 h, for: 30 min}]}
${money}
`
const cost = (money: string, rate: number, others = '', sets: string[] = []) =>
  shiftCostByHand(loadScenario(text(money, others), { sets }).scenario, rate)

/** 7.5 h of working time at 0.1 a second are 2700 cases. */
const working = 7.5 * 3600

describe('the cost of a shift by hand', () => {
  it('is not known where nothing is priced', () => {
    expect(cost('', 0.1)).toBeNull()
    expect(cost('money: {currency: EUR}', 0.1)).toBeNull()
  })

  it('people are paid for the whole shift, whatever it puts out', () => {
    // 2 people x 30 EUR x 8 h
    for (const rate of [0, 0.05, 0.1, 1])
      expect(cost('money: {currency: EUR, labour: 30 EUR/h}', rate)).toBeCloseTo(480, 9)
    const one = ['crew.operator.people=1']
    expect(cost('money: {currency: EUR, labour: 30 EUR/h}', 0.1, '', one)).toBeCloseTo(240, 9)
  })

  it('energy, maintenance and capital are paid by the shift too', () => {
    // 10 kW x 8 h x 0.20 EUR
    const energy = 'energy: 0.2 EUR/kWh, power: {line.sealer: 10 kW}'
    expect(cost(`money: {currency: EUR, ${energy}}`, 0.3)).toBeCloseTo(16, 9)
    // 9600 EUR over 10 years of 365.25 days without interest and 480 shifts a year; 5 % of it a year
    const bought = 'life: 87660 h, interest: 0 %, shifts: 480 per yr, capital: {line.sealer: 9600 EUR}'
    expect(cost(`money: {currency: EUR, ${bought}}`, 0.3)).toBeCloseTo(2, 9)
    expect(cost(`money: {currency: EUR, ${bought}, maintenance: 5 %}`, 0.3)).toBeCloseTo(3, 9)
  })

  it('a conveyor that is priced by the metre costs more the longer it is', () => {
    // 960 EUR/m x 5 m over 10 years of 365.25 days and 480 shifts: 1 EUR a shift, and 0.20 EUR each metre
    const money =
      'money: {currency: EUR, life: 87660 h, interest: 0 %, shifts: 480 per yr, capital: {line.infeed: 960 EUR/m}}'
    expect(cost(money, 0.1)).toBeCloseTo(1, 9)
    expect(cost(money, 0.1, '', ['line.infeed.length=8 m'])).toBeCloseTo(1.6, 9)
  })

  it('tape is paid by the case: for so many as are promised, not as many as the line would put out', () => {
    // 1 m a case at 40 EUR a roll of 1000 m
    const money = 'money: {currency: EUR}'
    for (const rate of [0.05, 0.08])
      expect(cost(money, rate, ', price: 40 EUR/roll')).toBeCloseTo(rate * working * 0.04, 9)
    expect(cost(money, 0, ', price: 40 EUR/roll')).toBe(0)
  })

  it('both together', () => {
    const money = 'money: {currency: EUR, labour: 30 EUR/h}'
    expect(cost(money, 0.05, ', price: 40 EUR/roll')).toBeCloseTo(480 + 1350 * 0.04, 9)
  })

  it('closures that open later are paid by the case, and so is the work of closing them again', () => {
    const reopens = 'closure: {reopens: {chance: 1 %, cost: 3 EUR, repair: 6 min}}'
    // 1350 cases x 1 % x 3 EUR; a tenth of an hour at 30 EUR for each of those 13.5
    expect(cost(`money: {currency: EUR}\n${reopens}`, 0.05)).toBeCloseTo(40.5, 9)
    expect(cost(`money: {currency: EUR, labour: 30 EUR/h}\n${reopens}`, 0.05)).toBeCloseTo(
      480 + 40.5 + 40.5,
      9,
    )
  })

  it('does not depend on how fast the line could go: belts that are faster cost no more', () => {
    const money = 'money: {currency: EUR, labour: 30 EUR/h}'
    const at = (speed: string) =>
      cost(money, 0.05, ', price: 40 EUR/roll', [`line.sealer.belt-speed=${speed}`])
    expect(at('6 m/min')).toBeCloseTo(at('24 m/min')!, 9)
  })
})
