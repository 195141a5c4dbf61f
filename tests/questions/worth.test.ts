/** What a design is worth against another: worked by hand and with published interest tables; prices are invented. */
import { describe, expect, it } from 'vitest'
import type { Interval } from '../../src/answers/difference-figure.js'
import { type Worth, worth } from '../../src/questions/compare/worth.js'
import { loadScenario } from '../../src/scenario/load.js'

/** A scenario with these sections beside the ones that every scenario has. */
const scenario = (sections = '') =>
  loadScenario(`title: worth
cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}}
arrivals: {p: {time-between: 10 s}}
line: {sealer: {type: sealer}}
shift: {length: 8 h}
${sections}`)

const money = (capital: number | null, rest = 'life: 8 yr, interest: 8 %') =>
  `money: {currency: EUR, labour: 31.2 EUR/h, shifts: 480 per yr, ${rest}${
    capital === null ? '' : `, capital: {line.sealer: ${capital} EUR}`
  }}\n`

const interval = (mean: number, low: number, high: number): Interval => ({ mean, low, high })

/** A design against a base of 26 000, with what its running costs differ by on 1000 cases. */
const against = (
  capital: number,
  running: Interval | null,
  rest?: string,
  cases: number | null = 2e6,
): Worth => worth(scenario(money(capital, rest)), scenario(money(26_000, rest)), running, null, cases)

function expectInterval(found: Interval | null, mean: number, low: number, high: number, digits = 6): void {
  expect(found?.mean).toBeCloseTo(mean, digits)
  expect(found?.low).toBeCloseTo(low, digits)
  expect(found?.high).toBeCloseTo(high, digits)
}

describe('an investment that saves', () => {
  // 2 ± 0.5 less on 1000 of two million cases
  const found = against(29_500, interval(-2, -2.5, -1.5))

  it('3500 more saves 4000 a year, 3000 to 5000: the ends change places', () => {
    expect(found.investment).toBe(3500)
    expectInterval(found.yearlySaving, 4000, 3000, 5000)
    expect(found).toMatchObject({ yearlyCases: 2e6, years: 8, interest: 0.08, leftOut: [], breakEven: null })
  })

  it('is paid after 0.875 years, 0.7 to 1.167: the more it saves the sooner', () => {
    expectInterval(found.payback, 0.875, 0.7, 7 / 6)
  })

  // series present worth factor (P/A, 8 %, 8) = 5.7466, (P/A, 10 %, 10) = 6.1446, (P/A, 6 %, 5) = 4.2124: compound
  // interest tables, such as Newnan, Engineering Economic Analysis, appendix C (from memory)
  it.each([
    { rest: 'life: 8 yr, interest: 8 %', factor: 5.7466 },
    { rest: 'life: 10 yr, interest: 10 %', factor: 6.1446 },
    { rest: 'life: 5 yr, interest: 6 %', factor: 4.2124 },
    { rest: 'life: 5 yr, interest: 0 %', factor: 5 },
    // years are whole, at least one
    { rest: 'life: 0.3 yr, interest: 10 %', factor: 0.9091 },
    { rest: 'life: 1.6 yr, interest: 10 %', factor: 0.9091 + 0.8264 },
  ])('its net present value with $rest is $factor savings less 3500', ({ rest, factor }) => {
    const { netPresentValue } = against(29_500, interval(-2, -2.5, -1.5), rest)
    // a factor has four decimals
    for (const [end, saving] of [
      ['mean', 4000],
      ['low', 3000],
      ['high', 5000],
    ] as const)
      expect(Math.abs(netPresentValue![end]! + 3500 - factor * saving)).toBeLessThan(1e-4 * saving)
  })

  it('what saves its annuity is worth nothing: 1000 at 10 % over 5 years are 263.80 a year', () => {
    // capital recovery factor (A/P, 10 %, 5) = 0.2638, the same tables
    const saving = -0.2638
    const { netPresentValue } = against(
      27_000,
      interval(saving, saving, saving),
      'life: 5 yr, interest: 10 %',
      1e6,
    )
    expect(Math.abs(netPresentValue!.mean!)).toBeLessThan(0.0001 * 1000 * 3.79)
  })
})

describe('an investment that may save nothing', () => {
  it('1000 a year, -1000 to 3000: has paid 6000 after 6 years, 2 at the best, or never', () => {
    const { payback, yearlySaving, netPresentValue } = against(
      32_000,
      interval(-1, -3, 1),
      'life: 2 yr, interest: 0 %',
      1e6,
    )
    expectInterval(yearlySaving, 1000, -1000, 3000)
    expect(payback).toEqual({ mean: 6, low: 2, high: null })
    expectInterval(netPresentValue, -4000, -8000, 0)
  })

  it('costs 500 more a year, saves at most 1000: at the best it payback time 6', () => {
    const { payback } = against(32_000, interval(0.5, -1, 2), undefined, 1e6)
    expect(payback).toEqual({ mean: null, low: 6, high: null })
  })

  it('always costs more: never', () => {
    expect(against(32_000, interval(2, 1, 3)).payback).toEqual({ mean: null, low: null, high: null })
  })

  it('says nothing where its costs are not known', () => {
    const nothing = { mean: Number.NaN, low: Number.NaN, high: Number.NaN }
    const { yearlySaving, payback, netPresentValue, investment } = against(32_000, nothing)
    const none = { mean: null, low: null, high: null }
    expect([yearlySaving, payback, netPresentValue, investment]).toEqual([none, none, none, 6000])
    expect(against(32_000, null)).toMatchObject({ yearlySaving: null, payback: null, netPresentValue: null })
  })
})

