/** Comparisons over what the inputs may be: all designs see the same draws. */
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { compare, loadScenario } from '../../src/index.js'
import { threads } from '../../src/shifts/threads/pool.js'
import { call, smallLine } from './in-process.js'

const known = `${smallLine
  .replace('chance: 1 %', 'chance: 4 in 400 cases')
  .replace('clear: 60 s', 'clear: {guess: 60 s, between: [40 s, 90 s]}')}variants:
  slow: {note: a slow end, set: {line.end.time: 9 s}}
  longer: {note: a longer infeed, set: {line.infeed.length: 7 m}}
  sure: {note: jams that are known, set: {line.sealer.jams.chance: 1 %}}
`
const draws = 12

/** Rows of `shifts.csv`. */
const rowsOf = (csv: string) => {
  const [head, ...lines] = csv.trim().split('\n')
  const names = head!.split(',')
  return lines.map((line) => {
    const cells = line.split(',')
    return Object.fromEntries(names.map((name, index) => [name, cells[index]!]))
  })
}

describe('compare, of a scenario that says how well values are known', () => {
  it('counts the draws in which a design has more and less, as its rows have them', async () => {
    const answer = await compare(loadScenario(known), { draws })
    expect(answer.document.drawn).toEqual({ draws, shifts: 10 })
    const rows = rowsOf(answer.rows().get('shifts.csv')!)
    expect(rows).toHaveLength(4 * (12 + draws * 10))
    const rate = (variant: string, draw: number) =>
      rows
        .filter((row) => row.variant === variant && Number(row.draw) === draw)
        .reduce((sum, row) => sum + Number(row['throughput [cases/s]']), 0)
    for (const variant of ['slow', 'longer', 'sure']) {
      let [more, less] = [0, 0]
      for (let draw = 1; draw <= draws; draw++) {
        if (rate(variant, draw) > rate('base', draw)) more++
        if (rate(variant, draw) < rate('base', draw)) less++
      }
      expect(answer.difference(variant, 'throughput')!.acrossDraws).toEqual({ more, less, draws })
    }
    // a case every 9 s is far below one every 6 s, whatever jams are
    expect(answer.difference('slow', 'throughput')!.acrossDraws).toEqual({ more: 0, less: draws, draws })
  })

  it('gives figures and differences both kinds, and leaves what is luck of them as it is', async () => {
    const scenario = loadScenario(known)
    const drawn = await compare(scenario, { draws })
    const fixed = await compare(scenario, { inputs: 'fixed' })
    const [figure, plain] = [drawn, fixed].map((answer) => answer.figure('longer', 'throughput')!)
    expect(figure!.inputs!.high! - figure!.inputs!.low!).toBeGreaterThan(figure!.high! - figure!.low!)
    expect({ ...figure, inputs: undefined }).toEqual({ ...plain, inputs: undefined })
    const [difference, luck] = [drawn, fixed].map((answer) => answer.difference('longer', 'throughput')!)
    const { acrossDraws: _, inputs, isShown, alone, ...rest } = difference!
    const { isShown: __, alone: aloneOfLuck, ...restOfLuck } = luck!
    expect(rest).toEqual(restOfLuck)
    expect(alone).toMatchObject(aloneOfLuck)
    expect(inputs!.high! - inputs!.low!).toBeGreaterThan(rest.high! - rest.low!)
    expect(isShown).toBe(inputs!.low! > 0 || inputs!.high! < 0)
    const [head] = drawn.rows().get('differences.csv')!.split('\n')
    expect(head).toContain('low of both kinds')
    expect(fixed.rows().get('differences.csv')!.split('\n')[0]).not.toContain('both kinds')
  })

  it('draws alike what two designs share: a change of nothing that is drawn leaves the draws as they are', async () => {
    const same = known.replace('line.infeed.length: 7 m', 'line.infeed.length: 6 m')
    const answer = await compare(loadScenario(same), { draws })
    expect(answer.difference('longer', 'throughput')!.acrossDraws).toEqual({ more: 0, less: 0, draws })
  })

  it('tells in what share of the draws the best is that, with inputs held fixed as if all were known', async () => {
    const scenario = loadScenario(known, { shifts: 60 })
    const sought = { best: 'throughput', within: '0.3 cases/min', among: ['target-held >= 5 % within 4 %'] }
    const drawn = await compare(scenario, { ...sought, draws })
    const fixed = await compare(scenario, { ...sought, inputs: 'fixed' })
    const { across, ...best } = drawn.document.best!
    expect(best).toEqual(fixed.document.best)
    expect(drawn.document.drawn).toEqual({ draws, shifts: 10 })
    expect(across!.draws).toBe(draws)
    expect(across!.among).toEqual([{ require: 'target-held >= 5 %', measure: 'target-held' }])
    // as the rows of the draws have them
    const rows = rowsOf(drawn.rows().get('shifts.csv')!)
    const rate = (variant: string, draw: number) =>
      rows
        .filter((row) => row.variant === variant && Number(row.draw) === draw)
        .reduce((sum, row) => sum + Number(row['throughput [cases/s]']) / 10, 0)
    const left = Object.entries(best.designs).flatMap(([name, { verdict }]) =>
      verdict === 'refused' ? [] : [name],
    )
    expect(Object.keys(across!.best)).toEqual(left)
    for (const name of left) {
      let some = 0
      for (let draw = 1; draw <= draws; draw++) {
        const most = Math.max(...left.map((each) => rate(each, draw)))
        if (most - rate(name, draw) <= 0.3 / 60) some++
      }
      expect(across!.best[name]).toBe(some)
    }
  })

  it('chooses the same with two threads, and after an interrupt to the same bytes', async () => {
    const scenario = loadScenario(known, { shifts: 40 })
    const sought = { best: 'throughput', within: '0.5 cases/min', variants: ['slow', 'longer'], draws }
    const executor = threads(2, new URL('../../.build/cli/worker.js', import.meta.url))
    try {
      const [one, two] = [await compare(scenario, sought), await compare(scenario, sought, { executor })]
      expect(two.document).toEqual(one.document)
      expect(two.rows()).toEqual(one.rows())
    } finally {
      await executor.close()
    }
    const argv = [
      'compare',
      '-',
      '--anyway',
      '--quiet',
      '--full',
      '--workers',
      '1',
      '--shifts',
      '40',
      '--draws',
      '12',
    ]
    const best = [...argv, '--variants', 'slow,longer', '--best', 'throughput', '--within', '0.5 cases/min']
    const bytes = (cwd: string) =>
      ['result.json', 'shifts.csv', 'differences.csv'].map((name) =>
        readFileSync(path.join(cwd, 'out/stdin-compare', name), 'utf8'),
      )
    const whole = await call(best, { stdin: known })
    const cut = await call(best, { stdin: known, interruptAfter: 150 })
    if (cut.code !== 0) await call([...best, '--resume'], { stdin: known, cwd: cut.cwd })
    expect(bytes(cut.cwd)).toEqual(bytes(whole.cwd))
  })

  it('says so in words', async () => {
    const asked = ['compare', '-', '--anyway', '--no-files', '--full', '--workers', '1']
    const { out, code } = await call([...asked, '--draws', '12'], { stdin: known })
    expect(code).toBe(0)
    expect(out).toContain('With uncertain inputs')
    expect(out.replace(/\s+/g, ' ')).toMatch(
      /In 12 draws of the uncertain inputs slow is better in 0 % \(0 to 26 %\)/,
    )
    expect(out).not.toMatch(/NaN|undefined|Infinity/)
    const best = ['--best', 'throughput', '--within', '1 cases/min', '--shifts', '40']
    const sought = await call([...asked, '--draws', '12', ...best], { stdin: known })
    expect(sought.out.replace(/\s+/g, ' ')).toMatch(
      /In 12 draws of the uncertain inputs (\S+ is )?the best or within 1 cases\/min of the best/,
    )
    expect(sought.out).toContain('best with uncertain inputs')
    expect(sought.out).not.toMatch(/NaN|undefined|Infinity/)
    const held = await call([...asked, '--inputs', 'fixed', '--json', ...best], { stdin: known })
    expect(held.out).not.toMatch(/acrossDraws|"across"|"inputs"/)
  })
})
