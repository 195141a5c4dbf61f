/** Hand figures as the inputs may be: by hand where they follow an input, and in the document and the text of a check. */
import { describe, expect, it } from 'vitest'
import { run } from '../../src/index.js'
import { rateAt } from '../../src/inputs/posterior.js'
import { checkText } from '../../src/questions/check/report.js'
import { check } from '../../src/questions/check/study.js'
import { readScenario } from '../../src/scenario/read.js'
import { soundLine } from './line.js'

const checked = (...set: string[]) => check(readScenario(soundLine, { set }))
const style = { bold: (text: string) => text, width: 100 }
const jams = 'equipment.sealer.measures.jams'

describe('hand figures as the inputs may be', () => {
  it('follow the inputs: jams a shift are cases x chance', () => {
    const { likely, hand } = checked('line.sealer.jams.chance=18 in 36000 cases')
    const { low, high } = likely!.ranges[jams]!
    const cases = hand!.arriving.perShift.value!
    // a small chance is as good as a rate; of 59 draws the ends are known to some percent
    expect(low / (cases * rateAt(0.05, 18, 36_000))).toBeGreaterThan(0.85)
    expect(low / (cases * rateAt(0.05, 18, 36_000))).toBeLessThan(1.15)
    expect(high / (cases * rateAt(0.95, 18, 36_000))).toBeGreaterThan(0.85)
    expect(high / (cases * rateAt(0.95, 18, 36_000))).toBeLessThan(1.15)
    const row = hand!.rows.find(({ measure }) => measure === jams)!
    expect(row.value).toBeGreaterThan(low)
    expect(row.value).toBeLessThan(high)
  })

  it('are wide where little is known, and hold what is worked out with inputs held fixed', () => {
    const widthOf = (...set: string[]) => {
      const { likely, hand } = checked(...set)
      const { low, high } = likely!.ranges.expected!
      expect(hand!.expected.throughput.value).toBeGreaterThan(low * 0.99)
      expect(hand!.expected.throughput.value).toBeLessThan(high * 1.01)
      return high - low
    }
    const [few, many] = [
      widthOf(
        'line.sealer.breakdowns.after=2 in 80 h',
        'arrivals.packing.time-between={exponential: {mean: 2 s}}',
      ),
      widthOf(
        'line.sealer.breakdowns.after=200 in 8000 h',
        'arrivals.packing.time-between={exponential: {mean: 2 s}}',
      ),
    ]
    expect(few).toBeGreaterThan(3 * many)
  })

  it('that owe nothing to an input have no range', () => {
    const { likely } = checked('line.sealer.jams.chance=18 in 36000 cases')
    expect(likely!.ranges['measures.tape']).toBeUndefined()
    expect(likely!.ranges['pieces.infeed']).toBeUndefined()
    expect(likely!.ranges['pieces.sealer']).toBeDefined()
  })

  it('are none where nothing says how well it is known', () => {
    const result = checked()
    expect(result).not.toHaveProperty('likely')
    expect(result.evidence).toEqual([])
    expect(result.exact).toMatch(
      /^None of the \d+ values that the scenario gives says how well it is known. All are taken as exact, such as line.sealer.jams.chance/,
    )
    expect(checkText(result, style)).toContain(result.exact.slice(0, 60))
    expect(checkText(result, style)).not.toContain('Evidence for the inputs')
  })

  it('stand in the text beside what is held fixed', () => {
    const result = checked(
      'line.sealer.jams.chance=18 in 36000 cases',
      'crew.operator.walk={guess: 15 s, between: [5 s, 60 s]}',
    )
    const text = checkText(result, style)
    expect(text).toContain('5 to 95 % of the draws of the inputs')
    expect(text).toContain('Evidence for the inputs')
    expect(text).toMatch(
      /line\.sealer\.jams\.chance +0\.05 % +counted: 18 in 36000 cases +0\.0296 to 0\.079 % \(95 %\)/,
    )
    expect(text).toMatch(/crew\.operator\.walk +15 s +guessed +5 to 60 s \(90 %\)/)
    expect(result.exact).toMatch(
      /^2 values say how well they are known; the other \d+ do not and are taken as exact: /,
    )
    expect(result.evidence[0]).toEqual({
      ...{ path: 'line.sealer.jams.chance', form: 'count', restsOn: 'counted: 18 in 36000 cases' },
      ...{ unit: 'share', value: 0.0005, confidence: 0.95 },
      low: expect.closeTo(0.000296, 6) as number,
      high: expect.closeTo(0.00079, 6) as number,
    })
  })

  it('of what was never seen are finite, and a run of it is a run without', async () => {
    const none = [
      'line.sealer.breakdowns.after=0 in 640 h',
      'line.infeed.breakdowns={after: 0 in 9 h, counted-in: calendar-time, repair: 9 min}',
    ]
    const never = [
      'line.sealer.breakdowns.after=1e9 h',
      'line.infeed.breakdowns={after: 1e9 h, counted-in: calendar-time, repair: 9 min}',
    ]
    const result = checked(...none)
    expect(JSON.stringify(result)).not.toMatch(/NaN|Infinity/)
    expect(result.evidence[1]).toMatchObject({ value: null, high: null, restsOn: 'counted: 0 in 640 h' })
    expect(checkText(result, style)).toContain('none seen')
    expect(checkText(result, style)).toMatch(/above 174 h|above 173 h/)
    const measures = async (set: string[]) => {
      const { document } = await run(readScenario(soundLine, { set, shifts: 2 }), {
        plain: true,
        inputs: 'fixed',
      })
      expect(JSON.stringify(document)).not.toMatch(/NaN|Infinity/)
      return document.measures
    }
    expect(await measures(none)).toEqual(await measures(never))
    const drawn = await run(readScenario(soundLine, { set: none, shifts: 2 }), { plain: true, draws: 10 })
    expect(JSON.stringify(drawn.document)).not.toMatch(/NaN|Infinity/)
  })
})
