/** For lines of any shape and cuts anywhere: the simulation is the same, balances close, before and after make the whole. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Line, ShiftResult } from '../../src/line/line.js'
import type { ShiftEvent } from '../../src/line/shift-event.js'
import { DeadlockError } from '../../src/line/standstill.js'
import { mixedLine, mixedShifts } from './mixed.js'
import { lines } from './topology.js'

/** Shifts of `lines`: a quarter of an hour and a minute of run-out; breaks of three minutes, s. */
const end = 960
const breaks = [
  [240, 300],
  [540, 660],
] as const

type Sums = Map<string, number>
const add = (sums: Sums, name: string, by: number) => sums.set(name, (sums.get(name) ?? 0) + by)

/** What happens up to `cut`, told from the events of a shift one by one: counts, metres, seconds, cases x seconds. */
function sumsOf(events: readonly ShiftEvent[], cut: number): Sums {
  const sums: Sums = new Map()
  const states = new Map<string, { state: string; since: number }>()
  const where = new Map<number, { at: string; since: number }>()
  const jammed = new Map<string, string | undefined>()
  const go = (item: number, now: number, to: string | null) => {
    const before = where.get(item)
    if (before) add(sums, `equipment.${before.at}.measures.held`, now - before.since)
    if (to === null) where.delete(item)
    else where.set(item, { at: to, since: now })
  }
  for (const { time, event, at, case: item, ...more } of events) {
    if (time > cut) break
    switch (event) {
      case 'arrives':
        add(sums, `arrivals.${at}.arrived`, 1)
        break
      case 'turned-away':
        add(sums, `arrivals.${at}.turned-away`, 1)
        break
      case 'taken':
        add(sums, `equipment.${more.from}.measures.to-${at}`, 1)
        add(sums, `equipment.${more.from}.measures.inspected`, 1)
        go(item!, time, at)
        break
      case 'leaves': {
        add(sums, `equipment.${at}.measures.inspected`, 1)
        const as = { good: 'output', rejected: 'rejected', unsealed: 'unsealed' }[more.as!]
        add(sums, `measures.${as}`, 1)
        if (more.as === 'good') add(sums, 'measures.time-in-system', more.after!)
        go(item!, time, null)
        break
      }
      case 'jams':
        jammed.set(at, more.jam)
        break
      case 'spoilt':
        add(sums, `equipment.${at}.measures.cases-lost`, 1)
        if (jammed.get(at) !== undefined) add(sums, `equipment.${at}.jams.${jammed.get(at)}.cases-lost`, 1)
        go(item!, time, null)
        break
      case 'planned-stop':
        add(sums, `equipment.${at}.measures.planned-stops`, 1)
        break
      case 'stops':
        add(sums, `equipment.${at}.measures.${more.cause}`, 1)
        if (more.jam !== undefined) add(sums, `equipment.${at}.jams.${more.jam}.stops`, 1)
        break
      case 'planned-work':
        add(sums, `equipment.${at}.measures.planned-work`, 1)
        break
      case 'other-work-done':
        add(sums, `${at}.other-work-done`, 1)
        break
      case 'strip-laid':
        add(sums, `equipment.${at}.heads.${more.head}.tape-per-case`, more.tape!)
        break
      case 'passes-unsealed':
        add(sums, `equipment.${at}.heads.${more.head}.missed`, 1)
        break
      case 'roll-changed':
        add(sums, `equipment.${at}.heads.${more.head}.changes`, 1)
        break
      case 'state': {
        const before = states.get(at)
        if (before) add(sums, `equipment.${at}.states.${before.state}`, time - before.since)
        states.set(at, { state: more.state!, since: time })
      }
    }
  }
  for (const item of [...where.keys()]) go(item, cut, null)
  for (const [at, { state, since }] of states) add(sums, `equipment.${at}.states.${state}`, cut - since)
  return sums
}

/**
 * The figures of a result as sums over what is counted, `time` s and `shifts` shifts; others are left out, and those of pieces side by side taken
 * together, which `together.test.ts` holds against those of each.
 */
function sumsIn(line: Line, { values, outputs }: ShiftResult, time: number, shifts: number): Sums {
  const sums: Sums = new Map()
  const pieces = new Set(line.columns.map(({ measure }) => measure.path[1]))
  for (const [index, { measure, part }] of line.columns.entries()) {
    const name = measure.path.join('.')
    if (pieces.has(`${measure.path[1]} 1`)) continue
    const value = values[index]!
    if (part === 'over') continue
    if ((measure.kind === 'total' || measure.kind === 'count') && measure.path[2] !== 'effectiveness')
      sums.set(name, value * shifts)
    else if (measure.path[2] === 'states' || name.endsWith('.held')) sums.set(name, value * time)
    else if (name === 'measures.time-in-system')
      sums.set(name, outputs[0] === 0 ? 0 : value * outputs[0]! * shifts)
    else if (/turned-away$|-stop$|-wait$|heads.*tape-per-case$/.test(name)) sums.set(name, value)
  }
  return sums
}

/** Sums that the events do not tell: of these only that a cut makes none larger. */
const untold =
  /-stop$|-wait$|in-breaks$|jams\..*\.time$|-found$|-missed$|\.loss$|\.tape$|tape-mass$|\.rolls$|equipment.*rejected$|arrivals.*held$/

describe('a cut anywhere', () => {
  it('changes no event, closes every balance, and parts all that adds up', () => {
    let cuts = 0
    let compared = 0
    fc.assert(
      fc.property(
        fc.oneof(
          lines.map((text) => ({ text, recordedStops: {}, uncounted: 0 })),
          mixedShifts,
        ),
        fc.integer({ min: 1, max: 1000 }),
        fc.oneof(fc.integer({ min: 1, max: 899 }), fc.double({ min: 1, max: 899, noNaN: true })),
        (given, shift, cut) => {
          const line = mixedLine(given)
          const run = (from: number) => {
            const events: ShiftEvent[] = []
            line.countFrom = from
            line.observe((event) => events.push(event))
            // throws when a balance does not close
            return { events, result: line.simulate('cut', shift) }
          }
          let whole: ReturnType<typeof run>
          try {
            whole = run(0)
          } catch (error) {
            if (!(error instanceof DeadlockError)) throw error
            expect(() => run(cut)).toThrow(error.message)
            return
          }
          const after = run(cut)
          expect(after.events).toEqual(whole.events)
          const rest = breaks.reduce((sum, [from, to]) => sum + Math.max(0, to - Math.max(from, cut)), 0)
          const shifts = (900 - cut - rest) / (900 - 180)
          const all = sumsIn(line, whole.result, end, 1)
          const later = sumsIn(line, after.result, end - cut, shifts)
          const earlier = sumsOf(whole.events, cut)
          cuts++
          for (const [name, sum] of all) {
            if (untold.test(name)) continue
            expect([name, (earlier.get(name) ?? 0) + later.get(name)!]).toEqual([
              name,
              expect.closeTo(sum, 5),
            ])
            compared++
          }
          // what is left is no more than there was
          for (const [name, sum] of later)
            expect([name, sum >= 0 && sum <= all.get(name)! + 1e-6]).toEqual([name, true])
        },
      ),
      { numRuns: 300, seed: 20261125 },
    )
    // a check of the check: nearly all lines run, and each has dozens of sums
    expect(cuts).toBeGreaterThan(240)
    expect(compared).toBeGreaterThan(cuts * 24)
  })
})
