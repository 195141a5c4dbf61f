/** Counting from a cut, worked by hand: what a figure is of, what stays as it is, and which cuts are allowed. */
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'
import { loadDemo } from '../demo.js'
import { differences } from './engines.js'
import { reader } from './shift.js'

const cases = 'cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}'
const build = (text: string) => new Line(loadScenario(text).scenario)

/** Measures of shift 1, counted from `from`. */
function counted(text: string, from: number) {
  const line = build(text)
  line.countFrom = from
  const result = line.simulate('cut', 1)
  return { read: reader(line, result), outputs: [...result.outputs], line }
}

/** A case each 10 s; it is worked on for 4 s. */
const tens = (shift: string) => `${cases}
target: 6 cases/min
arrivals: {p: {time-between: 10 s}}
line: {s: {type: station, time: 4 s}}
shift: ${shift}`

describe('a cut at 32 s of 100 s, in the middle of a service', () => {
  // cases come at 10, 20 … 100; the third is worked on from 30 to 34. After the cut come 40 … 100: seven. Out go those of
  // 34, 44 … 94: seven. Of 68 s it works from 32 to 34 and in the six services from 40, 50 … 90: 26 s
  const { read, outputs } = counted(tens('{length: 100 s}'), 32)

  it('counts what comes later; a shift is 100 s', () => {
    expect(read('arrivals.p.arrived')).toBeCloseTo(7 / 0.68, 9)
    expect(read('measures.output')).toBeCloseTo(7 / 0.68, 9)
    expect(outputs).toEqual([expect.closeTo(7 / 0.68, 9)])
    expect(read('measures.throughput')).toBeCloseTo(7 / 68, 12)
  })

  it('holds the target of 6 a minute: 6.2, and counted from the start 5.4', () => {
    expect(read('measures.target-held')).toBe(1)
    expect(counted(tens('{length: 100 s}'), 0).read('measures.target-held')).toBe(0)
  })

  it('has levels and states of the counted time, and the whole time of the case that was inside', () => {
    expect(read('equipment.s.states.working')).toBeCloseTo(26 / 68, 12)
    expect(read('equipment.s.states.waiting')).toBeCloseTo(42 / 68, 12)
    expect(read('equipment.s.measures.held')).toBeCloseTo(26 / 68, 12)
    expect(read('equipment.s.measures.held-largest')).toBe(1)
    expect(read('equipment.s.measures.share-full')).toBeCloseTo(26 / 68, 12)
    expect(read('equipment.s.measures.utilisation')).toBeCloseTo(26 / 68, 12)
    expect(read('measures.time-in-system')).toBeCloseTo(4, 9)
  })

  it('draws the cases held over the counted part: at 32 s one, at 36 s none', () => {
    const line = build(tens('{length: 100 s}'))
    line.countFrom = 32
    const { held } = line.simulate('cut', 1)
    const instant = (index: number) => 32 + (68 * (index + 0.5)) / held.length
    expect(held.length).toBe(96)
    expect([...held]).toEqual(
      Array.from(held, (_, index) => (instant(index) % 10 < 4 && instant(index) >= 10 ? 1 : 0)),
    )
  })
})