describe('what is cheaper to buy', () => {
  it('4000 less, 1000 ± 500 more a year over 2 years without interest: worth 2000, 1000 to 3000, no payback', () => {
    const found = against(22_000, interval(1, 0.5, 1.5), 'life: 2 yr, interest: 0 %', 1e6)
    expect(found.investment).toBe(-4000)
    expect(found.payback).toBeNull()
    expectInterval(found.yearlySaving, -1000, -1500, -500)
    expectInterval(found.netPresentValue, 2000, 1000, 3000)
  })

  it('nothing is extra purchase price: no payback, the savings are all it is worth', () => {
    const found = against(26_000, interval(-1, -1, -1), 'life: 2 yr, interest: 0 %', 1e6)
    expect([found.investment, found.payback, found.netPresentValue?.mean]).toEqual([0, null, 2000])
  })
})

describe('closures to be spared', () => {
  // 9.40 and five minutes at 31.20 an hour, 2.60: 12 each
  const closure = (chance: string, more = 'cost: 9.4 EUR, repair: 5 min') =>
    `closure: {reopens: {chance: ${chance}, ${more}}}\n`
  const tape = (width: number) => `tape: {width: ${width} mm}\n`
  const costsMore = interval(3, 2.4, 3.6)
  const wide = (design: string, base: string, cost: Interval | null = costsMore) =>
    worth(
      scenario(`${money(26_000)}${tape(50)}${design}`),
      scenario(`${money(26_000)}${tape(48)}${base}`),
      interval(0, 0, 0),
      cost,
      1e6,
    )

  it('3 more on 1000 cases at 12 each: 0.25 of 1000, 0.2 to 0.3; 1.2 less 0.15 are spared', () => {
    const { breakEven, leftOut } = wide(closure('0.15 per 1000'), closure('1.2 per 1000'))
    expectInterval(breakEven, 0.25, 0.2, 0.3)
    expect(breakEven?.spared).toBeCloseTo(1.05, 12)
    expect(leftOut).toEqual([])
  })

  it('without repair 9.40 each; a tape that costs less needs to spare none', () => {
    const cost = 'cost: 9.4 EUR'
    const { breakEven } = wide(
      closure('1 per 1000', cost),
      closure('1 per 1000', cost),
      interval(-4.7, -9.4, 0),
    )
    expectInterval(breakEven, -0.5, -1, 0)
    expect(breakEven?.spared).toBe(0)
  })

  it('that are not said to be spared: how many is not known', () => {
    const { breakEven } = wide('', closure('1.2 per 1000'))
    expectInterval(breakEven, 0.25, 0.2, 0.3)
    // the section of the base is not that of the design
    expect(breakEven?.spared).toBeNull()
  })

  it('are asked for only where tape or closure differ', () => {
    const same = worth(scenario(money(29_000)), scenario(money(26_000)), null, costsMore, 1e6)
    expect([same.breakEven, same.leftOut]).toEqual([null, []])
  })

  it('are not calculated where what one costs is not given', () => {
    const { breakEven, leftOut } = wide('', '')
    expect(breakEven).toBeNull()
    expect(leftOut).toEqual(['cost of a closure that opens later (closure.reopens)'])
  })
})

describe('what is not given', () => {
  it('is listed, and what depends on it is not calculated', () => {
    const found = worth(scenario(), scenario(), interval(-1, -2, 0), null, null)
    expect(found).toEqual({
      investment: null,
      yearlySaving: null,
      yearlyCases: null,
      years: null,
      interest: null,
      netPresentValue: null,
      payback: null,
      breakEven: null,
      leftOut: [
        'purchase prices (money.capital)',
        'shifts a year (money.shifts)',
        'life (money.life)',
        'interest (money.interest)',
      ],
    })
  })

  it('one of them alone', () => {
    const saves = interval(-1, -1, -1)
    const onlyNamed = (rest: string, what: string) =>
      expect(against(27_000, saves, rest).leftOut).toEqual([what])
    onlyNamed('life: 8 yr', 'interest (money.interest)')
    onlyNamed('interest: 8 %', 'life (money.life)')
    const noCapital = worth(scenario(money(null)), scenario(money(26_000)), saves, null, 1e6)
    expect(noCapital).toMatchObject({ leftOut: ['purchase prices (money.capital)'], netPresentValue: null })
    expectInterval(noCapital.yearlySaving, 1000, 1000, 1000)
  })
})
