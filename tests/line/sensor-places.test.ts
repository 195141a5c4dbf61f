/** Sensors on accumulating conveyors against a reference that moves every case in small steps: random lengths, speeds, places, stops and steps of speed. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'

const lengths: Record<string, number> = { a: 0.3, b: 0.5 }
/** Of the reference, s. */
const step = 0.005
const end = 90

interface Bed {
  length: number
  speed: number
  fast: number
  spacing: number
  place: number
  between: number
  service: number
  stopAt: number
}

const beds = fc.record<Bed>({
  length: fc.integer({ min: 10, max: 50 }).map((tenths) => tenths / 10),
  speed: fc.integer({ min: 6, max: 24 }),
  fast: fc.integer({ min: 3, max: 30 }),
  spacing: fc.integer({ min: 20, max: 200 }),
  place: fc.double({ min: 0.02, max: 0.98, noNaN: true }),
  between: fc.integer({ min: 2, max: 9 }),
  service: fc.integer({ min: 1, max: 6 }),
  stopAt: fc.integer({ min: 10, max: 60 }),
})

/** The station `w`, which nothing comes to, stands while the sensor sees a case. */
const lineOf = (bed: Bed): Line =>
  new Line(
    loadScenario(`
cases: {a: {length: 300 mm, width: 200 mm, height: 200 mm}, b: {length: 500 mm, width: 200 mm, height: 200 mm}}
arrivals:
  p: {time-between: {exponential: {mean: ${bed.between} s}}, when-full: queue, to: c}
  q: {time-between: 1000 h, when-full: queue, to: w}
line:
  c: {type: conveyor, length: ${bed.length} m, speed: ${bed.speed} m/min, spacing: ${bed.spacing} mm, speeds: [{of: c, above: 50 %, at: ${bed.fast} m/min}], planned: [{does: cleaning, at: ${bed.stopAt} s, takes: 7 s}]}
  p: {type: station, time: {exponential: {mean: ${bed.service} s}}, to: exit}
  w: {type: station, time: 1 s, stops-when: {full: c, at: ${bed.length * bed.place} m, for: 0 s}}
shift: {length: ${end} s}
`).scenario,
  )

type Edge = [time: number, isCovered: boolean]
/** What happens on the bed: a case of a length comes, the first one goes, the drive runs at a speed, 0 while it stands. */
type Happening = { time: number } & ({ comes: number } | { goes: true } | { speed: number })

/** What the line does, and what its sensor sees. */
function seen(bed: Bed, seed: string): { happens: Happening[]; edges: Edge[] } {
  const line = lineOf(bed)
  const happens: Happening[] = []
  const edges: Edge[] = []
  const kinds = new Map<number, string>()
  let usual = bed.speed / 60
  let stands = false
  line.observe(({ time, event, at, case: item, kind, speed }) => {
    if (event === 'arrives') kinds.set(item!, kind!)
    if (event === 'taken' && at === 'c') happens.push({ time, comes: lengths[kinds.get(item!)!]! })
    if (event === 'taken' && at === 'p') happens.push({ time, goes: true })
    if (event === 'runs-at') usual = speed!
    if (event === 'planned-work') stands = true
    if (event === 'planned-work-done') stands = false
    if (['runs-at', 'planned-work', 'planned-work-done'].includes(event))
      happens.push({ time, speed: stands ? 0 : usual })
    if (event === 'sensor-stops' || event === 'sensor-starts') edges.push([time, event === 'sensor-stops'])
  })
  line.simulate(seed, 1)
  return { happens, edges }
}

/** The same by small steps: each case goes on as far as the drive, the end and the case ahead let it. */
function bySteps({ length, speed: usual, spacing, place }: Bed, happens: readonly Happening[]): Edge[] {
  const cases: { at: number; length: number; isGone: boolean }[] = []
  const edges: Edge[] = []
  const sensor = length - length * place
  let speed = usual / 60
  let wasCovered = false
  let next = 0
  for (let time = 0; time < end; ) {
    const until = Math.min(time + step, happens[next]?.time ?? Infinity)
    for (const [index, each] of cases.entries()) {
      const ahead = cases[index - 1]
      const room = ahead === undefined ? Infinity : ahead.at - ahead.length - spacing / 1000
      each.at = Math.min(each.at + speed * (until - time), each.isGone ? Infinity : length, room)
    }
    time = until
    for (; happens[next]?.time === time; next++) {
      const what = happens[next]!
      if ('comes' in what) cases.push({ at: 0, length: what.comes, isGone: false })
      else if ('goes' in what) {
        // of those that have gone the last one alone is felt
        if (cases[0]!.isGone) cases.shift()
        cases[0]!.isGone = true
      } else speed = what.speed
    }
    const isCovered = cases.some(
      (each) => !each.isGone && each.at >= sensor && each.at - each.length < sensor,
    )
    if (isCovered !== wasCovered) edges.push([time, isCovered])
    wasCovered = isCovered
  }
  return edges
}

describe('a sensor on an accumulating conveyor', () => {
  it('sees cases when and where a movement by small steps has them', () => {
    let edges = 0
    let changes = 0
    fc.assert(
      fc.property(beds, fc.nat(1e6), (bed, seed) => {
        const line = seen(bed, `${seed}`)
        const steps = bySteps(bed, line.happens)
        expect(steps.map(([, isCovered]) => isCovered)).toEqual(line.edges.map(([, isCovered]) => isCovered))
        for (const [index, [time]] of line.edges.entries())
          expect(Math.abs(steps[index]![0] - time)).toBeLessThan(step + 1e-6)
        edges += line.edges.length
        changes += line.happens.filter((each) => 'speed' in each).length
      }),
      { numRuns: 80, seed: 20261129 },
    )
    expect(edges / 80).toBeGreaterThan(8)
    expect(changes / 80).toBeGreaterThan(3)
  })
})