describe('a cut in a break, before a run-out', () => {
  it('leaves the working time after it', () => {
    // 100 s less 20 s of break; after 45 s there remain 45 s of the 80. Cases: 10, 20, 30 and, the last 5 s of the next
    // interval being left when the break is over, 60, 70, 80, 90, 100. Out: 64, 74, 84, 94 and, in the run-out, 104
    const shift = '{length: 100 s, run-out: 10 s, breaks: [{at: 35 s, for: 20 s}]}'
    const { read, outputs } = counted(tens(shift), 45)
    expect(read('measures.throughput')).toBeCloseTo(5 / 45, 12)
    expect(outputs).toEqual([expect.closeTo((5 * 80) / 45, 9)])
    expect(read('equipment.s.states.working')).toBeCloseTo(20 / 65, 12)
  })

  it('counts the rest of the break of people and of their task', () => {
    const text = `${cases}
arrivals: {p: {time-between: 1 h}}
line: {a: {type: conveyor, length: 1 m, speed: 1 m/s, breakdowns: {after: 30 s, counted-in: calendar-time, repair: 20 s}}}
crew: {one: {does: [breakdowns]}, two: {does: [roll-change]}}
shift: {length: 100 s, breaks: [{at: 40 s, for: 25 s}]}`
    // fails at 30; one mends to 50 and then has break to 65, two from 40. Fails again at 80, mended from 80 to 100.
    // From 45: one works 5 + 20 of 55 - 15 s; two never in 55 - 20 s. It stands 5 + 20 s; one stop begins
    const { read } = counted(text, 45)
    expect(read('crew.one.busy')).toBeCloseTo(25 / 40, 9)
    expect(read('crew.two.busy')).toBe(0)
    expect(read('equipment.a.states.breakdown-being-repaired')).toBeCloseTo(25 / 55, 9)
    expect(read('equipment.a.measures.breakdowns-stop')).toBeCloseTo(25, 9)
    // 100 s less 25 s of break; of the 75 s there remain 35: 7/15 of a shift
    expect(read('equipment.a.measures.breakdowns')).toBeCloseTo(15 / 7, 9)
    // the same in the break of one: away 60 to 65, at work 20 of 40 - 5 s
    expect(counted(text, 60).read('crew.one.busy')).toBeCloseTo(20 / 35, 9)
  })
})

describe('a standing duty', () => {
  it('has its share of the counted time, whether somebody stands there at the cut or not', () => {
    const text = `${cases}
arrivals: {p: {time-between: 1 h}}
line: {s: {type: sealer, flaps: {folded-by: people, time: 1 s}}}
crew: {one: {does: [roll-change], stands-at: s}}
shift: {length: 100 s, breaks: [{at: 40 s, for: 20 s}]}`
    // at the post but from 40 to 60: from 30 on 10 + 40 of 70 s; from 50 on 40 of 50 s
    expect(counted(text, 0).read('crew.one.at-post')).toBeCloseTo(80 / 100, 12)
    expect(counted(text, 30).read('crew.one.at-post')).toBeCloseTo(50 / 70, 12)
    expect(counted(text, 50).read('crew.one.at-post')).toBeCloseTo(40 / 50, 12)
  })
})

describe('a stop that waits for crew at the cut', () => {
  it('counts what is left of the wait, and of the stop, but not its beginning', () => {
    const text = `${cases}
arrivals: {p: {time-between: 1 h}}
line: {a: {type: conveyor, length: 1 m, speed: 1 m/s, breakdowns: {after: 30 s, counted-in: calendar-time, repair: 20 s}}}
crew: {one: {walk: 15 s, does: [breakdowns]}}
shift: {length: 60 s}`
    // fails at 30; one is there at 45 and mends to 60, when the shift ends. From 40: 5 s of waiting, 15 s of repair
    const { read } = counted(text, 40)
    expect(read('equipment.a.measures.breakdowns')).toBe(0)
    expect(read('equipment.a.measures.breakdowns-stop')).toBeCloseTo(20, 9)
    expect(read('equipment.a.measures.breakdowns-wait')).toBeCloseTo(5, 9)
    expect(read('equipment.a.states.breakdown-waiting-for-crew')).toBeCloseTo(5 / 20, 9)
    expect(read('equipment.a.states.waiting')).toBe(0)
    expect(read('crew.one.busy')).toBe(1)
  })
})

