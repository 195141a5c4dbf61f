/** What the report of a sizing says, in words worked out by hand. */
import { describe, expect, it } from 'vitest'
import { reportPage } from '../../src/page/html.js'
import { reportOf } from '../../src/questions/report-of-document.js'
import { isShown, type SizeResult } from '../../src/questions/size/document.js'
import { sizeReport } from '../../src/questions/size/report.js'
import { terminalReport } from '../../src/report/terminal.js'
import { hostile } from './compared.js'
import { saidRows } from './said.js'
import {
  afresh,
  refusedResult,
  sizedResult as result,
  ruledOutResult,
  sized,
  undecidedResult,
} from './sized.js'

const told = (of: SizeResult) => sizeReport(of).headline
const terminal = (of: SizeResult) =>
  terminalReport(sizeReport(of), { bold: (text: string) => text, width: 100 })

describe('the headline', () => {
  it('names the pick, its cost, its margin, what is next to it and what was passed over', () => {
    expect(told(result)).toEqual([
      'Choose line.infeed.length = 6 m, line.sealer.belt-speed = 30 m/min: the cheapest design that holds 9 cases/min in 90 % of shifts. By hand calculation a shift costs 101.00 EUR.',
      'Its margin: 93 % (90 to 96 %), 3 points to spare, in 200 fresh shifts that the search did not see.',
      'In these its output is 9.00 ± 0.06 cases/min, 3\u2009800 ± 10 cases a shift. It is limited by palletiser, which by hand calculation has least spare capacity: working 72 %, starved 28 %. The largest losses of sealer are: blocked 20.0 %, starved 10.0 %.',
      'The next cheaper simulated design, with line.infeed.length = 4 m, costs 1.00 EUR a shift less and does not hold it: 60 %, 30 points short, in 100 shifts.',
      'Not decided in 2\u2009000 shifts, and skipped: line.infeed.length = 6 m, line.sealer.belt-speed = 20 m/min (90 %). Allow more --shifts, or a larger "within".',
    ])
  })

  it('tells one that costs the same, and then one that costs less', () => {
    const designs = result.designs.map((each, index) =>
      index === 4 ? sized(5, each.set, 101, 0.89, 'refused') : each,
    )
    expect(told({ ...result, designs, nextCheaper: 4 }).slice(3)).toEqual([
      'The next design before it, with line.sealer.belt-speed = 20 m/min, costs the same and does not hold it: 89 %, 1 point short, within the 2 points that may go either way, in 100 shifts.',
      'The next cheaper simulated design, with line.infeed.length = 4 m, costs 1.00 EUR a shift less and does not hold it: 60 %, 30 points short, in 100 shifts.',
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
    expect(lines[3]).toContain('The next simulated design before it, with line.infeed.length = 4 m,')
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
      promises: [{ mean: 312.3456, low: null, high: null }],
    }))
    const picked = {
      ...afresh(0.9, 'kept'),
      promises: [{ mean: 285, low: 280, high: 290, shown: 'kept' as const }],
    }
    const lines = told({ ...result, promises, designs, picked })
    expect(lines[1]).toBe(
      'Its margin: 285 ± 5 s, 15 s to spare, within the 20 s that may go either way, in 200 fresh shifts that the search did not see.',
    )
    expect(lines[3]).toContain('312.3 s, 12 s short, within the 20 s that may go either way, in 100 shifts.')
    expect(sizeReport({ ...result, promises, designs, picked }).certainty[0]).toContain(
      'the simulation rejected no design before the chosen one that meets time-in-system at most 280 s, and the chosen one meets time-in-system at most 320 s.',
    )
  })

  it('says plainly where the fresh shifts do not bear the pick out', () => {
    const short = told({ ...result, picked: afresh(0.86, 'near') })
    expect(short[0]).toContain('that holds 9 cases/min in 90 % of shifts, ± 2 points. By hand calculation')
    expect(short[1]).toContain('86 % (83 to 89 %), 4 points short, in 200 fresh shifts')
    expect(short[2]).toBe(
      'The fresh shifts show that it misses 9 cases/min in 90 % of shifts, but part of the interval is inside "within". If that is not good enough, give a smaller "within".',
    )
    const wrong = { ...result, picked: afresh(0.8, 'missed') }
    expect(told(wrong)[2]).toMatch(
      /^The fresh shifts contradict the search: they show that it does not hold 9 cases\/min in 90 % of shifts, by more than "within"\./,
    )
    // the exit code follows
    expect([result, wrong, refusedResult].map(isShown)).toEqual([true, false, false])
    expect(told({ ...result, picked: afresh(0.9, 'open') }).join(' ')).not.toContain('fresh shifts show')
  })
})

