/** Hand figures beside simulated ones: which part, by how much, and what is said to be the reason. */
import { describe, expect, it } from 'vitest'
import type { Figure } from '../../src/catalogue/figure.js'
import { foretold } from '../../src/hand/foretold.js'
import { handCalculation } from '../../src/hand/hand.js'
import type { RunResult } from '../../src/questions/run/document.js'
import { handTable } from '../../src/questions/run/hand-table.js'
import { saidRows } from '../report/said.js'
import { loadedWith } from './line.js'

const { scenario } = loadedWith(['tape.price=40 EUR/roll', 'arrivals.packing.when-full=wait'])
const hand = handCalculation(scenario)

const value = (measure: string) => hand.rows.find((row) => row.measure === measure)!.value

const figure = (mean: number, half: number, unit: string): Figure => ({
  mean,
  low: mean - half,
  high: mean + half,
  sd: half,
  n: 50,
  unit,
  label: '',
})

/** A result in which the line puts out `share` of what hand says, with the given states of the sealer. */
function resultOf(share: number, blocked: number): RunResult {
  const of = (measure: string, unit: string, factor = 1) => {
    const mean = value(measure) * factor
    return figure(mean, Math.abs(mean) * 0.001, unit)
  }
  const working = 'equipment.sealer.states.working'
  return {
    display: 'metric',
    measures: {
      throughput: of('measures.throughput', 'cases/s', share),
      output: of('measures.output', 'cases', share),
      'time-in-system': of('measures.time-in-system', 's', 2),
      tape: of('measures.tape', 'm', share),
      'tape-per-case': of('measures.tape-per-case', 'm/case'),
      'cost-per-1000-tape': of('measures.cost-per-1000-tape', 'EUR per 1000 cases'),
    },
    byHand: foretold(scenario, hand),
    arrivals: { packing: { blocked: figure(blocked, 0.001, 'share') } },
    equipment: {
      infeed: {
        type: 'conveyor',
        measures: { held: of('equipment.infeed.measures.held', 'cases', 3) },
        states: { blocked: figure(0.25, 0.01, 'share') },
      },
      sealer: {
        type: 'sealer',
        measures: {},
        states: { working: of(working, 'share', share), waiting: figure(0.4, 0.01, 'share') },
      },
    },
    crew: {},
  } as unknown as RunResult
}

const rowsOf = (share: number, blocked: number) =>
  new Map(saidRows(handTable(resultOf(share, blocked))).map((row) => [row[0]!, row]))

describe('by hand and simulated', () => {
  it('agree where the interval holds the hand figure or they are within 1 %', () => {
    const rows = rowsOf(0.995, 0)
    expect(rows.get('Throughput of good cases')!.slice(3)).toEqual(['agrees', ''])
    expect(rows.get('Tape on each good case')!.slice(3)).toEqual(['agrees', ''])
  })

  it('lay a smaller output to the packers who wait, and what follows from the output to the output', () => {
    const rows = rowsOf(0.94, 0.06)
    expect(rows.get('Throughput of good cases')!.slice(3)).toEqual([
      '-6 %',
      'packing is blocked 6 % of the time',
    ])
    expect(rows.get('Tape used a shift, all heads')!.slice(3)).toEqual(['-6 %', 'same cause as the output'])
    expect(rows.get('Share of the shift in which sealer works')![4]).toBe('same cause as the output')
  })

  it('lay it to the run-out of the shift where nothing holds the arrivals up', () => {
    expect(rowsOf(0.98, 0).get('Good cases a shift')![4]).toBe(
      'cases still in the line at the end of the shift',
    )
  })

  it('lay queues to what is ahead', () => {
    const rows = rowsOf(1, 0)
    expect(rows.get('Cases on infeed, mean over time')!.slice(3)).toEqual([
      '+200 %',
      'cases queue: the next piece takes none for 25 % of the time',
    ])
    expect(rows.get('Time in the line, mean')![4]).toMatch(/most wait on infeed/)
  })

  it('print both in the same units, money with its currency, and leave heads to their own table', () => {
    const row = rowsOf(1, 0).get('Tape for 1000 good cases')!
    expect(row[1]).toMatch(/ EUR$/)
    expect(row[2]).toMatch(/ EUR$/)
    expect([...rowsOf(1, 0).keys()].some((label) => label.includes('head'))).toBe(true)
    expect([...rowsOf(1, 0).keys()].some((label) => label.includes('sealer top head'))).toBe(false)
  })

  it('lay it to the bottleneck where the line cannot take all that comes', () => {
    const result = resultOf(0.9, 0)
    const short = { ...result, byHand: { ...result.byHand!, bottleneck: 'sealer', shareAdmitted: 0.95 } }
    const row = saidRows(handTable(short)).find(([label]) => label === 'Throughput of good cases')!
    expect(row.slice(3)).toEqual(['-10 %', 'sealer: starved 40 %'])
  })

  it('say nothing where nothing was worked out', () => {
    expect(handTable({ ...resultOf(1, 0), byHand: null }).rows).toEqual([])
  })
})
