/** From the target to what comes out: worked by hand on three shifts. */
import { describe, expect, it } from 'vitest'
import { type DemandStep, demandChart, demandSteps } from '../../src/questions/run/demand-chart.js'
import type { RunResult } from '../../src/questions/run/document.js'

const figure = (mean: number, unit = 'cases') => ({
  mean,
  low: mean - 1,
  high: mean + 1,
  sd: 1,
  n: 20,
  unit,
  label: '',
})

/** A shift of 100 min without breaks; `target` in cases a minute. */
function shift(
  target: number | null,
  arrivals: RunResult['arrivals'],
  measures: Record<string, number>,
  lost = 0,
): RunResult {
  return {
    command: 'run',
    made: { version: '0', seed: 's', shifts: 20, scenario: { sha256: 'f'.repeat(64) }, confidence: 0.95 },
    display: 'metric',
    shift: { length: 6000, breaks: [], campaign: 1, runOut: 0, startUp: 0 },
    target: target === null ? null : target / 60,
    measures: Object.fromEntries(Object.entries(measures).map(([name, mean]) => [name, figure(mean)])),
    arrivals,
    equipment: { sealer: { type: 'sealer', measures: { 'cases-lost': figure(lost) }, states: {} } },
    warnings: [],
  } as unknown as RunResult
}

const told = (steps: DemandStep[] | null) =>
  steps?.map(({ key, cases }) => [key, Math.round(cases * 100) / 100])

/** What stands between asked and out. */
const between = (steps: DemandStep[]) => steps.slice(1, -1).reduce((sum, { cases }) => sum + cases, 0)

describe('from the target to what comes out', () => {
  // 9/min for 100 min: 900. 950 came though packing waited 5 % of the time: at its own pace 950 / 0.95 = 1000.
  const waits = shift(
    9,
    { packing: { arrived: figure(950), blocked: figure(0.05, 'share') } },
    { output: 940 },
    2,
  )

  it('counts what waiting keeps from coming, and what is left in the line', () => {
    expect(told(demandSteps(waits))).toEqual([
      ...[
        ['asked', 900],
        ['offered', 100],
        ['waits', -50],
        ['spoilt', -2],
        ['inside', -8],
        ['out', 940],
      ],
    ])
  })

  // two tables bring 300 and 500: 100 short of 900; a tenth of the second is turned away; 5 rejected, 3 unsealed
  const short = shift(
    9,
    { left: { arrived: figure(300) }, right: { arrived: figure(500), 'turned-away': figure(0.1, 'share') } },
    { output: 742, rejected: 5, unsealed: 3 },
  )

  it('tells too few cases at the door from what the line loses', () => {
    expect(told(demandSteps(short))).toEqual([
      ...[
        ['asked', 900],
        ['offered', -100],
        ['turned-away', -50],
        ['rejected', -5],
        ['unsealed', -3],
        ['out', 742],
      ],
    ])
  })

  // no target: 400 could come; 404 come out, for 4 were in the line before
  const steady = shift(
    null,
    { packing: { arrived: figure(400), blocked: figure(0, 'share') } },
    { output: 404 },
  )

  it('begins without a target at what could come, and may end above it', () => {
    expect(told(demandSteps(steady))).toEqual([
      ...[
        ['asked', 400],
        ['inside', 4],
        ['out', 404],
      ],
    ])
  })

  it('adds up, names the gap, and never calls it a loss that there is nothing to seal', () => {
    for (const result of [waits, short, steady]) {
      const steps = demandSteps(result)!
      expect(steps[0]!.cases + between(steps)).toBeCloseTo(steps.at(-1)!.cases, 9)
      const { title, alt } = demandChart(result)!
      expect(`${title} ${alt}`).not.toMatch(/waiting for (a )?cases?/)
    }
    expect(demandChart(waits)!.title).toBe('The target asks for 900 cases a shift; 940 come out')
    expect(demandChart(short)!.title).toMatch(
      /^158 of the 900 cases a shift are missing; most is lost because: /,
    )
  })

  it('says nothing where nothing is known of arrivals', () => {
    expect(demandSteps(shift(9, {}, { output: 1 }))).toBeNull()
  })
})
