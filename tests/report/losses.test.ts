/** Losses in table and chart: rows worked by hand, small stops together, several machines added up. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Losses, LossStep, MachineLosses } from '../../src/answers/losses.js'
import { lossesTable } from '../../src/answers/losses-table.js'
import type { Figure } from '../../src/catalogue/figure.js'
import type { RunResult } from '../../src/questions/run/document.js'
import { lossesCharts, machineRows } from '../../src/questions/run/losses-chart.js'
import { renderPng } from '../../src/report/png.js'
import { saidRows } from './said.js'

const figure = (mean: number, half = 1): Figure => ({
  mean,
  low: mean - half,
  high: mean + half,
  sd: half,
  n: 4,
  unit: 'cases',
  label: 'cases',
})
const step = (key: string, label: string, mean: number, could: number): LossStep => ({
  key,
  label,
  cases: figure(mean),
  share: mean / could,
})

const hostile = '<img src=x onerror=x>'

/** 1000 cases less 400, 100, 4, 3, 50, 3 are 440. */
const machine = (name = 'sealer', isFollowed = false): MachineLosses => ({
  machine: name,
  type: 'sealer',
  rate: 0.5,
  how: '(length + gap) / belt speed, mean of the cases that came',
  could: 1000,
  losses: [
    step('waiting', 'starved', 400, 1000),
    step('jam-waiting-for-crew', 'jam: waiting for crew', 4, 1000),
    step('jam-being-cleared', 'jam: being cleared', 100, 1000),
    step('tape-waiting-for-crew', 'tape: waiting for crew', 3, 1000),
    step('gaps', 'working with wide gaps', 50, 1000),
    step('spoilt', 'spoilt in jams', 3, 1000),
  ],
  leaves: figure(440),
  isFollowed,
})

const result = (losses: Losses | null, display: RunResult['display'] = 'metric'): RunResult =>
  ({
    display,
    made: {
      version: '1',
      shifts: 4,
      seed: 's',
      confidence: 0.95,
      scenario: { title: 't', sha256: 'ab'.repeat(32) },
    },
    shift: { length: 7200, runOut: 0, breaks: [{ at: 600, for: 720 }], campaign: 1, start: 'empty' },
    losses,
  }) as unknown as RunResult

const one: Losses = {
  machines: [machine()],
  line: [step('inside', 'still in the line', 5, 1000)],
  output: figure(435),
}

describe('the rows of a machine', () => {
  const rows = machineRows(one.machines[0]!, one)

  it('step down from what it could to what comes out, small stops together', () => {
    expect(rows.map(({ label, from, to }) => [label, from, to])).toEqual([
      ['capacity', 0, 1000],
      ['starved', 1000, 600],
      ['jam: being cleared', 600, 500],
      ['other stops', 500, 493],
      ['working with wide gaps', 493, 443],
      ['spoilt in jams', 443, 440],
      ['passed on', 0, 440],
      ['still in the line', 440, 435],
      ['good cases', 0, 435],
    ])
  })

  it('have cases and per cent beside them', () => {
    expect(rows.map(({ text }) => text)).toEqual([
      '1\u2009000, 100.0 %',
      '−400.0, 40.0 %',
      '−100.0, 10.0 %',
      '−7, 0.7 %',
      '−50.0, 5.0 %',
      '−3.0, 0.3 %',
      '440, 44.0 %',
      '−5.0, 0.5 %',
      '435, 43.5 %',
    ])
  })

  it('go up where a step adds cases', () => {
    const more = { ...one, line: [step('inside', 'still in the line', -5, 1000)], output: figure(445) }
    expect(machineRows(machine(), more).find(({ label }) => label.startsWith('more'))).toMatchObject({
      label: 'more: still in the line',
      from: 440,
      to: 445,
      text: '+5.0, 0.5 %',
    })
  })

  it('one small stop stays by its name', () => {
    const few = { ...machine(), losses: machine().losses.filter(({ key }) => !key.startsWith('tape')) }
    expect(machineRows(few, null).map(({ label }) => label)).toContain('jam: waiting for crew')
  })

  it('always begin where the one above ends', () => {
    const keys = [
      'waiting',
      'jam-being-cleared',
      'tape-being-changed',
      'size-being-set',
      'blade-service',
      'gaps',
    ]
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -20, max: 150, noNaN: true }), { minLength: 6, maxLength: 6 }),
        (lost) => {
          const losses = keys.map((key, index) => step(key, key, lost[index]!, 1000))
          const left = lost.reduce((rest, each) => rest - each, 1000)
          const steps = machineRows({ ...machine(), losses, leaves: figure(left) }, null)
          const falling = steps.filter(({ kind }) => kind !== 'total')
          let at = 1000
          for (const { from, to } of falling) {
            expect(from).toBeCloseTo(at, 9)
            at = to
          }
          expect(at).toBeCloseTo(steps.at(-1)!.to, 9)
        },
      ),
      { seed: 1 },
    )
  })
})

