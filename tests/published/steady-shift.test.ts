/** A shift without any variability, worked out by hand: every figure must come out exactly. */
import { describe, expect, it } from 'vitest'
import type { Figure } from '../../src/catalogue/figure.js'
import { simulate } from './run.js'

/** 24.4 m/min, the usual metric writing of 80 ft/min. */
const speed = 24.4 / 60
/** Belt travel from one leading edge to the next: 400 mm of case and 300 mm of gap. */
const pitch = 0.4 + 0.3
const shift = 8 * 3600

const scenario = (arrivals: string) => ({
  arrivals,
  line: `{sealer: {type: sealer, bed: 1.9 m, belt-speed: 24.4 m/min, minimum-gap: 300 mm,
    roll-change: {time: 0 s}, heads: {top: {position: 1.2 m}, bottom: {position: 0.9 m}}}}`,
  tape: '{roll: 1371 m, leg: 70 mm, stretch: 0 %, lost-per-roll: 0 m}',
  length: '8 h',
  shifts: 2,
})

// all by the geometry of the machine; common practice, no source
describe('400 mm cases every 4 s, belts at 24.4 m/min', async () => {
  const result = await simulate(scenario('{packing: {time-between: 4 s, when-full: wait}}'))
  const sealer = result.equipment.sealer!
  const mean = (path: 'measures' | 'states', key: string) =>
    (sealer[path] as Record<string, Figure>)[key]!.mean!

  it('7200 cases arrive, the last as the shift ends, and none waits', () => {
    expect(result.arrivals.packing!.arrived!.mean).toBe(7200)
    expect(result.arrivals.packing!.blocked!.mean).toBe(0)
  })

  it('a case is on the belts for 1.9 m at belt speed', () => {
    expect(result.measures['time-in-system']!.mean).toBeCloseTo(1.9 / speed, 6)
    // 4.67 s: case 7198, come at 28 792 s, is out at 28 796.67 s; case 7199 would be at 28 800.67 s
    expect(result.outputs).toEqual([7198, 7198])
    expect(result.measures.throughput!.mean).toBeCloseTo(7198 / shift, 12)
    // 7198 whole stays, 4 s of case 7199, nothing of case 7200
    expect(mean('measures', 'held')).toBeCloseTo((7198 * (1.9 / speed) + 4) / shift, 9)
  })

  it('1.080 m of tape a case: two strips of 400 mm and two legs of 70 mm', () => {
    expect(result.measures['tape-per-case']!.mean).toBeCloseTo(1.08, 9)
    for (const head of ['top', 'bottom'])
      expect(sealer.heads![head]!['tape-per-case']!.mean).toBeCloseTo(0.54, 9)
  })

  it('2538 cases a roll and head, so two changes a head', () => {
    // 1371 / 0.54 = 2538.9. Case 7199 has met both heads, 2.95 s after it came at 28 796 s; two rolls close
    // 5076.
    const stub = 1371 - 2538 * 0.54
    for (const head of ['top', 'bottom']) {
      const figures = sealer.heads![head]!
      expect(figures.changes!.mean).toBe(2)
      expect(figures.loss!.mean).toBeCloseTo(2 * stub, 6)
      expect(figures.tape!.mean).toBeCloseTo(7199 * 0.54 + 2 * stub, 6)
      expect(figures.rolls!.mean).toBeCloseTo((7199 * 0.54 + 2 * stub) / 1371, 9)
    }
    expect(mean('measures', 'roll-changes')).toBe(4)
    expect(mean('measures', 'roll-changes-stop')).toBe(0)
    expect(result.measures['tape-lost-per-case']!.mean).toBeCloseTo((4 * stub) / 7198, 9)
  })

  it('the roll is changed for case 2539, not for case 2538', async () => {
    // a case has met both heads 2.95 s after it came
    const changesOf = async (cases: number) => {
      const parts = scenario('{packing: {time-between: 4 s, when-full: wait}}')
      const { equipment } = await simulate({ ...parts, length: `${4 * cases + 3} s` })
      return equipment.sealer!.measures['roll-changes']!.mean
    }
    expect(await changesOf(2538)).toBe(0)
    expect(await changesOf(2539)).toBe(2)
  })

  it('is sealing for 43 % of the time', () => {
    // until the next case may enter, a case takes pitch / speed = 1.7213 s; the last of the 7199 that are on
    // the belts came 4 s before the end, and case 7200 enters in the last instant
    const sealing = (7199 * (pitch / speed)) / shift
    expect(sealing).toBeCloseTo(0.43, 3)
    expect(mean('states', 'working')).toBeCloseTo(sealing, 9)
    expect(mean('states', 'waiting')).toBeCloseTo(1 - sealing, 9)
  })
})

describe('the same machine with a case always ready', async () => {
  const result = await simulate(scenario('{packing: {time-between: 10 ms, when-full: wait}}'))

  it('passes 34.9 cases a minute: speed over length and gap', () => {
    // the first is there at 0.01 s and out after 4.672 s; then one every 1.7213 s
    const count = Math.floor((shift - 0.01 - 1.9 / speed) / (pitch / speed)) + 1
    expect(count).toBe(16_729)
    expect(result.outputs).toEqual([count, count])
    expect(60 * result.measures.throughput!.mean!).toBeCloseTo(34.9, 1)
    expect((60 * speed) / pitch).toBeCloseTo(34.9, 1)
  })

  it('is sealing from the first case on', () => {
    expect(result.equipment.sealer!.states.working!.mean).toBeCloseTo(1 - 0.01 / shift, 9)
  })

  it('changes rolls after every 2538 cases of each head', () => {
    // case n meets a head at 0.01 + (n - 1) x 1.7213 s + position / speed; 6 x 2538 = 15 228 and 7 x 2538 =
    // 17 766
    for (const head of ['top', 'bottom']) expect(result.equipment.sealer!.heads![head]!.changes!.mean).toBe(6)
  })
})

describe('belt speed and gap', () => {
  it.each([
    // the arm needs 100 mm of wiping and 0.45 s to swing back: at 24 m/min 280 mm, at 12 m/min 190 mm
    { belt: 24, gap: 0.28 },
    { belt: 12, gap: 0.19 },
  ])('$belt m/min, the heads alone keep the gap', async ({ belt, gap }) => {
    const base = scenario('{packing: {time-between: 10 ms, when-full: wait}}')
    const line = base.line
      .replace('24.4 m/min', `${belt} m/min`)
      .replace('minimum-gap: 300 mm', 'minimum-gap: 0 mm')
    const result = await simulate({ ...base, line })
    const headway = (0.4 + gap) / (belt / 60)
    expect(result.outputs[0]).toBe(Math.floor((shift - 0.01 - 1.9 / (belt / 60)) / headway) + 1)
  })
})
