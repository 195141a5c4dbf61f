/** Losses of the shift: worked by hand where nothing is random, and adding up exactly for demos and lines of any shape. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Losses, type LossesAsked, lossesRead } from '../../src/answers/losses.js'
import { Line, type ShiftResult } from '../../src/line/line.js'
import { DeadlockError } from '../../src/line/standstill.js'
import { loadScenario as load } from '../../src/scenario/load.js'
import type { Scenario } from '../../src/scenario/schema.js'
import { demos, loadDemo } from '../demo.js'
import { lines } from '../line/topology.js'

const loadScenario = (yaml: string): Scenario => load(yaml).scenario

interface Study {
  line: Line
  shifts: ShiftResult[]
  losses: Losses | null
}

function study(
  scenario: Scenario,
  count = 2,
  { countFrom = 0, ...asked }: Partial<LossesAsked & { countFrom: number }> = {},
): Study {
  const line = new Line(scenario)
  line.countFrom = countFrom
  const shifts = Array.from({ length: count }, (_, index) => line.simulate('losses', index + 1))
  const all = { confidence: 0.95, isPlain: false, bottleneck: null, ...asked }
  return { line, shifts, losses: lossesRead({ line, scenario, shifts, countFrom }, all).losses }
}

/** Mean over the shifts of a measure, or of the lower part of a ratio. */
function mean({ line, shifts }: Study, path: string, part: 'value' | 'over' = 'value'): number {
  const index = line.columns.findIndex(
    (column) => column.measure.path.join('.') === path && column.part === part,
  )
  return shifts.reduce((sum, { values }) => sum + values[index]!, 0) / shifts.length
}

const steps = (losses: Losses, machine = 0): Record<string, number> =>
  Object.fromEntries(losses.machines[machine]!.losses.map(({ key, cases }) => [key, cases.mean!]))

/** One case every 10 s, 400 mm long; belts at 0.4 m/s and a gap of 300 mm: a headway of 1.75 s. */
const text = (line: string, shift = '{length: 1 h}') => `title: losses
cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}}
arrivals: {p: {time-between: 10 s}}
line: {${line}}
shift: ${shift}`
const sealer = (more = '') => `sealer: {type: sealer, belt-speed: 24 m/min, minimum-gap: 300 mm${more}}`

