/** The hand calculation: a line whose every figure is known, mixes, arrivals of each way, routes, rolls, people and buffers. */
import { describe, expect, it } from 'vitest'
import { type HandCalculation, handCalculation } from '../../src/hand/hand.js'
import { loadScenario } from '../../src/scenario/load.js'

const hand = (text: string, sets: readonly string[] = []): HandCalculation =>
  handCalculation(loadScenario(text, { sets }).scenario)

const row = ({ rows }: HandCalculation, measure: string) =>
  rows.find((each) => each.measure === measure)!.value
const piece = ({ line }: HandCalculation, name: string) => line.pieces.find((each) => each.name === name)!

/** 24.4 m/min and a gap of 300 mm; nothing varies and nothing stops but for rolls, and those take no time. */
const plain = `cases: {box: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {packing: {time-between: 4 s}}
line: {sealer: {type: sealer, belt-speed: 24.4 m/min, roll-change: {time: 0 s}}}
tape: {width: 48 mm, roll: 1371 m, leg: 70 mm, thickness: 48 um, stretch: 0 %, lost-per-roll: 0 m}
shift: {length: 8 h}
`

describe('a line without variation', () => {
  const sheet = hand(plain)

  // worked by hand: 8 h / 4 s = 7200 cases; 0.4 + 2 x 0.07 = 0.54 m a strip, two heads; 1371 / 0.54 = 2538.9 strips a roll;
  // 24.4 / 0.7 = 34.857 cases/min; 7776 m x 48 mm x 45.3 g/m2 = 16.9 kg
  it('has the figures that were worked by hand', () => {
    expect(sheet.line.perShift).toBe(7200)
    expect(piece(sheet, 'sealer').rate * 60).toBeCloseTo(24.4 / 0.7, 9)
    expect(row(sheet, 'measures.tape-per-case')).toBeCloseTo(1.08, 9)
    expect(row(sheet, 'equipment.sealer.states.working')).toBeCloseTo(15 / (24.4 / 0.7), 9)
    expect(sheet.tape!.heads.map(({ perRoll, changes }) => [perRoll, changes])).toEqual([
      [2538, 2],
      [2538, 2],
    ])
    expect(row(sheet, 'equipment.sealer.measures.roll-changes')).toBe(4)
    // each of the four rolls changed leaves 1371 - 2538 x 0.54 = 0.48 m
    expect(row(sheet, 'measures.tape')).toBeCloseTo(7776 + 4 * 0.48, 6)
    expect(row(sheet, 'measures.tape-mass')).toBeCloseTo(16.9, 1)
  })

  it('queues nowhere: what arrives comes out, and a case stays for bed over speed', () => {
    expect(row(sheet, 'measures.throughput') * 60).toBeCloseTo(15, 9)
    expect(row(sheet, 'measures.time-in-system')).toBeCloseTo(1.9 / (24.4 / 60), 9)
    expect(sheet.line.admitted).toBe(1)
  })

  it('has a rate over belt speed that nears one a reset', () => {
    const [curve] = sheet.curves
    expect(curve!.ceiling * 60).toBeCloseTo(60 / 0.45, 9)
    // up to 26.7 m/min the minimum gap of 300 mm is the larger one, above it wipe-travel and speed x reset are
    for (const { speed, gap, rate } of curve!.points) {
      expect(gap).toBeCloseTo(Math.max(0.3, 0.1 + 0.45 * speed), 12)
      expect(rate).toBeCloseTo(speed / (0.4 + gap), 12)
      expect(rate).toBeLessThan(curve!.ceiling)
    }
    expect(curve!.points.map(({ speed }) => speed)).toContain(curve!.speed)
  })
})

