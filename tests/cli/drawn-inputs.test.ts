/** Answers that carry uncertainty of the inputs, as the user of `run` meets them. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { parse as parseCsv } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import { wholeOf } from '../../src/catalogue/figure.js'
import { loadScenario, run } from '../../src/index.js'
import type { RunResult } from '../../src/questions/run/document.js'
import { threads } from '../../src/shifts/threads/pool.js'
import { call, smallLine } from './in-process.js'

const one = ['--full', '--workers', '1']
const few = ['--draws', '12']

/** Jams are counted, their clearing is guessed. */
const known = smallLine
  .replace('chance: 1 %', 'chance: 4 in 400 cases')
  .replace('clear: 60 s', 'clear: {guess: 60 s, between: [40 s, 90 s]}')

const document = async (argv: string[], text = known) => {
  const { out, err, code } = await call(['run', '-', '--json', '--no-files', ...one, ...argv], {
    stdin: text,
  })
  expect([code, err]).toEqual([0, ''])
  return { out, result: JSON.parse(out) as RunResult }
}

describe('run, of a scenario that says how well values are known', () => {
  it('carries both kinds in every figure with a plus-minus, and keeps that of luck', async () => {
    const { result } = await document(few)
    const fixed = await document(['--inputs', 'fixed'])
    expect(result.drawn).toMatchObject({ draws: 12, shifts: 12 })
    expect(fixed.result.drawn).toBeUndefined()
    const figures = Object.entries(result.measures)
    const withInputs = figures.filter(([, { inputs }]) => inputs)
    expect(withInputs.length).toBeGreaterThan(3)
    for (const [key, figure] of figures) {
      const { inputs, ...luck } = figure
      expect(luck).toEqual(fixed.result.measures[key as 'throughput'])
      expect(inputs === undefined).toBe(figure.low === null || figure.high === null)
      if (!inputs || inputs.low === null || inputs.high === null) continue
      expect(inputs.low).toBeLessThanOrEqual(figure.low!)
      expect(inputs.high).toBeGreaterThanOrEqual(figure.high!)
      expect(inputs.draws).toBe(12)
    }
    // jams are a hundredth of 600 cases an hour of one minute each: they move the output for sure
    expect(result.measures.throughput!.inputs!.share).toBeGreaterThan(0)
  })

  it('without evidence gives the same answer, whatever is said of inputs', async () => {
    const plain = await document([], smallLine)
    expect(plain.out).not.toContain('"inputs"')
    expect(plain.result.made.repeat).not.toContain('inputs')
    const fixed = await document(['--inputs', 'fixed'], smallLine)
    expect(fixed.out.replace(' --inputs fixed', '')).toBe(plain.out)
  })

  it('writes the shifts of every draw, draw 0 as given, and what was drawn', async () => {
    const { cwd, code } = await call(['run', '-', ...few, ...one, '--quiet'], { stdin: known })
    expect(code).toBe(0)
    const rows = (name: string) =>
      parseCsv(readFileSync(path.join(cwd, 'out/stdin-run', name)), { columns: true }) as Record<
        string,
        string
      >[]
    const shifts = rows('shifts.csv')
    expect(shifts.map(({ draw }) => Number(draw))).toEqual(
      Array.from({ length: 13 * 12 }, (_, row) => Math.floor(row / 12)),
    )
    const draws = rows('draws.csv')
    expect(Object.keys(draws[0]!)).toEqual(['draw', 'line.sealer.jams.chance', 'line.sealer.jams.clear'])
    expect(draws).toHaveLength(12)
    expect(new Set(draws.map((row) => row['line.sealer.jams.chance'])).size).toBe(12)
  })

  it('leaves no draws of a study before beside figures of inputs that are held', async () => {
    const { cwd } = await call(['run', '-', ...few, ...one, '--quiet'], { stdin: known })
    const names = () => readdirSync(path.join(cwd, 'out/stdin-run'))
    writeFileSync(path.join(cwd, 'out/stdin-run/notes.csv'), 'mine')
    expect(names()).toContain('draws.csv')
    await call(['run', '-', '--inputs', 'fixed', ...one, '--quiet'], { stdin: known, cwd })
    expect(names()).not.toContain('draws.csv')
    expect(names()).toEqual(expect.arrayContaining(['notes.csv', 'shifts.csv', 'try.html']))
  })

  it('says in words what is luck, what is not known, and what to measure next', async () => {
    const { out, code } = await call(['run', '-', '--no-files', ...few, ...one], { stdin: known })
    expect(code).toBe(0)
    expect(out).toMatch(
      /Throughput:\s+[\d.]+\s+cases\/min,\s+±\s+[\d.]+\s+by\s+random\s+variation\s+of\s+the\s+simulation\s+and\s+±\s+[\d.]+\s+by\s+uncertainty\s+of\s+the\s+inputs\s+\(12\s+draws/,
    )
    expect(out).toContain('How much each input adds to the uncertainty')
    expect(out).not.toMatch(/NaN|undefined|Infinity/)
  })

  it('judges requirements by the whole interval', async () => {
    const { result } = await document(few)
    const figure = result.measures.throughput!
    const whole = wholeOf(figure)
    expect(whole.low!).toBeLessThan(figure.low!)
    // between the lower end of luck and that of both: luck alone would say it is met
    const asked = ((whole.low! + figure.low!) / 2) * 60
    const require = ['--require', `throughput >= ${asked} cases/min`]
    const judged = async (more: string[]) => {
      const { code } = await call(['run', '-', '--no-files', '--quiet', ...one, ...require, ...more], {
        stdin: known,
      })
      return code
    }
    expect(await judged(few)).toBe(4)
    expect(await judged(['--inputs', 'fixed'])).toBe(0)
  })

  it('goes on after an interrupt to the same bytes', async () => {
    const whole = await call(['run', '-', ...few, ...one, '--quiet'], { stdin: known })
    const bytes = (cwd: string, name: string) => readFileSync(path.join(cwd, 'out/stdin-run', name), 'utf8')
    for (const interruptAfter of [30, 80]) {
      const cut = await call(['run', '-', ...few, ...one, '--quiet'], { stdin: known, interruptAfter })
      if (cut.code === 0) continue
      const { cwd } = cut
      const { code } = await call(['run', '-', ...few, ...one, '--quiet', '--resume'], { stdin: known, cwd })
      expect(code).toBe(0)
      for (const name of ['result.json', 'shifts.csv', 'draws.csv'])
        expect(bytes(cwd, name)).toBe(bytes(whole.cwd, name))
    }
  })

  it('two threads give the same document and rows as one', async () => {
    const executor = threads(2, new URL('../../.build/cli/worker.js', import.meta.url))
    try {
      const scenario = loadScenario(known)
      const [one, two] = [
        await run(scenario, { draws: 12 }),
        await run(scenario, { draws: 12 }, { executor }),
      ]
      expect(two.document).toEqual(one.document)
      expect(two.rows()).toEqual(one.rows())
    } finally {
      await executor.close()
    }
  })

  it('refuses what contradicts itself, and draws where nothing can be drawn', async () => {
    const refused = async (argv: string[], stdin = known) => {
      const { code, err } = await call(['run', '-', '--no-files', ...one, ...argv], { stdin })
      return `${code} ${err}`
    }
    expect(await refused(['--draws', '20', '--inputs', 'fixed'])).toMatch(/^2 .*choose one/)
    expect(await refused(['--draws', '20'], smallLine)).toMatch(/^2 .*nothing to draw/)
    expect(await refused(['--draws', '9'])).toMatch(/10 to 1000/)
    expect(await refused(['--inputs', 'loose'])).toMatch(/drawn, fixed/)
  })

  it('a report made again from the document says the same', async () => {
    const { cwd, out } = await call(['run', '-', ...few, ...one], { stdin: known })
    const again = await call(['report', 'out/stdin-run/result.json', '--out', 'again.html'], { cwd })
    expect(again.code).toBe(0)
    expect(out).toContain('How much each input adds')
    const page = readFileSync(path.join(cwd, 'again.html'), 'utf8')
    expect(page).toContain('Uncertainty of the inputs')
  })
})
