/** What the report of a sizing says, in words worked out by hand. */
import { describe, expect, it } from 'vitest'
import { reportPage } from '../../src/report/page.js'
import { sizeReport } from '../../src/report/size.js'
import { terminalReport } from '../../src/report/terminal.js'
import type { SizeResult } from '../../src/study/size-result.js'
import { hostile } from './compared.js'
import { sizedResult as result, sized } from './sized.js'

const told = (of: SizeResult) => sizeReport(of).headline
const terminal = (of: SizeResult) =>
  terminalReport(sizeReport(of), { bold: (text: string) => text, width: 100 })

describe('the headline', () => {
  it('names the pick, its cost, its margin, what is next to it and what was passed over', () => {
    expect(told(result)).toEqual([
      'Choose line.infeed.length = 6 m, line.sealer.belt-speed = 30 m/min: the cheapest design that holds 9 cases/min in 90 % of shifts. By hand a shift costs 101.00 EUR.',
      'Its margin: 94 % (89 to 99 %), 4 points to spare, in 100 shifts.',
      'The next cheaper one that was simulated, with line.infeed.length = 4 m, costs 1.00 EUR a shift less and does not hold it: 60 % (55 to 65 %), 30 points short, in 100 shifts.',
      'Not told in 2\u2009000 shifts, and passed over: line.infeed.length = 6 m, line.sealer.belt-speed = 20 m/min (90 % (85 to 95 %)). Allow more --shifts, or count more as either with "within".',
    ])
  })

  it('tells one that costs the same, and then one that costs less', () => {
    const designs = result.designs.map((each, index) =>
      index === 4 ? sized(5, each.set, 101, 0.89, 'refused') : each,
    )
    expect(told({ ...result, designs, nextCheaper: 4 }).slice(2)).toEqual([
      'The next one before it, with line.sealer.belt-speed = 20 m/min, costs the same and does not hold it: 89 % (84 to 94 %), 1 point short, within the 2 points that may go either way, in 100 shifts.',
      'The next cheaper one that was simulated, with line.infeed.length = 4 m, costs 1.00 EUR a shift less and does not hold it: 60 % (55 to 65 %), 30 points short, in 100 shifts.',
    ])
    // half a cent is no difference
    const almost = designs.map((each) => ({ ...each, cost: each.cost === null ? null : each.cost / 1000 }))
    expect(told({ ...result, designs: almost, nextCheaper: 4 }).join(' ')).not.toContain('0.00 EUR')
  })

  it('speaks of the order where nothing is priced', () => {
    const designs = result.designs.map((each) => ({ ...each, cost: null }))
    const lines = told({ ...result, designs })
    expect(lines[0]).toContain('the first design in the order below that holds')
    expect(lines.join(' ')).not.toContain('EUR')
    expect(lines[2]).toContain('The next one before it that was simulated, with line.infeed.length = 4 m,')
  })

  it('of a mean that is at most: what is to spare, in its unit', () => {
    const promises = [
      {
        ...{ promise: 'time-in-system <= 5 min', measure: 'time-in-system', label: 'Time in the line' },
        ...{ unit: 's', value: 300, isLeast: false, near: 20 },
      },
    ]
    const designs = result.designs.map((each) => ({
      ...each,
      promises: [{ mean: 285, low: 280, high: 290 }],
    }))
    expect(told({ ...result, promises, designs })[1]).toBe(
      'Its margin: 285 ± 5 s, 15 s to spare, within the 20 s that may go either way, in 100 shifts.',
    )
    expect(sizeReport({ ...result, promises, designs }).certainty[0]).toContain(
      'simulating refused no design before the pick that keeps time-in-system at most 280 s, and the pick keeps time-in-system at most 320 s.',
    )
  })

  it('says why there is none', () => {
    const refused = result.designs.filter(({ verdict }) => verdict === 'refused')
    const none = { ...result, pick: null, nextCheaper: null }
    expect(told({ ...none, designs: refused })).toEqual([
      'None of the 9 designs holds 9 cases/min in 90 % of shifts: widen the choices.',
    ])
    expect(told(none)[0]).toContain('No design is chosen: 1 design could not be told in 2\u2009000 shifts')
  })
})

