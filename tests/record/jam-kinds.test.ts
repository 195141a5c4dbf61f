/** Kinds of jam in a plant's record: a reason may be one of them, and what it says goes to the path of that kind. */
import { describe, expect, it } from 'vitest'
import { fitRecord } from '../../src/index.js'
import type { FittedInput } from '../../src/questions/fit/document.js'
import { withoutWalk } from '../../src/questions/fit/goes-with.js'
import { Causes } from '../../src/questions/validate/causes.js'
import { loggedInputs } from '../../src/record/inputs.js'
import { meaningFault, stopPathOf } from '../../src/record/meanings.js'
import { loadScenario } from '../../src/scenario/load.js'
import { recordOf } from './texts.js'

const shifts = `Beginn;Ende;Gut
12.01.2026 06:00;12.01.2026 14:00;4000
13.01.2026 06:00;13.01.2026 14:00;4100
`
const stops = `Von;Bis;Anlage;Grund
12.01.2026 06:10;12.01.2026 06:14;Kleber;Klappe
12.01.2026 10:00;12.01.2026 10:30;Kleber;Karton
13.01.2026 07:00;13.01.2026 07:02;Kleber;Klappe
13.01.2026 09:00;13.01.2026 09:03;Kleber;Klappe
`
const means = '{Klappe: line.sealer.jams.flap, Karton: line.sealer.jams.crushed}'
const record = () => recordOf({ shifts, stops, keys: { means } })

describe('a kind of jam as the meaning of a reason', () => {
  it.each(['line.sealer.jams.flap', 'line.sealer.jams.a long name', 'line.infeed.jams'])(
    '%s may stand',
    (path) => {
      expect(meaningFault(path)).toBeNull()
    },
  )

  it.each([
    'line.sealer.jams.chance',
    'line.sealer.jams.clear',
    'line.sealer.breakdowns.flap',
    'line.sealer.jams.flap.chance',
  ])('%s may not', (path) => {
    expect(meaningFault(path)?.fix).toMatch(/did you mean/)
  })

  it('is told from the others', () => {
    expect(stopPathOf('line.sealer.jams.flap')).toMatchObject({
      piece: 'sealer',
      jam: 'flap',
      keys: { words: 'jams (flap)' },
    })
    expect(stopPathOf('line.sealer.jams')).toMatchObject({ jam: null, keys: { words: 'jams' } })
  })

  it('gives its chance and its clearing at its own path: three flaps and one crushed case in 8100', () => {
    expect(loggedInputs(record()).map(({ what, path, count }) => [what, path, count])).toEqual([
      ['chance', 'line.sealer.jams.flap.chance', 3],
      ['times', 'line.sealer.jams.flap.clear', 3],
      ['chance', 'line.sealer.jams.crushed.chance', 1],
      ['times', 'line.sealer.jams.crushed.clear', 1],
    ])
  })
})

const scenario = (jams: string) =>
  loadScenario(`cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 4 s}}
line: {sealer: {type: sealer, jams: ${jams}}}
shift: {length: 8 h}`).scenario
const kinds =
  '{flap: {chance: 1 %, clear: 1 min}, crushed: {chance: 0.1 %, clear: 9 min}, other: {chance: 0.1 %, clear: 9 min}}'

describe('stops by cause', () => {
  /** Adds one stop of 60 s of each place of the model, and says how many each cause of the record got. */
  function counts(meanings: string[], jams: string): number[] {
    const causes = new Causes({ meanings }, scenario(jams))
    const sums = causes.none()
    const model = new Float64Array(100).fill(0)
    // six causes and planned stops, then the kinds of jam
    model.set([1, 60], 0)
    for (let kind = 0; kind < 3; kind++) model.set([10 ** (kind + 1), 60], 14 + 2 * kind)
    causes.addSimulated(sums, model)
    return sums.map(({ stops: count }) => count)
  }

  it('of kinds that the record tells apart go to each, the others to the rest', () => {
    expect(counts(['line.sealer.jams.flap', 'line.sealer.jams.crushed'], kinds)).toEqual([10, 100, 1001])
  })

  it('of kinds that the record does not tell apart are all jams', () => {
    expect(counts(['line.sealer.jams'], kinds)).toEqual([1111, 0])
  })
})

it('a fit writes the values of each kind', () => {
  const { document } = fitRecord({ record: record(), name: 'plant.yaml', sha256: '', files: [] } as never, {
    seed: 'kinds',
  })
  const values = new Map(document.inputs.map(({ path, value }) => [path, value]))
  expect(values.get('line.sealer.jams.flap.chance')).toBe('3 in 8100 cases')
  expect(values.get('line.sealer.jams.crushed.chance')).toBe('1 in 8100 cases')
})

it('what a log holds of a jam goes with it: the walk of the crew that clears that kind, and its isolation', () => {
  const into = loadScenario(`cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 4 s}}
line: {sealer: {type: sealer, jams: {flap: {chance: 1 %, clear: 1 min}, crushed: {chance: 0.1 %, clear: 9 min, by: mechanic, isolate: 1 min}}}}
crew: {operators: {walk: 10 s, does: [jams, roll-change]}, mechanic: {walk: 3 min, does: [breakdowns]}}
shift: {length: 8 h}`)
  const input = (path: string) => ({ path, value: '1 min', also: {}, remarks: [] }) as unknown as FittedInput
  const inputs = ['flap', 'crushed'].map((kind) => input(`line.sealer.jams.${kind}.clear`))
  expect(withoutWalk(inputs, into.scenario, () => true).map(({ also }) => also)).toEqual([
    { 'crew.operators.walk': '0 s' },
    { 'line.sealer.jams.crushed.isolate': '0 s', 'crew.mechanic.walk': '0 s' },
  ])
})