describe('roll changes before and after the cut', () => {
  // Case k comes at 10 k, is folded in 1 s, meets the head 1.2 m on at 0.4 m/s at 10 k + 4, leaves after 1.9 m at 10 k + 5.75. A
  // strip is 0.54 m; a roll of 11 m gives 20 of them and a stub of 0.2 m. So the roll is changed, in 1 s, at 214 and 414
  const text = `${cases}
arrivals: {p: {time-between: 10 s}}
line: {s: {type: sealer, bed: 1.9 m, belt-speed: 24 m/min, flaps: {folded-by: machine, time: 1 s}, heads: {top: {position: 1.2 m}}, roll-change: {time: 1 s}, blade: {service-after: 45 cuts, time: 2 s}}}
tape: {roll: 11 m, lost-per-roll: 0.1 m, leg: 70 mm, stretch: 0 %}
money: {currency: EUR, labour: 36 EUR/h, downtime: 3600 EUR/h}
shift: {length: 600 s}`

  it('are counted apart, and a roll lasts as long as ever', () => {
    // at 324.5 the strip of case 32 has just been laid: on the cases that go out, 32 to 59, there are 28, off the roll come 27,
    // for cases 33 to 59. One change, at 414, and one blade service, before case 46 at 464
    const { read } = counted(text, 324.5)
    const shifts = 275.5 / 600
    expect(read('measures.tape-per-case')).toBeCloseTo(28 * 0.54, 9)
    expect(read('measures.output')).toBeCloseTo(28 / shifts, 9)
    expect(read('equipment.s.heads.top.tape-per-case')).toBeCloseTo(27 * 0.54, 9)
    expect(read('equipment.s.heads.top.loss')).toBeCloseTo(0.2 / shifts, 9)
    expect(read('measures.tape')).toBeCloseTo((27 * 0.54 + 0.2) / shifts, 9)
    expect(read('equipment.s.heads.top.rolls')).toBeCloseTo((27 * 0.54 + 0.2) / 11 / shifts, 9)
    expect(read('equipment.s.heads.top.changes')).toBeCloseTo(1 / shifts, 9)
    expect(read('equipment.s.measures.roll-changes')).toBeCloseTo(1 / shifts, 9)
    expect(read('equipment.s.measures.blade-services')).toBeCloseTo(1 / shifts, 9)
    expect(read('equipment.s.states.tape-being-changed')).toBeCloseTo(1 / 275.5, 9)
  })

  it('give time elements and money of the counted part', () => {
    const { read } = counted(text, 324.5)
    const shifts = 275.5 / 600
    // all of it but 2 s at the blade
    expect(read('equipment.s.effectiveness.PBT')).toBeCloseTo(273.5 / shifts, 9)
    expect(read('equipment.s.effectiveness.quality')).toBe(28)
    // one of the crew for 275.5 s at 36 EUR/h; 3 s of stops at 1 EUR/s
    expect(read('measures.cost-per-1000-labour')).toBeCloseTo(275.5 * 0.01, 9)
    expect(read('measures.cost-per-1000-downtime')).toBeCloseTo(3, 9)
  })

  it('are cut in two at 414.4: the rest of the stop and all of the stub come later', () => {
    const { read } = counted(text, 414.4)
    expect(read('equipment.s.measures.roll-changes')).toBe(0)
    expect(read('equipment.s.measures.roll-changes-stop')).toBeCloseTo(0.6, 9)
    expect(read('equipment.s.states.tape-being-changed')).toBeCloseTo(0.6 / 185.6, 9)
    expect(read('equipment.s.heads.top.changes')).toBeCloseTo(1 / (185.6 / 600), 9)
    expect(read('equipment.s.heads.top.loss')).toBeCloseTo(0.2 / (185.6 / 600), 9)
  })
})

