/** Cost of a shift element by element, worked by hand: energy, maintenance, closures that open later, and a year of it. */
import { describe, expect, it } from 'vitest'
import { estimate, measureNamed, studyMeasures } from '../../src/answers/figures.js'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'
import { reader } from './shift.js'

/**
 * A case each 10 s, sealed in 4 s: of 100 s nine are out, at 14, 24 ... 94 s, and the tenth later. The line draws 36 kW,
 * a kilowatt-hour a shift; 24 000 were bought, of which 4 % a year are 2 in each of 480 shifts.
 */
const text = (shift: string, changes: [string, string][] = []) =>
  changes.reduce(
    (all, [from, to]) => {
      expect(all).toContain(from)
      return all.replace(from, to)
    },
    `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 10 s}}
line: {a: {type: station, time: 3 s}, b: {type: station, time: 1 s}}
shift: ${shift}
closure: {reopens: {chance: 10 %, cost: 14 EUR, repair: 5 min}}
crew: {one: {people: 2, does: [jams]}, two: {people: 1, does: [breakdowns]}}
money:
  currency: EUR
  labour: 36 EUR/h
  energy: 0.2 EUR/kWh
  power: {line.a: 30 kW, line.b: 6 kW}
  maintenance: 4 %
  shifts: 480 per yr
  capital: {line.a: 20000 EUR, line.b: 4000 EUR}
`,
  )

function run(written: string, countFrom = 0) {
  const { scenario } = loadScenario(written)
  const line = new Line(scenario)
  line.countFrom = countFrom
  const shifts = [1, 2].map((shift) => line.simulate('cost', shift))
  const read = reader(line, shifts[0]!)
  return {
    line,
    element: (key: string) => read(`measures.cost-per-1000${key === '' ? '' : `-${key}`}`),
    yearly: () => read('measures.cost-per-year'),
    output: () => read('measures.output'),
    /** The figure of the study of two shifts. */
    figure(name: string) {
      const measure = measureNamed(studyMeasures(line.columns, scenario.shift.campaign), name)!
      return estimate(measure, shifts, { confidence: 0.95, exposure: 1 }, null).mean
    },
  }
}

const elements = ['labour', 'energy', 'maintenance', 'failures', 'failure-repair'] as const

describe('of one shift of 100 s', () => {
  const { element, yearly, output, figure, line } = run(text('{length: 100 s}'))
  // three people at a cent a second; 1 kWh; 0.9 closures at 14; the same at five minutes of 36 an hour
  const byHand = { labour: 3, energy: 0.2, maintenance: 2, failures: 12.6, 'failure-repair': 2.7 }

  it.each(elements)('%s', (key) => {
    expect(output()).toBe(9)
    expect(element(key)).toBeCloseTo(byHand[key], 12)
    expect(figure(`cost-per-1000-${key}`)).toBeCloseTo(byHand[key] / 0.009, 9)
  })

  it('together 20.5, 480 times a year', () => {
    expect(element('')).toBeCloseTo(20.5, 12)
    expect(yearly()).toBeCloseTo(9840, 9)
    expect(figure('cost-per-year')).toBeCloseTo(9840, 9)
    expect(figure('cost-per-1000')).toBeCloseTo(20.5 / 0.009, 9)
  })

  it('names what is not priced', () => {
    expect(line.costLeftOut).toEqual(['tape', 'stops of the sealers', 'capital recovery'])
  })
})

describe('with a run-out of 10 s', () => {
  it('people and power count for 110 s, what was bought for the shift', () => {
    const { element, output } = run(text('{length: 100 s, run-out: 10 s}'))
    expect(output()).toBe(10)
    expect(element('labour')).toBeCloseTo(3.3, 12)
    expect(element('energy')).toBeCloseTo(0.22, 12)
    expect(element('maintenance')).toBeCloseTo(2, 12)
    expect(element('failures')).toBeCloseTo(14, 12)
    expect(element('failure-repair')).toBeCloseTo(3, 12)
  })
})

