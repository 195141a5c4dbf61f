/** Evidence for the inputs, in the documents, the texts and the pages of studies, and in the scenario that is written beside them. */
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { compare, loadScenario, run, size, sweep, toPage } from '../../src/index.js'
import { reportOf } from '../../src/questions/report-of-document.js'
import { terminalReport } from '../../src/report/terminal.js'
import { resolvedYaml } from '../../src/scenario/resolved-yaml.js'
import { soundLine } from '../hand/line.js'

const chance = 'line.sealer.jams.chance'
const counted = `${chance}=18 in 36000 cases`
const walk = 'crew.operator.walk={guess: 15 s, between: [5 s, 60 s]}'
const hour = ['shift.breaks=[]', 'shift.length=1 h']
const line = (...set: string[]) => loadScenario(soundLine, { set: [...hour, ...set], shifts: 2 })
const style = { bold: (text: string) => text, width: 100 }
const variant = { whatIf: ['slow: line.sealer.belt-speed=22 m/min'] }

const studies = [
  ['run', (set: string[]) => run(line(...set))],
  ['compare', (set: string[]) => compare(line(...set), variant)],
  ['sweep', (set: string[]) => sweep(line(...set), { vary: ['line.infeed.length=30..40/10 m'] })],
  [
    'size',
    (set: string[]) =>
      size(loadScenario(soundLine, { set: [...hour, ...set] }), {
        choose: ['line.infeed.length=30 m,40 m'],
        holds: ['1 cases/min in 50 % of shifts'],
      }),
  ],
] as const

describe.each(studies)('%s', (_, study) => {
  it('tells what its inputs rest on, and what is taken as exact', async () => {
    const { document } = await study([counted, walk])
    expect(document.evidence).toMatchObject([
      { path: chance, form: 'count', value: 0.0005, unit: 'share', restsOn: 'counted: 18 in 36000 cases' },
      { path: 'crew.operator.walk', form: 'guess', value: 15, low: 5, high: 60, confidence: 0.9 },
    ])
    expect(document.exact).toMatch(/^2 values say how well they are known; the other/)
    const page = toPage(document)
    expect(page).toContain('Evidence for the inputs')
    expect(page).toContain('0.0296 to 0.079')
    expect(page).toContain('2 values say how well they are known')
    expect(terminalReport(reportOf(document), style)).toContain('Evidence for the inputs')
  })

  it('says in one sentence that all is taken as exact where nothing says otherwise', async () => {
    const { document } = await study([])
    expect(document.evidence).toEqual([])
    const page = toPage(document)
    expect(page).not.toContain('Evidence for the inputs')
    expect(page).toContain('says how well it is known. All are taken as exact')
    expect(terminalReport(reportOf(document), style)).not.toContain('taken as exact')
  })
})

describe('what is chosen or varied', () => {
  it('is no input', async () => {
    const sized = await size(loadScenario(soundLine, { set: [...hour, counted, walk] }), {
      choose: [`${chance}=1 %,2 %`],
      holds: ['1 cases/min in 50 % of shifts'],
    })
    expect(sized.document.evidence!.map(({ path }) => path)).toEqual(['crew.operator.walk'])
    const swept = await sweep(line(counted, walk), { vary: [`${chance}=1..2/1 %`] })
    expect(swept.document.evidence!.map(({ path }) => path)).toEqual(['crew.operator.walk'])
    expect(swept.document.exact).not.toContain(chance)
  })
})

describe('a document of before', () => {
  it('has a page without them', async () => {
    const { document } = await run(line())
    const { evidence, exact, ...older } = document
    expect([evidence, typeof exact]).toEqual([[], 'string'])
    expect(toPage(older)).not.toContain('taken as exact')
  })
})

describe('the scenario as it was simulated', () => {
  const sets = [
    counted,
    walk,
    'line.sealer.jams.clear={mixture: [{share: 30 in 40 stops, law: {gamma: {mean: 9 s, cv: 0.5, from: 30}}}, {share: 10 in 40 stops, law: 9 min}]}',
  ]
  const loaded = line(...sets)
  const text = resolvedYaml(loaded)

  it('keeps the forms, and resolves to the same with the same evidence', () => {
    const again = loadScenario(text)
    expect(again.scenario).toEqual(loaded.scenario)
    expect(again.evidence).toEqual(loaded.evidence)
    expect(again.resolved).toEqual(parse(text))
  })

  it('marks what each rests on', () => {
    expect(text).toContain('chance: 18 in 36000 cases # counted: 18 in 36000 cases')
    expect(text).toContain('# guessed')
    expect(text).toContain('# fitted to 30 observations')
  })
})

describe('a sweep of each input', () => {
  it('moves values with evidence by what they are when held fixed', async () => {
    const { document } = await sweep(
      line(
        counted,
        walk,
        'line.sealer.jams.clear={gamma: {mean: 80 s, cv: 0.5, from: 30}}',
        'line.sealer.breakdowns.after=18 in 720 h',
      ),
      { each: true },
    )
    const told = new Map(document.each!.inputs.map(({ path, base, low, high }) => [path, [base, low, high]]))
    expect(told.get(chance)).toEqual(['18 per 36000 cases', '16.2 per 36000 cases', '19.8 per 36000 cases'])
    expect(told.get('crew.operator.walk')).toEqual(['15 s', '13.5 s', '16.5 s'])
    expect(told.get('line.sealer.jams.clear')).toEqual(['mean 80 s', 'mean 72 s', 'mean 88 s'])
    expect(told.get('line.sealer.breakdowns.after')).toEqual(['mean 40 h', 'mean 36 h', 'mean 44 h'])
    expect([...told.keys()].filter((path) => /\.(guess|between)\b/.test(path))).toEqual([])
  })
})