// all by the geometry of the machine: 0.7 m at 0.4 m/s; common practice, no source
describe('by hand', () => {
  const could = 3600 / 1.75

  it('a sealer that waits most of the time: 359 cases take 1.75 s each, the rest is waiting', () => {
    // case k comes at 10 k s and leaves 1.9 m / 0.4 m/s = 4.75 s later: the 359th at 3594.75 s
    const losses = study(loadScenario(text(sealer()))).losses!
    const [machine] = losses.machines
    expect(machine!.rate).toBeCloseTo(1 / 1.75, 12)
    expect(machine!.could).toBeCloseTo(could, 9)
    expect(machine!.leaves.mean).toBe(359)
    expect(steps(losses).waiting).toBeCloseTo((3600 - 359 * 1.75) / 1.75, 6)
    expect(steps(losses).gaps).toBeCloseTo(0, 6)
    expect(machine!.losses.map(({ key }) => key)).toEqual(['waiting', 'gaps'])
    expect(losses.line).toEqual([])
    expect(losses.output.mean).toBe(359)
  })

  it('folding of 4 s before belts that are free is work with a wide gap', () => {
    // 4 s and then 1.75 s of headway: the 359th leaves at 3598.75 s
    const losses = study(loadScenario(text(sealer(', flaps: {time: 4 s}')))).losses!
    expect(steps(losses).gaps).toBeCloseTo((359 * 4) / 1.75, 6)
    expect(steps(losses).waiting).toBeCloseTo((3600 - 359 * 5.75) / 1.75, 6)
  })

  it('a break of 10 min that stops everything is 600 s at the limit', () => {
    const shift = '{length: 1 h, breaks: [{at: 30 min, for: 10 min}], breaks-stop: everything}'
    const losses = study(loadScenario(text(sealer(), shift))).losses!
    expect(steps(losses)['on-break']).toBeCloseTo(600 / 1.75, 6)
    expect(losses.machines[0]!.losses[0]).toMatchObject({ key: 'on-break', label: 'breaks' })
    expect(losses.machines[0]!.losses[0]!.share).toBeCloseTo(1 / 6, 9)
  })

  it('where machines run on in breaks the label of waiting says so', () => {
    const shift = '{length: 1 h, breaks: [{at: 30 min, for: 10 min}]}'
    const losses = study(loadScenario(text(sealer(), shift))).losses!
    expect(losses.machines[0]!.losses[0]!.label).toBe('starved, breaks included')
  })

  it('run-out counts: an hour and ten minutes', () => {
    const losses = study(loadScenario(text(sealer(), '{length: 1 h, run-out: 10 min}'))).losses!
    expect(losses.machines[0]!.could).toBeCloseTo(4200 / 1.75, 9)
    expect(losses.machines[0]!.leaves.mean).toBe(360)
  })

  it('what is on the way out at the end is told', () => {
    // 3 m at 0.1 m/s: a case is on the conveyor for 30 s, so three are there at any time
    const line = `${sealer()}, out: {type: conveyor, length: 3 m, speed: 6 m/min}`
    const losses = study(loadScenario(text(line))).losses!
    expect(losses.line).toHaveLength(1)
    expect(losses.line[0]).toMatchObject({
      key: 'inside',
      label: 'still in the line after sealer at the end',
      cases: { mean: 3 },
    })
    expect(losses.output.mean).toBe(356)
  })

  it('a station where there is no sealer: 5 s a case of every 10 s', () => {
    const station = loadScenario(text('s: {type: station, time: 5 s}'))
    expect(study(station).losses).toBeNull()
    const losses = study(station, 2, { bottleneck: 's' }).losses!
    const [machine] = losses.machines
    expect(machine).toMatchObject({ machine: 's', type: 'station', how: 'places / mean time per case' })
    expect(machine!.could).toBeCloseTo(720, 9)
    expect(steps(losses).waiting).toBeCloseTo((3600 - 359 * 5) / 5, 6)
    expect(steps(losses).slower).toBeCloseTo(0, 6)
    expect(losses.output.mean).toBe(359)
  })

  it('planned stops of a station are a step of their own: 20 s after each 40 cases', () => {
    // the first stop at 405 s; while it lasts one case waits inside and one before it, so that stops come every 410 s: eight
    // of them, the last from 3275 s; 320 cases until then, two more at 3300 and 3305, and one every 10 s until 3595: 351
    const station = loadScenario(text('s: {type: station, time: 5 s, every: {cases: 40, stop: 20 s}}'))
    const losses = study(station, 2, { bottleneck: 's' }).losses!
    expect(losses.output.mean).toBe(351)
    expect(losses.machines[0]!.losses.map(({ key, label }) => [key, label])).toEqual([
      ['waiting', 'starved'],
      ['planned-stop', 'planned stop'],
      ['slower', 'working below its limit: longer times, cases still in the line'],
    ])
    expect(steps(losses)['planned-stop']).toBeCloseTo((8 * 20) / 5, 6)
    expect(steps(losses).waiting).toBeCloseTo((3600 - 351 * 5 - 160) / 5, 6)
    expect(steps(losses).slower).toBeCloseTo(0, 6)
  })

  it('nothing is told of a piece that some cases never come to', () => {
    const line = `d: {type: divert, to: [s, t]}, s: {type: station, time: 5 s, to: exit}, t: {type: station, time: 5 s}`
    expect(study(loadScenario(text(line)), 2, { bottleneck: 's' }).losses).toBeNull()
  })

  it('of two sealers in a row only the second counts for the line', () => {
    const two = `first: {type: sealer, heads: {bottom: {}}}, second: {type: sealer, heads: {top: {}}}`
    const losses = study(loadScenario(text(two))).losses!
    expect(losses.machines.map(({ machine, isFollowed }) => [machine, isFollowed])).toEqual([
      ['first', true],
      ['second', false],
    ])
    expect(losses.machines[1]!.leaves.mean! - losses.output.mean!).toBeCloseTo(0, 9)
  })

  it('a sealer to which nothing came has the limit of the shares of the cases', () => {
    // one case of 400 mm and one of 600 mm: 0.5 m and 0.3 m at 0.4 m/s
    const nothing = `title: losses
cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}, b: {length: 600 mm, width: 300 mm, height: 250 mm}}
arrivals: {p: {time-between: 9 h}}
line: {${sealer()}}
shift: {length: 1 h}`
    const [machine] = study(loadScenario(nothing)).losses!.machines
    expect(machine!.rate).toBeCloseTo(0.4 / 0.8, 12)
    expect(machine!.how).toContain('by their shares')
    expect(machine!.leaves.mean).toBe(0)
  })
})