describe('mixed cases', () => {
  const mixed = (
    shares: string,
  ) => `cases: {short: {share: ${shares}, length: 200 mm, width: 200 mm, height: 200 mm}, long: {share: 1, length: 600 mm, width: 300 mm, height: 300 mm}}
arrivals: {packing: {time-between: 5 s}}
line: {sealer: {type: sealer, belt-speed: 24 m/min, flaps: {time: 2 s}}}
shift: {length: 8 h}
`

  it('take the mean of their headways, not the headway of a mean case', () => {
    // headways 0.5 / 0.4 = 1.25 s and 0.9 / 0.4 = 2.25 s; folding takes 2 s: 3 of 4 cases take 2 s, 1 takes 2.25 s. A mean
    // case of 300 mm would have max(1.5, 2) = 2 s
    expect(piece(hand(mixed('3')), 'sealer').cycle).toBeCloseTo(0.75 * 2 + 0.25 * 2.25, 12)
  })

  it('set the machine at each change: 2 p (1 - p) of the cases follow another kind', () => {
    const cycle = (...set: string[]) => piece(hand(mixed('3'), set), 'sealer').cycle
    const setting = cycle('line.sealer.size-setting={by: machine, time: 8 s}') - cycle()
    expect(setting).toBeCloseTo(2 * 0.75 * 0.25 * 8, 12)
  })

  it('run empty before the crew sets another size', () => {
    const sheet = hand(mixed('3'), [
      'line.sealer.size-setting={by: crew, time: 100 s}',
      'crew={op: {walk: 20 s, does: [jams, roll-change, size-setting]}}',
    ])
    const stop = piece(sheet, 'sealer').stops.find(({ key }) => key === 'size-settings')!
    // 1.9 m of belts take 4.75 s, of which the mean headway of 1.5 s passes anyway
    expect(stop.time).toBeCloseTo(100 + 20 + (1.9 / 0.4 - 1.5), 12)
    expect(stop.perCase).toBeCloseTo(0.375, 12)
  })

  it('give a roll for the mean strip, with half a strip left', () => {
    const text = mixed('1').replace('shift:', 'tape: {roll: 100 m, leg: 50 mm, lost-per-roll: 0 m}\nshift:')
    // strips 0.3 and 0.7 m: mean 0.5, mean square 0.29; left over on average 0.29 / (2 x 0.5) = 0.29 m
    expect(hand(text).tape!.heads[0]!.perRoll).toBeCloseTo((100 - 0.29) / 0.5, 9)
  })
})

describe('arrivals', () => {
  const with1 = (
    arrivals: string,
    shift = 'length: 4 h',
  ) => `cases: {a: {share: 3, length: 400 mm, width: 300 mm, height: 300 mm}, b: {share: 1, length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: ${arrivals}}
line: {sealer: {type: sealer}}
shift: {${shift}}
`

  it('by the hour: the peak is the busiest hour, the mean is over working time, breaks count in the hour', () => {
    const { line } = hand(
      with1(
        '{by-hour: {cases: [600 cases/h, 1200 cases/h, 900 cases/h]}}',
        'length: 4 h, breaks: [{at: 1 h, for: 30 min}]',
      ),
    )
    // 600 + half of 1200 + 900 + 900
    expect(line.perShift).toBeCloseTo(3000, 9)
    expect(line.arriving * 3600).toBeCloseTo(3000 / 3.5, 9)
    expect([line.peak.hour, line.peak.rate * 3600]).toEqual([1, expect.closeTo(1200, 9)])
  })

  it('by a start-up: nothing comes in it', () => {
    expect(hand(with1('{rate: 10 cases/min}', 'length: 4 h, start-up: 30 min')).line.perShift).toBeCloseTo(
      2100,
      9,
    )
  })

  it('by batches: so many cases to an interval', () => {
    expect(
      hand(with1('{time-between: {gamma: {mean: 12 s, cv: 0.5}}, batch: 2}')).line.arriving * 60,
    ).toBeCloseTo(10, 9)
  })

  it('by orders: as far as the shift reaches, with their kinds and changes', () => {
    const orders =
      '{orders: [{case: a, quantity: 600, time-between: 6 s, before: 10 min}, {case: b, quantity: 5000, time-between: 3 s, before: 5 min}]}'
    const { line } = hand(with1(orders))
    // 14 400 s less 600 s, 3600 s for the first order, 300 s: 9900 s for 3300 of the second
    expect(line.perShift).toBeCloseTo(3900, 9)
    expect(line.sources[0]!.shares).toEqual([expect.closeTo(600 / 3900, 12), expect.closeTo(3300 / 3900, 12)])
    expect(line.sources[0]!.changes![0]!.perCase).toBeCloseTo(1 / 3900, 12)
    expect(line.peak.rate).toBeCloseTo(1 / 3, 12)
  })

  it('by a log: the cases in it, the fullest hour', () => {
    const text = with1('{log: {file: f.csv, time: t, case: k, unit: s}}')
    const times = [
      ...Array.from({ length: 10 }, (_, n) => n * 100),
      ...Array.from({ length: 30 }, (_, n) => 4000 + n * 10),
      20_000,
    ]
    const { scenario } = loadScenario(text, {
      readRows: (_, taker) => {
        taker.header(['t', 'k'])
        for (const [index, time] of times.entries()) taker.row([String(time), index % 2 ? 'b' : 'a'])
      },
    })
    const { line } = handCalculation(scenario)
    expect(line.perShift).toBe(40)
    expect([line.peak.hour, line.peak.rate * 3600]).toEqual([1, expect.closeTo(30, 9)])
    expect(line.sources[0]!.shares).toEqual([0.5, 0.5])
  })
})

