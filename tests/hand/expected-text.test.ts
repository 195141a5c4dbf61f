/** What a check says of the expected output: a sentence near the top, a warning that names stop and room, a table that adds up, a row of a run. */
import { describe, expect, it } from 'vitest'
import { wordsFor } from '../../src/catalogue/printed-units.js'
import { checkScenario } from '../../src/hand/check.js'
import { foretold } from '../../src/hand/foretold.js'
import { handCalculation } from '../../src/hand/hand.js'
import { checkResult } from '../../src/questions/check/document.js'
import { expectedSentence, expectedTable } from '../../src/questions/check/expected-table.js'
import { checkText } from '../../src/questions/check/report.js'
import type { RunResult } from '../../src/questions/run/document.js'
import { handTable } from '../../src/questions/run/hand-table.js'
import { loadScenario } from '../../src/scenario/load.js'
import { saidRows } from '../report/said.js'

/** Packers wait before 3 m of infeed, and a mean stop of the sealer is four times what that lasts. */
const shortInfeed = `title: A short infeed
target: 11 cases/min
cases: {box: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {packing: {time-between: {gamma: {mean: 5 s, cv: 0.5}}, when-full: wait}}
line:
  infeed: {type: conveyor, length: 3 m, speed: 18 m/min}
  sealer:
    type: sealer
    belt-speed: 20 m/min
    flaps: {time: 1 s}
    jams: {chance: 9 per 1000 cases, clear: {lognormal: {mean: 75 s, cv: 0.6}}}
  palletiser: {type: station, time: 3 s, every: {cases: 40, stop: 60 s}}
crew: {operator: {people: 1, walk: 20 s, does: [jams, roll-change]}}
shift: {length: 8 h, rolls-start: part-used}
`

function resultOf(sets: readonly string[] = []) {
  const loaded = loadScenario(shortInfeed, { sets })
  const made = { version: '', node: '', scenario: { title: 'A short infeed', sha256: '' }, repeat: '' }
  return checkResult(loaded, checkScenario(loaded), made)
}

describe('a line whose stops outlast its buffer', () => {
  const result = resultOf()
  const { expected } = result.hand!

  it('is warned of: what, by how much, which stop, which room, the mend and how far off the figure is', () => {
    const finding = result.findings.find(({ code }) => code === 'target-above-expected')!
    expect(finding).toMatchObject({ severity: 'warning', path: 'target' })
    const short = (1 - (expected.throughput.value! * 60) / 11) * 100
    expect(finding.message).toContain(`${Number(short.toPrecision(3))} % below the target of 11 cases/min`)
    expect(finding.message).toMatch(
      /the jams of `sealer`.*`infeed`: about 5 free places\) lasts 25 s: all of them hold up/,
    )
    expect(finding.fix).toMatch(
      /^add \d+ free places before `sealer`.*have fewer or shorter jams of `sealer`$/,
    )
    expect(finding.basis).toContain(expected.usualError.words)
    expect(checkText(result, { bold: (text) => text, width: 100 }, true)).toContain(
      'by hand calculation it misses its target',
    )
  })

  it('a run of the mend that is named reaches the target by the same figure', () => {
    const places = Number(
      /(\d+) free places/.exec(result.findings.find(({ code }) => code === 'target-above-expected')!.fix)![1],
    )
    // a metre more holds 2.5 cases of 400 mm, and 0.2 cases/s at 0.3 m/s ride on it
    const longer = resultOf([`line.infeed.length=${3 + places / (2.5 - 0.2 / 0.3)} m`])
    expect(longer.hand!.expected.throughput.value! * 60).toBeGreaterThan(11 * 0.99)
  })

  it('says expected output beside the target near the top, and where no figure is what it is at most and why', () => {
    expect(expectedSentence(result)).toMatch(
      /^Expected output: [\d.]+ cases\/min, .* good cases a shift; the target is 11 cases\/min \(hand calculation;/,
    )
    const away = resultOf(['arrivals.packing.when-full=turn-away'])
    expect(expectedSentence(away)).toMatch(
      /^Expected output: at most .* A closer hand calculation is not possible: cases that find no room are turned away\.$/,
    )
    expect(expectedTable(away.hand!, wordsFor('metric')).rows).toEqual([])
  })

  it('its steps add up from what arrives to what is expected out, the part until somebody is there within them', () => {
    const lost = expected.losses.reduce((sum, each) => sum + each.lost.value!, 0)
    expect(expected.throughput.value! + lost).toBeCloseTo(expected.arriving.value!, 9)
    const jams = expected.losses.find(({ stop }) => stop === 'jams')!
    // 20 s of 95 s
    expect(jams.waitingForCrew.value! / jams.lost.value!).toBeCloseTo(20 / 95, 6)
    const { rows } = expectedTable(result.hand!, wordsFor('metric'))
    expect([rows[0]![0], rows.at(-1)![0]]).toEqual(['arrives', 'expected output'])
  })

  it('stands beside the simulated output of a run, after the figure that knows of no stops', () => {
    const { scenario } = loadScenario(shortInfeed)
    const byHand = foretold(scenario, handCalculation(scenario))
    const rowFor = (factor: number) => {
      const mean = byHand.expected!.throughput * factor
      const figure = { mean, low: mean * 0.999, high: mean * 1.001, sd: 0, n: 9, unit: 'cases/s', label: '' }
      const run = {
        display: 'metric',
        measures: { throughput: figure },
        byHand,
        arrivals: {},
        equipment: {},
        crew: {},
      }
      return saidRows(handTable(run as unknown as RunResult))[1]!
    }
    expect(rowFor(1).slice(3)).toEqual(['agrees', ''])
    expect(rowFor(0.989).slice(3)).toEqual(['-1.1 %', 'within the usual error of this calculation'])
    expect(rowFor(0.95)[4]).toMatch(/^more than the usual error/)
  })
})