describe('the charts', () => {
  it('one machine has one, that says the finding', () => {
    const [chart, ...others] = lossesCharts(result(one))
    expect(others).toEqual([])
    expect(chart!.name).toBe('losses')
    expect(chart!.title).toBe(
      'sealer has a capacity of 1\u2009000 cases a shift; 435 come out good. Largest loss: jam: being cleared',
    )
    expect(chart!.alt).toContain('starved −400.0, 40.0 %')
    const subtitle = chart!.config.options!.plugins!.subtitle!.text as string[]
    expect(subtitle.join(' ')).toContain(
      'Other stops: jam: waiting for crew 0.4 %, tape: waiting for crew 0.3 %.',
    )
    expect(chart!.config.data.datasets[0]!.data.slice(0, 2)).toEqual([
      [0, 1000],
      [600, 1000],
    ])
  })

  it('several have one each, and one in which they add up', () => {
    const losses = { machines: [machine('a'), machine('b')], line: [], output: figure(880) }
    const charts = lossesCharts(result(losses))
    expect(charts.map(({ name }) => name)).toEqual(['losses-1', 'losses-2', 'losses'])
    expect(charts[2]!.config.data.datasets[0]!.data).toEqual([
      [0, 440],
      [440, 880],
      [0, 880],
    ])
    expect(charts[2]!.alt).toContain(
      'passed on by a 440, 22.0 %; passed on by b 440, 22.0 %; good cases 880, 44.0 %',
    )
  })

  it('one that is followed by another ends where its cases leave it', () => {
    const losses = { machines: [machine('a', true), machine('b')], line: [], output: figure(440) }
    const charts = lossesCharts(result(losses))
    expect(charts.map(({ name }) => name)).toEqual(['losses-1', 'losses-2'])
    expect(charts[0]!.title).toContain('440 are passed on')
    expect(charts[1]!.title).toContain('440 come out good')
  })

  it('there is none where the document has no losses', () => {
    expect(lossesCharts(result(null))).toEqual([])
    expect(lossesTable(result(null)).rows).toEqual([])
  })

  it('can be drawn, whatever the machine is called', async () => {
    const losses = { ...one, machines: [machine(hostile.repeat(3))] }
    for (const chart of lossesCharts(result(losses)))
      expect((await renderPng(chart)).subarray(1, 4).toString()).toBe('PNG')
  })
})

describe('the table', () => {
  const table = lossesTable(result(one))

  it('has every step by its name, small ones too', () => {
    expect(saidRows(table)).toEqual([
      ['sealer', 'capacity', '1\u2009000', '100.0 %'],
      ['sealer', 'no loss: starved', '400.0 ± 1.0', '40.0 %'],
      ['sealer', 'less: jam: waiting for crew', '4.0 ± 1.0', '0.4 %'],
      ['sealer', 'less: jam: being cleared', '100.0 ± 1.0', '10.0 %'],
      ['sealer', 'less: tape: waiting for crew', '3.0 ± 1.0', '0.3 %'],
      ['sealer', 'less: working with wide gaps', '50.0 ± 1.0', '5.0 %'],
      ['sealer', 'less: spoilt in jams', '3.0 ± 1.0', '0.3 %'],
      ['sealer', 'cases passed on', '440.0 ± 1.0', '44.0 %'],
      ['the line', 'less: still in the line', '5.0 ± 1.0', '0.5 %'],
      ['the line', 'good cases', '435.0 ± 1.0', '43.5 %'],
    ])
  })

  it('says what the limit is, and that breaks are waited through', () => {
    expect(table.note).toContain('sealer 30 cases/min ((length + gap) / belt speed')
    expect(table.note).toContain('Breaks are 10 % of the shift')
    const stopped = { ...machine(), losses: [step('on-break', 'breaks', 560, 1000)] }
    expect(lossesTable(result({ ...one, machines: [stopped] })).note).not.toContain('Breaks are')
  })
})