it('says what the confidence is of: shares between 88 and 92 % may go either way', () => {
  expect(sizeReport(result).certainty).toEqual([
    '95 % confidence in the whole procedure: simulating refused no design before the pick that keeps 9 cases/min in at least 92 % of shifts, and the pick keeps 9 cases/min in at least 88 % of shifts. What lies between may go either way. (Sequential tests after Wald, all designs on the same random numbers, the risk shared out among them.)',
    'It took 5 designs and 500 shifts; 2 designs more were refused without simulating (all 9 designs for 2\u2009000 shifts each would be 18\u2009000 shifts).',
  ])
  // of 90 %, give or take 20 points, the test itself ends halfway to all: 95 %
  const wide = { ...result, promises: [{ ...result.promises[0]!, near: 0.2 }] }
  expect(sizeReport(wide).certainty[0]).toContain('keeps 9 cases/min in at least 95 % of shifts, and')
})

it('says nothing of designs that were not there: the first one picked, none refused without simulating', () => {
  const first = { ...result, designs: [sized(1, { a: 1 }, 3, 0.95, 'accepted')], pick: 0, nextCheaper: null }
  expect(told(first).at(-1)).toBe('No design costs less.')
  expect(sizeReport(first).certainty[1]).not.toContain('0 designs')
  const free = { ...first, designs: [sized(1, { a: 1 }, null, 0.95, 'accepted')] }
  expect(told(free).at(-1)).toBe('It is the first of all in the order.')
  const second = { ...first, designs: [sized(2, { a: 1 }, 3, 0.95, 'accepted')] }
  expect(told(second).at(-1)).toContain('No cheaper design was simulated')
})

describe('the tables', () => {
  it('of designs: one line a design, without a column twice', () => {
    const text = terminal(result)
    expect(text).toContain(
      [
        'Designs that were simulated, in order of cost',
        '1 simulated design that costs more and all others that were told stand in designs.csv. A design is',
        'length, belt-speed.',
        ' design           cost, EUR          holds it in    shifts    verdict',
        ' 4 m, 20 m/min       100.00    40 % (35 to 45 %)       100    fails',
        ' 4 m, 30 m/min       100.00    60 % (55 to 65 %)       100    fails',
        ' 6 m, 20 m/min       101.00    90 % (85 to 95 %)       100    not told',
        ' 6 m, 30 m/min       101.00    94 % (89 to 99 %)       100    the pick',
      ].join('\n'),
    )
    expect(text.split('\n').filter((line) => line.length > 100)).toEqual([])
  })

  it('names choices by the end of their paths that tells them apart, and what is alike in all', () => {
    const set = (infeed: number, outfeed: number) => ({
      'line.infeed.length': `${infeed} m`,
      'line.outfeed.length': `${outfeed} m`,
      'crew.operator.people': 1,
    })
    const text = terminal({
      ...result,
      choices: [
        { path: 'line.infeed.length', values: ['4 m', '6 m'] },
        { path: 'line.outfeed.length', values: ['2 m', '3 m'] },
        { path: 'crew.operator.people', values: [1, 2] },
      ],
      designs: [sized(1, set(4, 2), 1, 0.4, 'refused'), sized(2, set(6, 3), 2, 0.95, 'accepted')],
      pick: 1,
      nextCheaper: 0,
    })
    expect(text.replace(/\s+/g, ' ')).toContain(
      'A design is infeed.length, outfeed.length. In all of these crew.operator.people = 1.',
    )
  })

  it('of what was refused without simulating: in words', () => {
    expect(terminal(result)).toMatch(
      /the target is above what a piece can do +1\n no better than one that was refused +1\n/,
    )
  })
})

it('keeps a hostile title as text', () => {
  expect(reportPage(sizeReport(result), [])).not.toContain(hostile)
  expect(terminal(result)).toContain(hostile)
})
