/** What reports and charts of sweeps say and draw. */
import { describe, expect, it } from 'vitest'
import { sweepCharts } from '../../src/questions/sweep/charts.js'
import { sweepDesignsCsv, sweepDifferencesCsv } from '../../src/questions/sweep/csv.js'
import type { SweepResult } from '../../src/questions/sweep/document.js'
import { sweepReport } from '../../src/questions/sweep/report.js'
import { clashes, colourAt, drawn, pointsOf, subtitleOf, textsOf } from './compared.js'
import { saidRows, titles } from './said.js'
import { curve, each, grid, plan } from './swept.js'

const headline = (result: SweepResult) => sweepReport(result).headline
const table = (result: SweepResult, title: string) =>
  sweepReport(result).tables.find((each) => each.title.startsWith(title))!

describe('the report of a curve', () => {
  const lines = headline(curve())

  it('says between which values each level is crossed', () => {
    // 65 % at 5 m and 95 % at 6 m: 90 % at 5 + 25 / 30, 95 % at 6; 97.5 % at most
    expect(lines[0]).toBe(
      'Over line.infeed.length the target of 9 cases/min is reached in 90 % of the shifts from about 5.83 m, between 5 m (65 %) and 6 m (95 %); in 95 % of the shifts from about 6 m, between 5 m (65 %) and 6 m (95 %); in 99 % of the shifts at no value tried: at most 98 %, at 7 m.',
    )
    expect(lines[1]).toMatch(/^On average it is reached from about 5 m, between/)
  })

  it('says what the step before the knee brought, what the next one brings, and that nothing more is shown', () => {
    const line = lines.find((each) => each.startsWith('Throughput'))!
    expect(line).toMatch(
      /^Throughput: from 5 m to 6 m \+0\.\d+ ± 0\.0\d+ cases\/min, from there to 7 m [-+]?0\.\d+ ± 0\.0\d+ cases\/min: nothing shown; at 6 m the slope changes most; beyond 6 m the rest up to 8 m brings .*: nothing shown\.$/,
    )
  })

  it('says where 1000 cases cost least, and where they cost more or less than as the scenario stands', () => {
    const line = lines.find((each) => each.startsWith('1000 cases'))!
    expect(line).toMatch(
      /^1000 cases cost least at 6 m, 148\.\d+ ± 0\.0\d+ EUR; every other value tried is shown to cost more; /,
    )
    expect(line).toMatch(
      /against the scenario as it stands \(7 m, 150 EUR\) it is shown to cost less at 6 m, breaks even, as far as is shown, at 7 m and is shown to cost more at 4 m to 5 m and 8 m/,
    )
  })

  it('tells the ceiling of the heads where the speed of belts is varied', () => {
    const result = curve()
    const byHand = { machine: 'sealer', ceiling: 2, littleGain: 5 }
    const words = headline({ ...result, curve: { ...result.curve!, byHand } })
    expect(words).toContain(
      'By hand calculation, at any belt speed sealer passes at most 120 cases/min: one case per reset of its slowest head; from 300 m/min on another m/min brings less than 0.25 cases/min.',
    )
    const far = { ...byHand, littleGain: 50 }
    expect(headline({ ...result, curve: { ...result.curve!, byHand: far } }).join()).not.toContain(
      'another m/min',
    )
  })

  it('has a row a value, with minutes of buffer, and a row a step, in brackets what is not shown', () => {
    const result = curve()
    expect(saidRows(table(result, 'Each value'))[2]!.slice(0, 3)).toEqual([
      '6 m',
      '1.2 min',
      '95 % (83 to 99 %)',
    ])
    const steps = saidRows(table(result, 'Effect of each step'))
    expect(steps.map(([step]) => step)).toEqual(['4 m to 5 m', '5 m to 6 m', '6 m to 7 m', '7 m to 8 m'])
    expect(steps[0]![2]).toMatch(/^\+0\.2/)
    expect(steps[2]![2]).toMatch(/^\[.*\]$/)
  })

  it('says so where nothing is shown at all', () => {
    const flat = curve()
    const of = flat.curve!.measures.throughput!
    const quiet = of.steps.map((step) => ({ ...step, difference: { ...step.difference, isShown: false } }))
    const measures = { ...flat.curve!.measures, throughput: { ...of, steps: quiet, knee: null, enough: 0 } }
    expect(headline({ ...flat, curve: { ...flat.curve!, measures } }).join('\n')).toContain(
      'Throughput: no difference is shown anywhere from 4 m to 8 m',
    )
  })
})