describe('the headline without a pick', () => {
  const limits =
    'In these its output is 9.00 ± 0.06 cases/min, 3\u2009800 ± 10 cases a shift. It is limited by palletiser, which by hand calculation has least spare capacity: working 72 %, starved 28 %. The largest losses of sealer are: blocked 20.0 %, starved 10.0 %.'

  it('where all were refused: the nearest, by how much it misses, what limits it, which choices to widen', () => {
    expect(told(refusedResult)).toEqual([
      'None of the 9 designs holds 9 cases/min in 90 % of shifts.',
      'The nearest is line.infeed.length = 8 m, line.sealer.belt-speed = 10 m/min: 72 % (69 to 75 %), 18 points short, in 200 fresh shifts that the search did not see.',
      limits,
      // and not slower belts, as long as there is something to have more of
      'Let the search also try length of infeed above 8 m (line.infeed.length); or promise less.',
    ])
    const lower = refusedResult.nearest!.atEnds.slice(1)
    expect(told({ ...refusedResult, nearest: { ...refusedResult.nearest!, atEnds: lower } }).at(-1)).toBe(
      'Let the search also try belt speed of sealer below 10 m/min (line.sealer.belt-speed); or promise less.',
    )
    const inside = { ...refusedResult, nearest: { ...refusedResult.nearest!, atEnds: [] } }
    expect(told(inside).at(-1)).toBe(
      'All its values are inside their ranges, so wider ranges are not enough. Add another choice, such as one that makes palletiser faster; or promise less.',
    )
  })

  it('where one could not be told: more shifts', () => {
    expect(told(undecidedResult)).toEqual([
      'No design is chosen: 1 design could not be decided in 2\u2009000 shifts, and the others do not hold 9 cases/min in 90 % of shifts.',
      'The nearest is line.infeed.length = 6 m, line.sealer.belt-speed = 20 m/min, which could not be decided: 89 % (86 to 92 %), 1 point short, within the 2 points that may go either way, in 200 fresh shifts that the search did not see.',
      limits,
      'Allow more --shifts than 2\u2009000, or a larger "within".',
    ])
    const alone = {
      ...undecidedResult,
      designs: [undecidedResult.designs[4]!],
      nearest: { ...undecidedResult.nearest!, design: 0 },
    }
    expect(told(alone)[0]).toBe('No design is chosen: 1 design could not be decided in 2\u2009000 shifts.')
  })

  it('where all were ruled out by hand: what the nearest can do at most, and why', () => {
    // 0.125 and 0.15 cases a second
    expect(told(ruledOutResult)).toEqual([
      'None of the 9 designs holds 9 cases/min in 90 % of shifts: by hand calculation none can, and none was simulated.',
      'The nearest is line.infeed.length = 4 m, line.sealer.belt-speed = 10 m/min: by hand calculation its output is 7.5 cases/min at most, 1.5 cases/min short of the 9 cases/min promised.',
      'sealer passes 7.5 cases/min at most: the target of 9 cases/min cannot be reached.',
      'Fix by hand calculation: faster belts. Add that to the choices of the search, or promise less.',
    ])
    const atEnds = ['line.infeed.length', 'line.sealer.belt-speed'].map((path) => ({
      ...{ path, value: '10 m/min', end: 'largest' as const },
    }))
    expect(told({ ...ruledOutResult, nearest: { ...ruledOutResult.nearest!, atEnds } }).at(-1)).toBe(
      'Fix by hand calculation: faster belts. Let the search also try belt speed of sealer above 10 m/min (line.sealer.belt-speed); or promise less.',
    )
    expect(sizeReport(ruledOutResult).certainty).toHaveLength(1)
  })

  it('in the page: the first screen says what is nearest and what to do next', () => {
    const { front, checklist } = reportOf(refusedResult)
    const said = (head: string) =>
      front!.screen!.parts.flatMap((part) => ('head' in part && part.head === head ? part.lines : []))
    expect(said('Nearest')[0]).toContain('length of infeed = 8 m')
    expect(said('Limit')[0]).toContain('By hand calculation palletiser has least to spare')
    expect(said('Next')[0]).toContain('Let the search also try length of infeed above 8 m')
    expect(saidRows(checklist!).flat().join(' ')).toContain('palletiser (station)')
    const page = reportPage(reportOf(refusedResult), [])
    expect(page).toContain('The nearest design')
    expect(page).toContain('fails, nearest')
  })
})