/** All sums that the document promises. */
function expectSums(losses: Losses): void {
  for (const { could, losses: each, leaves } of losses.machines) {
    const rest = each.reduce((left, { cases }) => left - cases.mean!, could)
    expect(Math.abs(rest - leaves.mean!) / could).toBeLessThan(1e-9)
    for (const { cases, share } of each) expect(share * could).toBeCloseTo(cases.mean!, 6)
  }
  const last = losses.machines.filter(({ isFollowed }) => !isFollowed)
  const out = losses.line.reduce(
    (left, { cases }) => left - cases.mean!,
    last.reduce((sum, { leaves }) => sum + leaves.mean!, 0),
  )
  expect(Math.abs(out - losses.output.mean!)).toBeLessThan(1e-9 * Math.max(1, losses.output.mean!))
}

describe.each(demos)('the demo %s', async (name) => {
  const scenario = await loadDemo(name)
  const plain = study(scenario, 4, { isPlain: true })
  const controlled = study(scenario, 8)

  it('adds up', () => {
    expectSums(plain.losses!)
    expectSums(controlled.losses!)
  })

  it('takes each state at the limit, and has no rest but the work', () => {
    for (const { machine, could, rate, losses, leaves } of plain.losses!.machines) {
      for (const { key, cases } of losses) {
        if (key === 'gaps' || key === 'spoilt') continue
        const share = mean(plain, `equipment.${machine}.states.${key}`)
        expect(cases.mean! / could, key).toBeCloseTo(share, 9)
      }
      // of all numbers as they are: working time at the limit less what was finished in it
      const handled =
        mean(plain, `equipment.${machine}.effectiveness.quality`, 'over') / scenario.shift.campaign
      const working = mean(plain, `equipment.${machine}.states.working`) * could
      expect(losses.find(({ key }) => key === 'gaps')!.cases.mean).toBeCloseTo(working - handled, 6)
      const spoilt = mean(plain, `equipment.${machine}.measures.cases-lost`)
      expect(leaves.mean).toBeCloseTo(handled - spoilt, 6)
      expect(rate).toBeGreaterThan(0)
    }
  })

  it('ends at the output of the shift, with an interval at every step or the few events that it rests on', () => {
    expect(plain.losses!.output.mean).toBeCloseTo(mean(plain, 'measures.output'), 9)
    for (const { low, high, few } of controlled.losses!.machines.flatMap(({ losses }) =>
      losses.map(({ cases }) => cases),
    )) {
      if (few) expect(few.of === 'in breaks' || few.of === 'shifts' || few.events < 30).toBe(true)
      else expect([low, high]).not.toContain(null)
    }
  })
})

describe('what is counted from a later instant', () => {
  it('is told for a shift of that', () => {
    // nothing is counted before 15 min: three quarters of an hour hold 270 cases, made up to a whole hour 360
    const scenario = loadScenario(text(sealer()))
    const losses = study(scenario, 2, { countFrom: 900 }).losses!
    expect(losses.machines[0]!.could).toBeCloseTo(3600 / 1.75, 9)
    expect(losses.machines[0]!.leaves.mean).toBeCloseTo(360, 9)
    expectSums(losses)
  })
})

it('adds up for lines of any shape', () => {
  let told = 0
  fc.assert(
    fc.property(lines, (yaml) => {
      const scenario = loadScenario(yaml)
      try {
        const { losses } = study(scenario, 3)
        if (losses === null) return
        told++
        expectSums(losses)
      } catch (error) {
        if (!(error instanceof DeadlockError)) throw error
      }
    }),
    { seed: 1, numRuns: 60 },
  )
  expect(told).toBeGreaterThan(10)
})