describe('ways of a line', () => {
  const head =
    'cases: {a: {share: 3, length: 400 mm, width: 300 mm, height: 300 mm}, b: {share: 1, length: 500 mm, width: 300 mm, height: 300 mm}}\narrivals: {p: {time-between: 6 s}}\n'
  const flow = (sheet: HandCalculation, name: string) => piece(sheet, name).flow * 60

  it('each kind its way, by turns, and to the shorter queue in proportion to what the lanes can do', () => {
    const lanes = (divert: string) => `${head}line:
  split: {type: divert, ${divert}}
  one: {type: station, time: 4 s, to: exit}
  two: {type: station, time: 8 s, to: exit}
shift: {length: 8 h}
`
    const byCase = hand(lanes('rule: by-case, to: {a: one, b: two}'))
    expect([flow(byCase, 'one'), flow(byCase, 'two')]).toEqual([
      expect.closeTo(7.5, 9),
      expect.closeTo(2.5, 9),
    ])
    const turns = hand(lanes('rule: alternate, to: [one, two, one]'))
    expect([flow(turns, 'one'), flow(turns, 'two')]).toEqual([
      expect.closeTo(20 / 3, 9),
      expect.closeTo(10 / 3, 9),
    ])
    const shorter = hand(lanes('rule: shortest, to: [one, two]'))
    expect([flow(shorter, 'one'), flow(shorter, 'two')]).toEqual([
      expect.closeTo(20 / 3, 9),
      expect.closeTo(10 / 3, 9),
    ])
  })

  it('a repair loop passes the same cases again: 1 / (1 - 0.2) looks at each', () => {
    const sheet = hand(`${head}line:
  look: {type: inspect, chance: 20 %, rejects-to: bench, to: exit}
  bench: {type: station, time: 10 s, to: look}
shift: {length: 8 h}
`)
    expect(flow(sheet, 'look')).toBeCloseTo(12.5, 6)
    expect(flow(sheet, 'bench')).toBeCloseTo(2.5, 6)
    expect(row(sheet, 'measures.throughput') * 60).toBeCloseTo(10, 6)
  })

  it('what is rejected out of the line, or spoilt in a jam, is not good', () => {
    const sheet = hand(`${head}line:
  sealer: {type: sealer, jams: {chance: 10 %, clear: 0 s, case-lost: 50 %}}
  look: {type: inspect, chance: 20 %}
shift: {length: 8 h}
`)
    expect(sheet.line.goodShare).toBeCloseTo(0.95 * 0.8, 9)
  })

  it('the bottleneck is the piece with least to spare, and holds the output', () => {
    const sheet = hand(`${head}line:
  quick: {type: station, time: 2 s}
  slow: {type: station, time: 7 s, every: {cases: 10, stop: 10 s}}
shift: {length: 8 h}
`)
    expect(sheet.line.bottleneck?.name).toBe('slow')
    // 7 s and a tenth of 10 s: 8 s a case, and 6 s between them
    expect(row(sheet, 'measures.throughput') * 60).toBeCloseTo(60 / 8, 9)
    expect(sheet.line.admitted).toBeCloseTo(6 / 8, 12)
  })
})