it('says what the confidence is of: shares between 88 and 92 % may go either way', () => {
  expect(sizeReport(result).certainty).toEqual([
    '95 % confidence in the whole procedure: the simulation rejected no design before the chosen one that meets 9 cases/min in at least 92 % of shifts, and the chosen one meets 9 cases/min in at least 88 % of shifts. Designs between these limits may go either way. (Sequential tests after Wald, all designs on the same random numbers, the risk divided among them.)',
    'It took 5 designs and 500 shifts; 2 more designs were rejected without simulation (all 9 designs for 2\u2009000 shifts each would be 18\u2009000 shifts).',
    'The figures of the pick come from 200 shifts that the search did not see, numbers 2\u2009001 to 2\u2009200: 95 % confidence that the long-run values lie within their intervals.',
  ])
  expect(sizeReport(refusedResult).certainty.slice(0, 1)).toEqual([
    '95 % confidence in the whole procedure: the simulation rejected no design that meets 9 cases/min in at least 92 % of shifts. (Sequential tests after Wald, all designs on the same random numbers, the risk divided among them.)',
  ])
  expect(sizeReport(refusedResult).certainty[2]).toBe(
    'The nearest design was found with 200 shifts or more of each.',
  )
  // of 90 %, give or take 20 points, the test itself ends halfway to all: 95 %
  const wide = { ...result, promises: [{ ...result.promises[0]!, near: 0.2 }] }
  expect(sizeReport(wide).certainty[0]).toContain('meets 9 cases/min in at least 95 % of shifts, and')
})

it('says nothing of designs that were not there: the first one picked, none rejected without simulation', () => {
  const first = { ...result, designs: [sized(1, { a: 1 }, 3, 0.95, 'accepted')], pick: 0, nextCheaper: null }
  expect(told(first).at(-1)).toBe('No design costs less.')
  expect(sizeReport(first).certainty[1]).not.toContain('0 designs')
  const free = { ...first, designs: [sized(1, { a: 1 }, null, 0.95, 'accepted')] }
  expect(told(free).at(-1)).toBe('It is the first design in the order.')
  const second = { ...first, designs: [sized(2, { a: 1 }, 3, 0.95, 'accepted')] }
  expect(told(second).at(-1)).toContain('No cheaper design was simulated')
})

describe('the tables', () => {
  it('of designs: one line a design, without a column twice', () => {
    const text = terminal(result)
    expect(text).toContain(
      [
        'Designs that were simulated, in order of cost',
        'designs.csv has all, with 1 simulated design that costs more. A design is length, belt-speed.',
        ' design           cost, EUR          holds it in    shifts    verdict',
        ' 4 m, 20 m/min       100.00                 40 %       100    fails',
        ' 4 m, 30 m/min       100.00                 60 %       100    fails',
        ' 6 m, 20 m/min       101.00                 90 %       100    undecided',
        ' 6 m, 30 m/min       101.00                 94 %       100    the pick',
        ' 6 m, 30 m/min       101.00    93 % (90 to 96 %)       200    the same on fresh shifts',
      ].join('\n'),
    )
    expect(text.split('\n').filter((line) => line.length > 100)).toEqual([])
  })

  it('of designs where none holds: the twelve that came nearest, in order of cost', () => {
    const many = Array.from({ length: 14 }, (_, place) =>
      sized(place + 1, { a: `${place} m` }, place, [0.1, 0.2][place] ?? 0.8 - place / 100, 'refused'),
    )
    const text = terminal({
      ...refusedResult,
      choices: [{ path: 'a', values: many.map(({ set }) => set.a) }],
      designs: many,
      nearest: { ...refusedResult.nearest!, design: 2 },
    })
    expect(text).toContain('The nearest 12 of 14; designs.csv has all.')
    expect(text).toMatch(
      / 2 m +2\.00 +78 % +100 +fails, nearest\n 2 m +2\.00 +72 % \(69 to 75 %\) +200 +the same on fresh shifts\n 3 m +3\.00 +77 % +100 +fails\n/,
    )
    expect(text).not.toMatch(/^ [01] m /m)
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
      'A design is infeed.length, outfeed.length. The same in all of these: crew.operator.people = 1.',
    )
  })

  it('of what was rejected without simulation: in words', () => {
    expect(terminal(result)).toMatch(
      /the target is above the capacity of a piece +1\n no better than a rejected design +1\n/,
    )
  })
})

it('keeps a hostile title as text', () => {
  expect(reportPage(reportOf(result), [])).not.toContain(hostile)
  expect(terminal(result)).toContain(hostile)
})
