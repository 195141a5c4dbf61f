/**
 * Records like the demo's hold the truth in their printed intervals as often as these say: the plant of `tests/record/truth.yaml` is simulated with other
 * seeds, what happened is written down as a plant would, read, cleaned and fitted. It takes some four seconds a record.
 */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { fittedInputs } from '../../src/questions/fit/fitted-inputs.js'
import { workOf } from '../../src/questions/fit/study.js'
import { loggedInputs } from '../../src/record/inputs.js'
import { readRecord } from '../../src/record/read.js'
import { jamsOf } from '../../src/scenario/jams.js'
import { meanOf } from '../../src/scenario/law.js'
import { loadScenario } from '../../src/scenario/load.js'
import { binomialAtMost } from '../../src/statistics/quantile.js'
import { demoFolder } from '../demo.js'
import { datedShifts, makeRecord } from '../record/make-record.js'
import { truth } from '../record/plant.js'
import { logsOf } from '../record/texts.js'

const folder = `${demoFolder}lindmoor-record/`
const recordFile = readFileSync(`${folder}record.yaml`, 'utf8')
const { scenario: guessed } = loadScenario(readFileSync(`${folder}line-4.yaml`, 'utf8'))

const records = 40
const confidence = 0.95

const { sealer, palletiser } = truth.line
if (sealer?.type !== 'sealer' || palletiser?.type !== 'station')
  throw new Error('the truth is of another line')
const breakdowns = sealer.breakdowns!

/** Chances, rates a second and means, s. */
const truths = new Map([
  ['line.sealer.jams.chance', jamsOf(sealer.jams)[0]!.keys.chance],
  ['line.sealer.jams.clear', meanOf(jamsOf(sealer.jams)[0]!.keys.clear)],
  ['line.sealer.roll-change.time', meanOf(sealer['roll-change'].time)],
  ['line.sealer.tape-breaks.chance', sealer['tape-breaks']!.chance],
  ['line.sealer.tape-breaks.fix', meanOf(sealer['tape-breaks']!.fix)],
  ['line.sealer.breakdowns.after', 1 / meanOf(breakdowns.after)],
  ['line.sealer.breakdowns.repair', meanOf(breakdowns.repair)],
  ['line.palletiser.every.stop', meanOf(palletiser.every!.stop)],
  ['arrivals.filling.time-between', meanOf(truth.arrivals.filling!['time-between']!)],
])

/** What a fit of one record says of each of them: within its interval, or not; nothing where no law fits, and no interval is printed. */
function held(seed: string): Map<string, boolean> {
  const files = makeRecord(datedShifts(seed), seed)
  const record = readRecord(recordFile, { readLog: logsOf(Object.fromEntries(files)) })
  const { inputs } = fittedInputs(record, loggedInputs(record, { heads: new Map([['sealer', 2]]) }), {
    ...{ confidence, seed, work: workOf(guessed, record) },
    // at 5 % as strict as the usual test, of less power and a tenth of the cost
    bootstraps: { most: 19, enough: 1 },
  })
  return new Map(
    [...truths].flatMap(([path, is]) => {
      const input = inputs.find((each) => each.path === path)!
      const known = input.rate ?? input.mean
      if (known === null) return []
      return [[path, (known.low ?? 0) <= is && is <= (known.high ?? Infinity)]]
    }),
  )
}

describe('forty records of one plant', () => {
  const all = Array.from({ length: records }, (_, index) => `recovery ${index + 1}`)
  it('hold each truth about as often as they say', () => {
    const found = all.map(held)
    const of = (path: string) => found.flatMap((each) => each.get(path) ?? [])
    const sum = (paths: readonly string[], isCounted: (isHeld: boolean) => boolean) =>
      paths.reduce((total, path) => total + of(path).filter(isCounted).length, 0)
    const paths = [...truths.keys()]
    // that fewer than 33 of 40 hold has a chance of 0.07 % where each holds with 95 %: of one of nine in 1 of 150 such tests
    expect(binomialAtMost(32, records, confidence)).toBeLessThan(0.001)
    for (const path of paths) {
      expect(of(path).length, path).toBeGreaterThanOrEqual(38)
      expect(
        sum([path], (isHeld) => isHeld),
        path,
      ).toBeGreaterThanOrEqual(33)
    }
    // 360 intervals have a standard error of 1.2 % if each stood for itself; those of chance and length of one stop do not
    const share = sum(paths, (isHeld) => isHeld) / sum(paths, () => true)
    expect(share).toBeGreaterThanOrEqual(0.92)
    expect(share).toBeLessThanOrEqual(0.98)
  })
})