describe('what a mechanism counts for its own working', () => {
  it('goes on over the cut: a pallet change after each third case, orders in hand', () => {
    const text = `${cases}
arrivals: {p: {orders: [{case: a, quantity: 4, time-between: 10 s}, {case: a, quantity: 5, time-between: 10 s}]}}
line: {s: {type: station, time: 1 s, every: {cases: 3, stop: 2 s}}}
shift: {length: 100 s}`
    // done at 11, 21 … 91: changes at 31, 61 and 91. Orders done at 40 and 90
    const { read } = counted(text, 50)
    expect(read('equipment.s.measures.planned-stops')).toBe(2 / 0.5)
    expect(read('arrivals.p.orders-done')).toBe(1 / 0.5)
  })

  it('goes on over the cut: turns of a divert', () => {
    const text = `${cases}
arrivals: {p: {time-between: 10 s}}
line:
  d: {type: divert, rule: alternate, to: [x, y], time: 0 s}
  x: {type: station, time: 1 s, to: exit}
  y: {type: station, time: 1 s, to: exit}
shift: {length: 100 s}`
    // x at 10, 30, 50, 70, 90, y between: after 25 s four to x and four to y; after 35 s three to x and four to y
    expect(counted(text, 25).read('equipment.d.measures.to-x')).toBeCloseTo(4 / 0.75, 9)
    expect(counted(text, 35).read('equipment.d.measures.to-x')).toBeCloseTo(3 / 0.65, 9)
    expect(counted(text, 35).read('equipment.d.measures.to-y')).toBeCloseTo(4 / 0.65, 9)
  })
})

describe('shifts in a row', () => {
  const row = (more: string) => tens(`{length: 100 s, ${more}}`)

  it('lose whole ones: of 9, 10 and 10 cases the first', () => {
    // the case of 100 s leaves in the shift after, at 104
    const all = counted(row('start: carry-over, campaign: 3'), 0)
    expect(all.outputs).toEqual([9, 10, 10])
    expect(all.read('measures.target-held')).toBeCloseTo(2 / 3, 12)
    const { read, outputs } = counted(row('start: steady, campaign: 3'), 100)
    expect(outputs).toEqual([10, 10])
    expect(read('measures.output')).toBe(10)
    expect(read('measures.throughput')).toBeCloseTo(0.1, 12)
    expect(read('measures.target-held')).toBe(1)
    expect(read('arrivals.p.arrived')).toBe(10)
    // at 100 s a case is in work: 4 s to 104, then nine times 4 s, then none to 200 s, when the next begins
    expect(read('equipment.s.states.working')).toBeCloseTo(40 / 100, 9)
  })

  it('begin with what happens at the very start of the first that is counted', () => {
    const text = (campaign: number) => `${cases}
arrivals: {p: {time-between: 0.5 s, when-full: queue}}
line: {s: {type: station, time: 1 s}, t: {type: station, time: 0 s, run-by: people}}
shift: {length: 10 s, start: carry-over, campaign: ${campaign}}`
    const uncut = counted(text(3), 0).outputs
    for (const shifts of [1, 2]) expect(counted(text(3), 10 * shifts).outputs).toEqual(uncut.slice(shifts))
  })

  it('of a demo: three nights after two are five nights less two, in all that adds up', async () => {
    const nights = async (campaign: number, cut: number) => {
      const line = new Line(await loadDemo('night-orders', [`shift.campaign=${campaign}`]))
      const { length, 'run-out': runOut } = (await loadDemo('night-orders')).shift
      line.countFrom = (length + runOut) * cut
      return { line, result: line.simulate('nights', 1) }
    }
    const [five, two, three] = [await nights(5, 0), await nights(2, 0), await nights(5, 2)]
    let checked = 0
    for (const [index, { measure, part }] of five.line.columns.entries()) {
      const [all, before, after] = [five, two, three].map(({ result }) => result.values[index]!)
      const name = [...measure.path, part].join('.')
      const isState = measure.path[2] === 'states'
      if (measure.kind === 'total' || isState)
        expect([name, 2 * before! + 3 * after!]).toEqual([name, expect.closeTo(5 * all!, 6)])
      else if (measure.kind === 'ratio' && !/oee|cost-per-1000$/.test(name))
        expect([name, before! + after!]).toEqual([name, expect.closeTo(all!, 6)])
      else continue
      if (after !== 0) checked++
    }
    expect(checked).toBeGreaterThan(60)
    expect([...two.result.outputs, ...three.result.outputs]).toEqual([...five.result.outputs])
    for (const control of [0, 1])
      expect(two.result.controls[control]! + three.result.controls[control]!).toBeCloseTo(
        five.result.controls[control]!,
        6,
      )
    // the picture shows the last night, which no cut touches
    expect(three.result.held).toEqual(five.result.held)
  })
})

