/** People by hand: other work and planned work in their load, in what stops wait, and in what a piece can do; each worked on paper. */
import { describe, expect, it } from 'vitest'
import { handCalculation } from '../../src/hand/hand.js'
import { checkedWith, findingOf, loadedWith, soundLine } from './line.js'

const other = (keys: string) => `crew.operator.other-work={${keys}}`
const rowOf = (sets: string[], measure: string) =>
  handCalculation(loadedWith(sets).scenario).rows.find((row) => row.measure === measure)?.value
const pieceOf = (name: string, sets: string[]) =>
  handCalculation(loadedWith(sets).scenario).line.pieces.find((piece) => piece.name === name)!
const crewOf = (sets: string[]) => handCalculation(loadedWith(sets).scenario).crews[0]!

describe('other work', () => {
  const bare = crewOf([])

  it('is load beside that of the line, which stays what it was', () => {
    const crew = crewOf([other('share: 30 %, takes: 4 min')])
    expect(crew.other).toBeCloseTo(0.3, 12)
    expect(crew.busy).toBe(bare.busy)
    expect(crew.load).toBeCloseTo(1.15 * (bare.busy + 0.3), 12)
    // every 20 min: 3 min of 20; of two people each half of it
    expect(crewOf([other('every: 20 min, takes: 3 min')]).other).toBeCloseTo(0.15, 12)
    expect(crewOf([other('every: 20 min, takes: 3 min'), 'crew.operator.people=2']).other).toBeCloseTo(
      0.075,
      12,
    )
  })

  it('that cannot be left is what stops wait for: walk, and its share times what is left of one', () => {
    const wait = 'equipment.sealer.measures.jams-wait'
    // 30 % of the time somebody is at work of 4 min; 2 min of it are left on the mean
    expect(rowOf([other('share: 30 %, takes: 4 min')], wait)).toBeCloseTo(15 + 0.3 * 120, 9)
    // exponential: as much again as it takes
    expect(rowOf([other('share: 30 %, takes: {exponential: {mean: 4 min}}')], wait)).toBeCloseTo(
      15 + 0.3 * 240,
      9,
    )
    // two people: both at it, and the first of the two is done after half the rest
    expect(rowOf([other('share: 30 %, takes: 4 min'), 'crew.operator.people=2'], wait)).toBeCloseTo(
      15 + 0.3 ** 2 * 60,
      9,
    )
  })

  it('that can be left is waited for by nobody', () => {
    expect(
      rowOf([other('share: 30 %, takes: 4 min, can-be-left: true')], 'equipment.sealer.measures.jams-wait'),
    ).toBe(15)
    expect(rowOf([], 'equipment.sealer.measures.jams-wait')).toBeUndefined()
  })

  it('too much of it with the stops of the line is told', () => {
    expect(findingOf('crew-load', [other('share: 60 %, takes: 4 min')])).toBeUndefined()
    const told = findingOf('crew-load', [other('share: 75 %, takes: 4 min')])
    expect(told?.message).toContain('and other work')
  })

  it('makes stops longer in the expected output', () => {
    const outputOf = (sets: string[]) => checkedWith(sets).hand.expected.output!.throughput
    const short = ['line.infeed.length=4 m', 'arrivals.packing.time-between=2 s']
    const with30 = outputOf([...short, other('share: 30 %, takes: 10 min')])
    expect(with30).toBeLessThan(outputOf(short))
    expect(outputOf([...short, other('share: 30 %, takes: 10 min, can-be-left: true')])).toBe(outputOf(short))
  })
})

describe('planned work', () => {
  it('takes its share of the working time from what the piece can do', () => {
    const before = pieceOf('sealer', []).rateAfterStops
    // 7.5 h of work; 15 min at 4 h
    const once = pieceOf('sealer', ['line.sealer.planned=[{does: cleaning, at: 3 h, takes: 15 min}]'])
    expect(once.rateAfterStops / before).toBeCloseTo(1 - 15 / 450, 12)
    // every 2 h: at 2, 4 and 6 h
    const thrice = pieceOf('sealer', ['line.sealer.planned=[{does: cleaning, every: 2 h, takes: 5 min}]'])
    expect(thrice.rateAfterStops / before).toBeCloseTo(1 - 15 / 450, 12)
    expect(
      rowOf(
        ['line.sealer.planned=[{does: cleaning, every: 2 h, takes: 5 min}]'],
        'equipment.sealer.measures.planned-work',
      ),
    ).toBe(3)
  })

  it('is work of those whom it needs', () => {
    const sets = ['line.sealer.planned=[{does: cleaning, every: 2 h, takes: 5 min, needs: operator}]']
    // three times 5 min and 15 s of walk, of 7.5 h
    expect(crewOf(sets).busy - crewOf([]).busy).toBeCloseTo((3 * 315) / 27_000, 9)
  })
})

describe('a place that people work', () => {
  it('can do what the mean of the pace of its hours leaves, the last hour in part', () => {
    const station = (keys: string) => {
      const pack = `pack: {type: station, time: 3 s, run-by: people${keys}}`
      const text = soundLine.replace('  infeed:', `  ${pack}\n  infeed:`)
      const { scenario } = loadedWith(['shift.length=2.5 h', 'shift.breaks=[]'], text)
      return handCalculation(scenario).line.pieces.find(({ name }) => name === 'pack')!
    }
    // hours of 100 %, 80 %, and half an hour of 80 %
    const cycle = (keys: string) => station(keys).cycle
    expect(cycle(', by-hour: [100 %, 80 %]') / cycle('')).toBeCloseTo(2.5 / (1 + 0.8 + 0.4), 12)
    // 5 min at both ends of 150
    const rate = (keys: string) => station(keys).rateAfterStops
    expect(rate(', handover: 5 min') / rate('')).toBeCloseTo(140 / 150, 12)
  })
})