describe('of a campaign of three', () => {
  const { element, yearly, figure, output } = run(text('{length: 100 s, start: carry-over, campaign: 3}'))

  it('sums over its shifts: 29 cases out of 30, three times what each shift costs', () => {
    // the case of 100 s is out at 104, in the next shift: 9 + 10 + 10
    expect(output()).toBeCloseTo(29 / 3, 12)
    expect(element('labour')).toBeCloseTo(9, 12)
    expect(element('energy')).toBeCloseTo(0.6, 12)
    expect(element('maintenance')).toBeCloseTo(6, 12)
    expect(element('failures')).toBeCloseTo(2.9 * 14, 12)
    expect(element('failure-repair')).toBeCloseTo(2.9 * 3, 12)
    expect(element('')).toBeCloseTo(64.9, 12)
    expect(figure('cost-per-1000-failures')).toBeCloseTo(1400, 9)
    expect(figure('cost-per-1000-maintenance')).toBeCloseTo(6 / 0.029, 9)
  })

  it('a year is 480 shifts, not campaigns', () => {
    expect(yearly()).toBeCloseTo((64.9 / 3) * 480, 9)
    expect(figure('cost-per-year')).toBeCloseTo(10_384, 9)
  })

  it('the same of the last two, counted from 100 s: 20 cases', () => {
    const last = run(text('{length: 100 s, start: carry-over, campaign: 3}'), 100)
    expect(last.output()).toBeCloseTo(10, 12)
    expect(last.element('maintenance')).toBeCloseTo(4, 12)
    expect(last.element('energy')).toBeCloseTo(0.4, 12)
    expect(last.element('failures')).toBeCloseTo(28, 12)
    // 6 + 0.4 + 4 + 28 + 6
    expect(last.yearly()).toBeCloseTo((44.4 / 2) * 480, 9)
  })
})

describe('of a shift that is counted in part, from 32 s', () => {
  it('has 0.68 of what a shift costs, and seven cases: of a year as if all were like it', () => {
    // out at 34, 44 ... 94
    const { element, yearly, figure } = run(text('{length: 100 s}'), 32)
    expect(element('labour')).toBeCloseTo(0.68 * 3, 12)
    expect(element('energy')).toBeCloseTo(0.68 * 0.2, 12)
    expect(element('maintenance')).toBeCloseTo(0.68 * 2, 12)
    expect(element('failures')).toBeCloseTo(9.8, 12)
    expect(element('failure-repair')).toBeCloseTo(2.1, 12)
    expect(element('')).toBeCloseTo(15.436, 12)
    expect(yearly()).toBeCloseTo((15.436 / 0.68) * 480, 9)
    expect(figure('cost-per-1000-energy')).toBeCloseTo(0.136 / 0.007, 9)
  })
})

describe('what is not given', () => {
  it.each([
    ['energy: 0.2 EUR/kWh', 'energy'],
    ['power: {line.a: 30 kW, line.b: 6 kW}', 'energy'],
    ['maintenance: 4 %', 'maintenance'],
    ['capital: {line.a: 20000 EUR, line.b: 4000 EUR}', 'maintenance'],
  ])('without %s no %s', (line, key) => {
    const { line: built, element } = run(text('{length: 100 s}', [[`  ${line}\n`, '']]))
    expect(built.costLeftOut).toContain(key)
    expect(() => element(key)).toThrow('no measure')
  })

  it('without shifts a year no yearly cost and no maintenance of a shift', () => {
    const { element, yearly } = run(text('{length: 100 s}', [['  shifts: 480 per yr\n', '']]))
    expect(() => yearly()).toThrow('no measure')
    expect(() => element('maintenance')).toThrow('no measure')
    expect(element('')).toBeCloseTo(18.5, 12)
  })

  it('without labour closures are not closed again, without cost they cost only that', () => {
    const noWage = run(text('{length: 100 s}', [['  labour: 36 EUR/h\n', '']]))
    expect(() => noWage.element('failure-repair')).toThrow('no measure')
    expect(noWage.element('failures')).toBeCloseTo(12.6, 12)
    const noCost = run(text('{length: 100 s}', [['cost: 14 EUR, ', '']]))
    expect(() => noCost.element('failures')).toThrow('no measure')
    expect(noCost.element('failure-repair')).toBeCloseTo(2.7, 12)
  })

  it('no power is priced at nothing where it is said to be none', () => {
    expect(run(text('{length: 100 s}', [['{line.a: 30 kW, line.b: 6 kW}', '{}']])).element('energy')).toBe(0)
  })
})