describe('the report of a grid', () => {
  const result = grid()

  it('says how much of the one each value of the other asks for', () => {
    // 90 % is 36 of 40: at 10 m/min at 6 m, at 14 m/min 34 at 4 m and 39 at 5 m: 4.4 m
    expect(headline(result)[0]).toBe(
      '90 % of the shifts reach 9 cases/min from about 6 m of line.infeed.length on at 10 m/min of line.sealer.belt-speed and 4.4 m of line.infeed.length on at 14 m/min of line.sealer.belt-speed.',
    )
    expect(
      saidRows(table(result, 'Where shifts that reach the target crosses')).map(([, ninety]) => ninety),
    ).toEqual(['from 6 m (5 to 6)', 'from 4.86 m (4 to 5)', 'from 4.4 m (4 to 5)'])
  })

  it('has the minutes of buffer at its lengths', () => {
    expect(titles(table(result, 'Shifts that hold'))).toEqual([
      'line.sealer.belt-speed',
      '4 m, 0.8 min',
      '5 m, 0.9 min',
      '6 m, 1.2 min',
    ])
  })
})

describe('the report of one factor at a time', () => {
  const result = each()

  it('names what moves a measure most, and how many are shown to', () => {
    const line = headline(result).find((words) => words.startsWith('Throughput'))!
    expect(line).toMatch(/^Throughput: changed most by arrivals\.packing\.time-between \(less: \+0\.90+ ± /)
    expect(line).toMatch(/2 inputs of 4 are shown to change it, 2 not\.$/)
  })

  it('puts the largest first, what is not shown in brackets, and lists what was left out', () => {
    const rows = saidRows(table(result, 'Throughput'))
    expect(rows.map(([path]) => path)).toEqual([
      'arrivals.packing.time-between',
      'line.infeed.length',
      'crew.operator.people',
      'tape.thickness',
    ])
    expect(rows[2]![2]).toBe('–')
    expect(rows[3]!.slice(2)).toEqual(['less: the same', 'more: the same'])
    expect(saidRows(table(result, 'Left out'))).toEqual([['it is no input', 'target']])
  })

  it('judges all of them together', () => {
    // 3 inputs of two ends and one of one, 3 measures
    expect(sweepReport(result).certainty[0]).toContain('all 21 differences lie within')
  })
})

describe('the report of a plan', () => {
  const result = plan()

  it('says the effects over the ranges and how much straight lines explain', () => {
    const line = headline(result).find((words) => words.startsWith('Throughput'))!
    expect(line).toContain(
      'from its lowest to its highest value line.infeed.length +0.3 cases/min and line.sealer.belt-speed -0.1 cases/min',
    )
    expect(line).toContain('a linear regression explains nearly all')
    expect(headline(result).at(-1)).toBe('Cost of 1000 cases: the same in every design.')
    expect(sweepReport(result).limits.join()).toContain('it shows no curvature')
  })
})

describe('the charts', () => {
  it('are one a measure, named after it', () => {
    expect(sweepCharts(curve()).map(({ name }) => name)).toEqual([
      'curve-target-held',
      'curve-throughput',
      'curve-cost-per-1000',
    ])
    expect(sweepCharts(grid())[0]!.name).toBe('grid-target-held')
    expect(sweepCharts(each())[1]!.name).toBe('each-throughput')
    // what is the same in every design has no effects
    expect(sweepCharts(plan()).map(({ name }) => name)).toEqual(['plan-target-held', 'plan-throughput'])
  })

  it('write nothing over one another, and nothing out of the picture', () => {
    for (const result of [curve(), each(), plan()])
      for (const chart of sweepCharts(result)) expect([chart.name, clashes(chart)]).toEqual([chart.name, []])
    for (const chart of sweepCharts(grid())) expect([chart.name, clashes(chart)]).toEqual([chart.name, []])
  })

  it('of a curve draw the figures in the units of the display, the levels and the knee', () => {
    const [, chart] = sweepCharts(curve())
    expect(pointsOf(chart!, 'figure').map(({ y }) => Number(y.toFixed(1)))).toEqual([8.8, 9, 9.2, 9.2, 9.2])
    const texts = textsOf(chart!).map(({ text }) => text)
    expect(texts).toContain('slope changes most at 6 m')
    expect(texts).toContain('beyond 6 m nothing more is shown')
    expect(texts).toContain('as it stands: 7 m')
    expect(chart!.title).toBe('Throughput: nothing more is shown beyond 6 m of line.infeed.length')
    expect(chart!.alt).toMatch(/^Throughput over line\.infeed\.length: 4 m: 8\.\d+ ± /)
  })

  it('of the speed of belts draw the ceiling of the heads where it is near', () => {
    const result = curve()
    const texts = (perMinute: number) => {
      const byHand = { machine: 'sealer', ceiling: perMinute / 60, littleGain: null }
      const [, chart] = sweepCharts({ ...result, curve: { ...result.curve!, byHand } })
      return textsOf(chart!).map(({ text }) => text)
    }
    expect(texts(10)).toContain('ceiling of heads')
    expect(texts(120)).not.toContain('ceiling of heads')
  })

  it('of a grid draw contours, name each on its line, and say minutes across the top', () => {
    const [chart] = sweepCharts(grid())
    expect(pointsOf(chart!, 'contour 0.9').length).toBeGreaterThan(2)
    expect(pointsOf(chart!, 'tried')).toHaveLength(9)
    const texts = textsOf(chart!).map(({ text }) => text)
    for (const text of [
      '90 %',
      '95 %',
      '99 %',
      '0.8',
      '1.2',
      'minutes of buffer at the target, by hand calculation',
    ])
      expect(texts).toContain(text)
    expect(subtitleOf(chart!)).toContain('Diamond: the scenario as it stands.')
  })

  it('of one factor at a time leave hollow what is not shown, and point an arrow at what goes far beyond', async () => {
    const [, chart] = sweepCharts(each())
    expect(subtitleOf(chart!)).toContain('A bar with an arrow goes far beyond the axis.')
    let at: [number, number] = [0, 0]
    const png = await drawn(chart!, ({ scales }) => {
      at = [scales.x!.getPixelForValue(-0.01), scales.y!.getPixelForValue(1 - 0.2) - 4]
    })
    const [red, , blue] = await colourAt(png, ...at)
    // the lower end of the infeed is shown: orange, not paper
    expect(red! - blue!).toBeGreaterThan(80)
  })
})

describe('rows for other programs', () => {
  it('have each design with its figures, unrounded and in SI', () => {
    const [head, own, first] = sweepDesignsCsv(curve()).split('\n')
    expect(head).toMatch(/^design,line\.infeed\.length,target-held \[share\],"target-held, low"/)
    expect(own).toMatch(/^as it stands,7 m,0\.85,/)
    expect(Number(first!.split(',')[2])).toBe(0.25)
  })

  it('have each difference with its interval and judgement', () => {
    const rows = sweepDifferencesCsv(curve()).trim().split('\n')
    // of each of 3 measures 4 steps and 3 ways to the last
    expect(rows).toHaveLength(1 + 21)
    expect(rows[1]).toMatch(/^line\.infeed\.length,4 m,5 m,target-held,share,0\.4,.*,yes$/)
    expect(sweepDifferencesCsv(each()).trim().split('\n')).toHaveLength(1 + 21)
    expect(sweepDifferencesCsv(plan()).trim().split('\n')).toHaveLength(1 + 9)
    expect(sweepDifferencesCsv(grid()).trim().split('\n')).toHaveLength(1)
  })
})
