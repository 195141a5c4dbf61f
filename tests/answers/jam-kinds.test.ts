/** Kinds of jam in answers, worked by hand: what each costs, what is spoilt behind the machines, and what must have been seen. */
import { describe, expect, it } from 'vitest'
import { chanceStops } from '../../src/answers/condition.js'
import { measureName, measuresOf } from '../../src/answers/figures.js'
import { lossesRead } from '../../src/answers/losses.js'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'

/** A case every 100 s for an hour, 35 of them; belts at 0.4 m/s and a gap of 300 mm: a headway of 1.75 s. Each jams as both kinds. */
const text = (rest = '') => `cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm, jam-factor: 2}}
arrivals: {p: {time-between: 100 s}}
line:
  sealer:
    type: sealer
    belt-speed: 24 m/min
    minimum-gap: 300 mm
    jams: {flap: {chance: 50 %, clear: 20 s}, crushed: {chance: 50 %, clear: 30 s, isolate: 5 s, by: mechanic}}
${rest}
crew: {operators: {walk: 5 s, does: [jams, roll-change]}, mechanic: {walk: 15 s, does: [breakdowns]}}
shift: {length: 1 h}`

function studied(yaml: string) {
  const { scenario } = loadScenario(yaml)
  const line = new Line(scenario)
  const shifts = [1, 2].map((shift) => line.simulate('kinds', shift))
  const simulated = { line, scenario, shifts, countFrom: 0 }
  return {
    losses: lossesRead(simulated, { confidence: 0.95, isPlain: true, bottleneck: null }).losses!,
    measures: measuresOf(simulated),
  }
}

describe('losses by kind of jam', () => {
  it('are the time of each, waiting and clearing apart, at the limit of the sealer', () => {
    const [machine] = studied(text()).losses.machines
    const jams = machine!.losses.filter(({ jam }) => jam !== undefined)
    expect(jams.map(({ key, jam, label }) => [key, jam, label])).toEqual([
      ['jam-waiting-for-crew', 'flap', 'jam: waiting for crew (flap)'],
      ['jam-waiting-for-crew', 'crushed', 'jam: waiting for crew (crushed)'],
      ['jam-being-cleared', 'flap', 'jam: being cleared (flap)'],
      ['jam-being-cleared', 'crushed', 'jam: being cleared (crushed)'],
    ])
    // 35 cases x 5, 15, 20 and 5 + 30 + 5 s, at a case in 1.75 s
    const expected = [5, 15, 20, 40].map((seconds) => (35 * seconds) / 1.75)
    for (const [index, { cases }] of jams.entries()) expect(cases.mean).toBeCloseTo(expected[index]!, 6)
  })

  it('count what jams behind the machines spoil as a step of the line', () => {
    const behind = '  pack: {type: station, time: 1 s, jams: {chance: 50 %, clear: 1 s, case-lost: 100 %}}'
    const { losses } = studied(text(behind))
    expect(losses.line.map(({ key, label, cases }) => [key, label, cases.mean])).toEqual([
      ['spoilt', 'spoilt in jams after sealer', 35],
    ])
    expect(losses.output.mean).toBe(0)
  })
})

it('each kind must have come before designs are told apart', () => {
  expect(chanceStops(studied(text()).measures).map(measureName)).toEqual([
    'equipment.sealer.jams',
    'equipment.sealer.jams.flap.stops',
    'equipment.sealer.jams.crushed.stops',
  ])
})
