/** Comparisons over what the inputs may be: all designs see the same draws. */
import { describe, expect, it } from 'vitest'
import { compare, loadScenario } from '../../src/index.js'
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

  it('gives the figures of each design both kinds, and leaves the paired differences as they are', async () => {
    const scenario = loadScenario(known)
    const drawn = await compare(scenario, { draws })
    const fixed = await compare(scenario, { inputs: 'fixed' })
    const [figure, plain] = [drawn, fixed].map((answer) => answer.figure('longer', 'throughput')!)
    expect(figure!.inputs!.high! - figure!.inputs!.low!).toBeGreaterThan(figure!.high! - figure!.low!)
    expect({ ...figure, inputs: undefined }).toEqual({ ...plain, inputs: undefined })
    const { acrossDraws: _, ...difference } = drawn.difference('longer', 'throughput')!
    expect(difference).toEqual(fixed.difference('longer', 'throughput'))
  })

  it('draws alike what two designs share: a change of nothing that is drawn leaves the draws as they are', async () => {
    const same = known.replace('line.infeed.length: 7 m', 'line.infeed.length: 6 m')
    const answer = await compare(loadScenario(same), { draws })
    expect(answer.difference('longer', 'throughput')!.acrossDraws).toEqual({ more: 0, less: 0, draws })
  })

  it('says so in words, refuses draws where the best is sought, and holds the inputs then', async () => {
    const asked = ['compare', '-', '--anyway', '--no-files', '--workers', '1']
    const { out, code } = await call([...asked, '--draws', '12'], { stdin: known })
    expect(code).toBe(0)
    expect(out).toContain('Over what the inputs may be')
    expect(out.replace(/\s+/g, ' ')).toMatch(
      /Over 12 draws of what the inputs may be slow is better in 0 % \(0 to 26 %\)/,
    )
    expect(out).not.toMatch(/NaN|undefined|Infinity/)
    const best = ['--best', 'throughput', '--within', '1 cases/min', '--shifts', '40']
    const refused = await call([...asked, '--draws', '12', ...best], { stdin: known })
    expect(`${refused.code} ${refused.err}`).toMatch(/^2 .*--best holds the inputs fixed/)
    const sought = await call([...asked, '--json', ...best], { stdin: known })
    expect(sought.out).not.toContain('"acrossDraws"')
  })
})
