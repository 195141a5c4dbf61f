/** Figures of pieces side by side together: by hand, and shift by shift from those of each piece. */
import { describe, expect, it } from 'vitest'
import { entriesOf } from '../../src/catalogue/figure.js'
import * as face from '../../src/index.js'
import { Line } from '../../src/line/line.js'
import { demandSteps } from '../../src/questions/run/demand-chart.js'
import { loadScenario } from '../../src/scenario/load.js'

/** A case every 10 s, in turn for each of the stations: at 10 s, 20 s ... 100 s of 109 s, so ten, five for each of two. */
const text = (station: string, count = 2) => `cases: {box: {length: 400 mm, width: 300 mm, height: 250 mm}}
arrivals: {door: {time-between: 10 s, when-full: queue}}
line:
  pack: {type: station, side-by-side: ${count}, divert: {rule: alternate}, ${station}}
shift: {length: 109 s}
`

/** The numbers of the first shift by their place in the result. */
function shiftOf(text: string): Record<string, number> {
  const line = new Line(loadScenario(text).scenario)
  const { values } = line.simulate('s', 1)
  return Object.fromEntries(
    line.columns.map(({ measure, part }, index) => [
      measure.path.join('.') + (part === 'over' ? ' over' : ''),
      values[index]!,
    ]),
  )
}

describe('by hand', () => {
  it('shares of time are the mean, cases inside the sum', () => {
    // each has five cases of 6 s: 30 of 109 s
    const shift = shiftOf(text('time: 6 s'))
    expect(shift['equipment.pack.measures.utilisation']).toBeCloseTo(30 / 109, 12)
    expect(shift['equipment.pack.states.working']).toBeCloseTo(30 / 109, 12)
    expect(shift['equipment.pack.states.waiting']).toBeCloseTo(79 / 109, 12)
    expect(shift['equipment.pack.measures.held']).toBeCloseTo(60 / 109, 12)
  })

  it('stops and their times are added, so that a mean time is that of all stops', () => {
    // after every second case each stands 4 s: the first from 36 s and 76 s, the second from 46 s and 86 s
    const shift = shiftOf(text('time: 6 s, every: {cases: 2, stop: 4 s}'))
    expect(shift['equipment.pack 1.measures.planned-stops']).toBe(2)
    expect(shift['equipment.pack.measures.planned-stops']).toBe(4)
    expect(shift['equipment.pack.states.planned-stop']).toBeCloseTo(16 / 218, 12)
  })

  it('three pieces are three', () => {
    // ten cases in turn: four, three, three, each of 6 s
    const shift = shiftOf(text('time: 6 s', 3))
    expect(shift['equipment.pack.states.working']).toBeCloseTo(60 / 327, 12)
    expect(shift['equipment.pack.measures.held']).toBeCloseTo(60 / 109, 12)
  })

  it('what no number of each tells is left out', () => {
    const shift = shiftOf(text('time: 6 s'))
    for (const key of ['held-p95', 'held-largest', 'wait']) {
      expect(shift).toHaveProperty([`equipment.pack 1.measures.${key}`])
      expect(shift).not.toHaveProperty([`equipment.pack.measures.${key}`])
    }
  })
})

const sealers = `title: Two sealers
cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}, b: {length: 600 mm, width: 350 mm, height: 300 mm}}
arrivals: {p: {time-between: {exponential: {mean: 2.2 s}}}}
line:
  infeed: {type: conveyor, length: 8 m, speed: 30 m/min}
  sealer:
    type: sealer
    side-by-side: 2
    jams: {flap: {chance: 6 per 1000, clear: {lognormal: {mean: 80 s, cv: 0.8}}, case-lost: 50 %}, crushed: {chance: 3 per 1000, clear: 2 min}}
    breakdowns: {after: {exponential: {mean: 40 min}}, repair: 5 min}
    roll-change: {time: 30 s}
  outfeed: {type: conveyor, length: 6 m, speed: 30 m/min}
tape: {roll: 200 m}
shift: {length: 2 h}
crew: {ops: {people: 1, walk: 10 s, does: [jams, roll-change, breakdowns]}}
`

it('counts, tape and time of two sealers are those of each, shift by shift', () => {
  const shift = shiftOf(sealers)
  const both = Object.keys(shift).filter((path) => path.startsWith('equipment.sealer.'))
  const isShare = /\.states\.|utilisation|share-full/
  for (const path of both) {
    const [one, two] = [1, 2].map((number) => shift[path.replace('sealer', `sealer ${number}`)]!)
    expect(shift[path], path).toBeCloseTo((one! + two!) / (isShare.test(path) ? 2 : 1), 12)
  }
  for (const path of [
    'measures.jams',
    'measures.jams-stop over',
    'measures.breakdowns',
    'measures.cases-lost',
    'measures.held',
    'states.working',
    'jams.flap.stops',
    'heads.top.tape',
    'heads.top.rolls',
    'heads.bottom.changes',
  ])
    expect(both).toContain(`equipment.sealer.${path}`)
})

it('their plus-minus is that of the sums of shifts, and the name is taken where measures are named', async () => {
  const { document } = await face.run(face.loadScenario(sealers), {
    shifts: 20,
    moment: false,
    plain: true,
    require: ['equipment.sealer.jams <= 1000'],
  })
  const { sealer, 'sealer 1': one, 'sealer 2': two } = document.equipment
  expect(sealer!.pieces).toEqual(['sealer 1', 'sealer 2'])
  const jams = [sealer, one, two].map((piece) => piece!.measures.jams!)
  expect(jams[0]!.mean).toBeCloseTo(jams[1]!.mean! + jams[2]!.mean!, 9)
  // the shifts with many cases for one have few for the other: intervals do not add up
  expect(jams[0]!.sd! ** 2).not.toBeCloseTo(jams[1]!.sd! ** 2 + jams[2]!.sd! ** 2, 6)
  expect(document.requirements[0]!.judgement).toBe('met')
  const sum = entriesOf(sealer!.states).reduce((total, [, { mean }]) => total + mean!, 0)
  expect(sum).toBeCloseTo(1, 9)
})

it('a line with nothing side by side has none of it', () => {
  const without = sealers.replace('    side-by-side: 2\n', '')
  const line = new Line(loadScenario(without).scenario)
  expect(line.columns.some(({ measure }) => measure.isTogether)).toBe(false)
})

it('what all pieces lost is counted once where the demand is told', async () => {
  const { document } = await face.run(face.loadScenario(sealers), { shifts: 5, moment: false })
  const lost = Object.values(document.equipment).flatMap(({ pieces, measures }) =>
    pieces ? [] : (measures['cases-lost']?.mean ?? 0),
  )
  expect(document.equipment.sealer!.measures['cases-lost']!.mean).toBeGreaterThan(0)
  const spoilt = demandSteps(document)!.find(({ key }) => key === 'spoilt')!
  expect(spoilt.cases).toBeCloseTo(-lost.reduce((sum, each) => sum + each, 0), 9)
})
