/**
 * Findings: each with a change that just triggers it and one that just does not. The arithmetic of each bound stands beside
 * it in the files of `bounds`; the bounds are those of src/trade and of the project.
 */
import { describe, expect, it } from 'vitest'
import { checkScenario } from '../../src/hand/check.js'
import { codes } from '../../src/hand/finding.js'
import { loadScenario } from '../../src/scenario/load.js'
import { caseBounds } from './bounds/cases.js'
import { inputBounds } from './bounds/inputs.js'
import { machineBounds } from './bounds/machines.js'
import { peopleBounds } from './bounds/people.js'
import { rateBounds } from './bounds/rates.js'
import { checkedWith, findingOf, soundLine } from './line.js'

const bounds = [...rateBounds, ...machineBounds, ...caseBounds, ...peopleBounds, ...inputBounds]

describe('findings', () => {
  it.each(bounds)('$code ($severity): $told, and not $not', ({ code, severity, told, not, path }) => {
    const finding = findingOf(code, told)
    expect(finding).toMatchObject({ severity, path })
    expect(finding!.message.length).toBeGreaterThan(20)
    expect(finding!.basis).not.toBe('')
    expect(finding!.fix).not.toBe('')
    const other = findingOf(code, not)
    if (other) expect(other.severity).not.toBe(severity)
  })

  it('a queue beside packers who wait clears as far as they wait: a warning, an error where it alone is too much', () => {
    const with2 = (queue: number) => [
      'line.sealer.belt-speed=10 m/min',
      `arrivals={packing: {time-between: 6 s}, filler: {rate: ${queue} cases/min, when-full: queue}}`,
    ]
    expect(findingOf('queue-never-clears', with2(5))).toMatchObject({
      severity: 'warning',
      path: 'arrivals.filler.when-full',
    })
    expect(findingOf('queue-never-clears', with2(15))).toMatchObject({ severity: 'error' })
  })

  it('a warning that an inspection makes good is none', () => {
    const blind = 'line.sealer.roll-change.low-tape-warning=none'
    const text = (finds: string) => `cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}}
arrivals: {p: {time-between: 5 s}}
line:
  sealer: {type: sealer}
  look: {type: inspect, finds-unsealed: ${finds}}
shift: {length: 8 h}
`
    expect(findingOf('unsealed-unseen', [blind], text('100 %'))).toBeUndefined()
    expect(findingOf('unsealed-unseen', [blind], text('99 %'))).toBeDefined()
  })

  it('the model stops what feeds a machine that stands: said wherever a driven conveyor feeds something', () => {
    expect(findingOf('interlock')).toMatchObject({ severity: 'note', path: 'line.infeed' })
    const gravity = (carries: string) => `cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}}
arrivals: {p: {time-between: 5 s}}
line: {chute: {type: conveyor, carries: ${carries}, length: 4 m}, scan: {type: station, time: 2 s}}
shift: {length: 4 h}
`
    expect(findingOf('interlock', [], gravity('gravity'))).toBeUndefined()
    expect(findingOf('interlock', [], gravity('belt'))).toBeDefined()
  })

  it('stops that are not named: one that is named is not listed', () => {
    expect(findingOf('stops-not-named')?.message).toContain('no breakdowns of `infeed`. None')
    const all = ['line.infeed.breakdowns={after: 90 h, repair: 15 min}']
    expect(findingOf('stops-not-named', all)).toBeUndefined()
  })

  it('not checked for lack of data is one note, and none where every key is given', () => {
    expect(findingOf('not-checked')).toBeUndefined()
    const bare = `cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}}
arrivals: {p: {time-between: 5 s}}
line: {infeed: {type: conveyor, length: 6 m}, sealer: {type: sealer}}
shift: {length: 8 h}
`
    const { findings } = checkedWith([], bare)
    const notes = findings.filter(({ code }) => code === 'not-checked')
    expect(notes).toHaveLength(1)
    for (const key of [
      'target',
      'board',
      'weight',
      'roller-pitch',
      'ships-by',
      'overfill',
      'drum',
      'reference',
      'seam-gap',
      'applies-at',
      'elongation',
      'tensile',
      'adhesion',
    ])
      expect(notes[0]!.message).toContain(key)
  })

  it('none in 4000 cases may be a chance of up to 0.0922 %, none in 640 h one in 173 h', () => {
    // Clopper-Pearson 9.217947e-4; Garwood 3.688879 / T
    expect(findingOf('none-counted', ['line.sealer.jams.chance=0 in 4000 cases'])?.message).toContain(
      '0.0922 %',
    )
    expect(findingOf('none-counted', ['line.sealer.breakdowns.after=0 in 640 h'])?.message).toContain(
      'every 173 h',
    )
  })

  it('a law fitted to 10 of a coefficient of variation of 0.8 has a mean known to within 57 %', () => {
    // t(9) = 2.262157: 2.262157 x 0.8 / root 10 = 0.572
    const told = findingOf('few-observations', [
      'line.sealer.jams.clear={lognormal: {mean: 80 s, cv: 0.8, from: 10}}',
    ])
    expect(told?.message).toContain('is based on 10 observations: its mean is known to within 57 %')
  })

  it('observed values are never longer than the longest: of three, 1 in 4 to come is', () => {
    const loaded = loadScenario(soundLine, {
      sets: ['line.sealer.jams.clear={observed: {file: f, column: c, unit: s}}'],
      readColumn: () => ['70', '95', '80'],
    })
    const told = checkScenario(loaded).findings.find(({ code }) => code === 'longest-observed')
    expect(told).toMatchObject({ severity: 'note', path: 'line.sealer.jams.clear' })
    expect(told?.message).toContain('the largest, 95 s. In the future about 1 in 4 will be larger')
    expect(findingOf('longest-observed')).toBeUndefined()
  })

  it('every code has a check here', () => {
    const tested = new Set<string>([
      ...bounds.map(({ code }) => code),
      'interlock',
      'stops-not-named',
      'not-checked',
      'longest-observed',
      'read-as',
    ])
    expect(Object.keys(codes).filter((code) => !tested.has(code))).toEqual([])
  })

  it('a sound line has no error and no warning; errors come first, then warnings, then notes', () => {
    expect(checkedWith().findings.filter(({ severity }) => severity !== 'note')).toEqual([])
    const { findings, canWork } = checkedWith([
      'line.sealer.belt-speed=8 m/min',
      'cases.box.height=120 mm',
      'tape.leg=40 mm',
      'cases.box.recycled=true',
      'target=12 cases/min',
    ])
    expect(canWork).toBe(false)
    const order = findings.map(({ severity }) => ['error', 'warning', 'note'].indexOf(severity))
    expect(order).toEqual([...order].sort())
    expect(new Set(order).size).toBe(3)
  })

  it('says where a key was given: in the file, by an option, or nowhere', () => {
    expect(findingOf('legs-meet', ['cases.box.height=100 mm'])?.place).toMatchObject({
      source: 'line.yaml',
      line: 4,
    })
    expect(findingOf('short-leg', ['tape.leg=40 mm'])?.place).toMatchObject({
      source: '--set tape.leg=40 mm',
      line: 0,
    })
    expect(findingOf('gap-set-by-heads', ['line.sealer.heads={top: {cut: {reset: 1 s}}}'])?.place).toBeNull()
  })
})