describe('in steps', () => {
  it('tells how many cases are inside, floor stacks included', () => {
    const text = `${cases}
arrivals: {p: {time-between: 10 s, batch: 2, when-full: queue}}
line: {s: {type: station, time: 15 s}}
shift: {length: 50 s}`
    // come at 10, 20, 30, 40, 50, two each; done at 25, 40: inside at 8, 16 … 48
    const line = build(text)
    const inside: number[] = []
    const steps = line.simulateInSteps('cut', 1, 8)
    while (!steps.next().done) inside.push(line.casesInside)
    expect(inside).toEqual([0, 2, 4, 5, 6, 6])
    // two more at 50
    expect(line.casesInside).toBe(8)
  })

  it('gives the same as in one go, wherever the steps fall', async () => {
    const inSteps = (line: Line, step: number) => {
      const steps = line.simulateInSteps('steps', 3, step)
      let next = steps.next()
      while (!next.done) next = steps.next()
      return next.value
    }
    for (const engine of ['events', 'ahead'] as const) {
      const line = new Line(await loadDemo('soap-works'), engine)
      line.countFrom = 5000
      const whole = line.simulate('steps', 3)
      for (const step of [1000, 1250, 7777]) {
        // what is worked ahead is summed anew from each step on
        if (engine === 'events') expect(inSteps(line, step)).toEqual(whole)
        else expect(differences(line, inSteps(line, step), whole)).toEqual([])
      }
      // counts everything again afterwards
      line.countFrom = 0
      const anew = new Line(await loadDemo('soap-works'), engine)
      expect(line.simulate('steps', 3)).toEqual(anew.simulate('steps', 3))
    }
  })
})

describe('where counting may begin', () => {
  const from = (shift: string, instant: number) => () => {
    build(tens(shift)).countFrom = instant
  }

  it('one shift: while some working time remains', () => {
    const shift = '{length: 100 s, run-out: 10 s, breaks: [{at: 70 s, for: 20 s}]}'
    for (const instant of [0, 1, 69, 75, 99.9]) expect(from(shift, instant)).not.toThrow()
    for (const instant of [-1, 100, 105, Number.NaN, Infinity])
      expect(from(shift, instant)).toThrow(RangeError)
    expect(from('{length: 100 s, breaks: [{at: 70 s, for: 30 s}]}', 80)).toThrow(
      /80 s: some of the working time/,
    )
  })

  it('several: whole shifts, run-outs included, and not all of them', () => {
    const shift = '{length: 100 s, run-out: 10 s, start: steady, campaign: 3}'
    for (const instant of [0, 110, 220]) expect(from(shift, instant)).not.toThrow()
    for (const instant of [-110, 50, 100, 330, Number.NaN, Infinity])
      expect(from(shift, instant)).toThrow(RangeError)
    expect(from(shift, 50)).toThrow(/50 s: of 3 shifts in a row .* a multiple of 110 s, at most 220 s/)
  })

  it('what was set stays when a bad one is refused', () => {
    const line = build(tens('{length: 100 s}'))
    line.countFrom = 32
    expect(() => {
      line.countFrom = 200
    }).toThrow(RangeError)
    expect(line.countFrom).toBe(32)
    expect(line.simulate('cut', 1).outputs[0]).toBeCloseTo(7 / 0.68, 9)
  })

  it('`steady` may have shifts in a row, `empty` may not', () => {
    expect(() => build(tens('{length: 100 s, start: steady, campaign: 2}'))).not.toThrow()
    expect(() => build(tens('{length: 100 s, campaign: 2}'))).toThrow()
  })
})
