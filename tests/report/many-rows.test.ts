/** Charts and pages of large answers: what is drawn of many rows, that it is said, and that a page draws the same of what it holds. */
import { describe, expect, it } from 'vitest'
import { loadScenario, run } from '../../src/index.js'
import { chartsOf, type ResultDocument } from '../../src/questions/charts-of-document.js'
import { costStackChart } from '../../src/questions/compare/cost-chart.js'
import { differenceCharts } from '../../src/questions/compare/differences-chart.js'
import type { CompareResult } from '../../src/questions/compare/document.js'
import { onPage } from '../../src/questions/report-of-document.js'
import { isReplayed } from '../../src/questions/run/on-page.js'
import { drawnOf, heaviest, mostRows } from '../../src/report/marks/most-rows.js'
import { costs, design, difference, result, subtitleOf } from './compared.js'

const identity = (row: number) => row

describe('rows that are drawn', () => {
  it.each([
    [[3, 1, 2], 3, [3, 1, 2]],
    [[5, 1, 3, 4], 2, [5, 4]],
    // of equal ones those that came first, and the order in which they came
    [[2, 7, 2, 2], 3, [2, 7, 2]],
  ])('of %j the %i heaviest: %j', (rows, most, drawn) => {
    expect(heaviest(rows, identity, most)).toEqual(drawn)
  })

  it('are told where some are not', () => {
    expect(drawnOf(3, 3, 'machines')).toBe('')
    expect(drawnOf(24, 500, 'machines that are stopped most')).toBe(
      ' Drawn: the 24 of 500 machines that are stopped most; the table has all.',
    )
  })
})

/** What a chart shows, without the words that count what it leaves out. */
const shownBy = (document: ResultDocument) =>
  chartsOf(document).map(({ name, height, config }) => ({
    ...{ name, height, data: config.data },
    axes: JSON.parse(JSON.stringify(config.options!.scales)),
  }))

/** The base and 60 variants, the later the cheaper. */
const names = Array.from({ length: 60 }, (_, index) => `v${index + 1}`)
const many: CompareResult = {
  ...result,
  variants: Object.fromEntries(
    ['base', ...names].map((name, index) => [
      name,
      design([170, 180, 180, 191 + index], costs({ tape: 200 - index })),
    ]),
  ),
  differences: Object.fromEntries(
    names.map((name, index) => [name, { throughput: difference(0.001 * (index + 1), 0.0005, true) }]),
  ),
}

describe('a comparison of 60 variants', () => {
  it('draws the base and those that rank first, in their order, and says so', () => {
    const drawn = names.slice(-(mostRows - 1))
    const cost = costStackChart(many)!
    expect(cost.config.data.labels).toEqual(['base', ...drawn].map((name) => [name]))
    const [chart] = differenceCharts(many)
    expect(chart!.config.options!.scales!.y!.max).toBe(drawn.length - 0.5)
    for (const each of [cost, chart!])
      expect(subtitleOf(each)).toContain('Drawn: the 23 of 60 variants that rank first; the table has all.')
    // what the head says is of all
    expect(chart!.title).toBe('Throughput of good cases: higher with all 60 variants')
  })

  it('has a page that holds less, and draws the same of it', () => {
    const held = onPage(many)
    expect(Object.keys(held.variants).length).toBeLessThan(mostRows + 8)
    expect(shownBy(held)).toEqual(shownBy(many))
    expect(onPage(result)).toBe(result)
  })
})

describe('a line of 60 pieces', async () => {
  const pieces = Array.from({ length: 30 }, (_, n) =>
    [`  c${n}: {type: conveyor, length: 2 m}`, `  s${n}: {type: station, time: ${2 + n / 10} s}`].join('\n'),
  )
  const text = `title: Long line
target: 9 cases/min
cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}}
arrivals: {p: {time-between: {exponential: {mean: 6 s}}}}
line:
  sealer: {type: sealer, jams: {chance: 1 %, clear: 60 s}}
${pieces.join('\n')}
shift: {length: 1 h}
`
  const { document } = await run(loadScenario(text), { shifts: 2, seed: 'long', moment: false })

  it('has a page that holds less, and draws the same of it', () => {
    const held = onPage(document)
    expect(Object.keys(held.equipment)).toEqual(Object.keys(document.equipment))
    expect(JSON.stringify(held).length).toBeLessThan(JSON.stringify(document).length * 0.8)
    expect(shownBy(held)).toEqual(shownBy(document))
    const states = chartsOf(document).find(({ name }) => name === 'states')!
    expect(states.config.data.labels).toHaveLength(mostRows)
    expect(states.config.data.labels![0]).toEqual(['sealer'])
  })

  it('is replayed up to 40 000 steps', () => {
    const steps = (length: number) => Array.from({ length }, (): [number, number, number] => [0, 0, 1])
    const ofCase = { id: 1, kind: 0, came: [0, 0] as [number, number], path: steps(20_000) }
    const states = [Array.from({ length: 20_000 }, (): [number, 'working'] => [0, 'working'])]
    expect(isReplayed({ cases: [ofCase], states })).toBe(true)
    expect(isReplayed({ cases: [{ ...ofCase, path: steps(20_001) }], states })).toBe(false)
  })
})