describe('stops, people and buffers', () => {
  const text = `cases: {box: {length: 400 mm, width: 300 mm, height: 300 mm, jam-factor: 2}}
arrivals: {packing: {time-between: 6 s}}
line:
  infeed: {type: conveyor, length: 8.4 m, speed: 14 m/min, spacing: 20 mm}
  sealer:
    type: sealer
    belt-speed: 21 m/min
    jams: {chance: 1 per 1000 cases, clear: 90 s, tape-factor: 1.5}
    breakdowns: {after: 10 h, counted-in: calendar-time, repair: 20 min}
tape: {roll: 1084 m, leg: 70 mm, lost-per-roll: 4 m}
crew: {op: {walk: 30 s, does: [jams, roll-change]}, fitter: {walk: 5 min, does: [breakdowns]}}
shift: {length: 8 h, rolls-start: part-used}
`
  const sheet = hand(text)

  it('count jams by factor, and breakdowns of the calendar from repair to repair', () => {
    expect(row(sheet, 'equipment.sealer.measures.jams')).toBeCloseTo(4800 * 0.003, 9)
    // 10 h and 20 min and 5 min of walk
    expect(row(sheet, 'equipment.sealer.measures.breakdowns')).toBeCloseTo(8 / (10 + 25 / 60), 9)
    const { rate, rateAfterStops } = piece(sheet, 'sealer')
    const rolls = (2 / 2000) * (30 + 90)
    expect(rate).toBeCloseTo(0.5, 12)
    expect(rateAfterStops).toBeCloseTo((1 / (2 + 0.003 * 120 + rolls)) * (10 / (10 + 25 / 60)), 9)
  })

  it('ask of the crew what walk and work take, with and without the allowance', () => {
    const [op, fitter] = sheet.crews
    // 14.4 jams of 120 s and 4.8 roll changes of 120 s in 28 800 s
    expect(op!.busy).toBeCloseTo(((14.4 + 4.8) * 120) / 28_800, 9)
    expect(op!.load).toBeCloseTo(1.15 * op!.busy, 12)
    expect(fitter!.busy).toBeCloseTo(((8 / (10 + 25 / 60)) * 1500) / 28_800, 9)
  })

  it('say what the infeed holds and how soon one stop is made up', () => {
    const [buffer] = sheet.buffers
    // 8.42 / 0.42 = 20.05 cases; a ride of 36 s at a case every 6 s is 6 cases; 14 more last 84 s
    expect(buffer).toMatchObject({ places: 20, riding: expect.closeTo(6, 9), lasts: expect.closeTo(84, 9) })
    const [machine] = sheet.machineBuffers
    // 120 s bring 20 cases, and 30 - 10 a minute go: one minute
    expect(machine).toMatchObject({ meanStop: expect.closeTo(120, 9), drain: expect.closeTo(60, 9) })
  })

  it('a shift with no shifts a year has no month, and no price no cost', () => {
    expect(sheet.tape).toMatchObject({ month: null, costPerThousand: null })
    const priced = hand(text, ['money={currency: EUR, shifts: 240 per yr}', 'tape.price=40 EUR/roll'])
    expect(priced.tape!.month).toBeCloseTo(20 * priced.tape!.used, 9)
    // 2 strips of 0.54 m; 2000 strips use the roll of 1084 m
    expect(priced.tape!.costPerThousand).toBeCloseTo((2 * 40 * 1000) / 2000, 9)
  })
})

describe('rolls that are changed before their end', () => {
  const text = (change: string) =>
    plain.replace(
      'roll-change: {time: 0 s}',
      `roll-change: {time: 10 s, low-tape-warning: 54 m, change: ${change}}`,
    )

  it('leave what the warning is set to when they are changed as the machine is idle, both heads in one stop', () => {
    const sheet = hand(text('at-warning-when-idle'))
    // 1371 - 54 = 1317 m give 2438 strips
    expect(sheet.tape!.heads[0]!.perRoll).toBe(2438)
    expect(row(sheet, 'equipment.sealer.measures.roll-changes')).toBe(2)
  })

  it('leave less when only a break brings the change, and nothing where there is none', () => {
    expect(hand(text('at-break')).tape!.heads[0]!.perRoll).toBe(2538)
    // 26 100 s of work bring 6525 cases, 3523.5 m a head; a roll is low for 54 m of that, so 3 breaks find it so with a chance of
    // 162 / 3523.5 and 27 m left on average: 1.24 m, and 1369.76 m give 2536 strips
    const breaks = 'shift.breaks=[{at: 2 h, for: 15 min}, {at: 4 h, for: 15 min}, {at: 6 h, for: 15 min}]'
    expect(hand(text('at-break'), [breaks]).tape!.heads[0]!.perRoll).toBe(2536)
  })
})
