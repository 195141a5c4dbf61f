/** Pieces side by side, asked through the public face: the same bytes as the line that is written out by hand. */
import { parse } from 'csv-parse/sync'
import { expect, it } from 'vitest'
import * as face from '../../src/index.js'

const head = `title: Two sealers
cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}, b: {length: {uniform: {low: 300 mm, high: 600 mm}}, width: 350 mm, height: 300 mm}}
arrivals: {p: {time-between: {exponential: {mean: 2.2 s}}}}
shift: {length: 2 h}
crew: {ops: {people: 1, walk: 10 s, does: [jams, roll-change]}}`
const jams = 'jams: {chance: 5 per 1000, clear: {lognormal: {mean: 80 s, cv: 0.8}}}'
const conveyors = {
  infeed: 'infeed: {type: conveyor, length: 8 m, speed: 30 m/min}',
  outfeed: 'outfeed: {type: conveyor, length: 6 m, speed: 30 m/min}',
}

const short = `${head}
line:
  ${conveyors.infeed}
  sealer: {type: sealer, side-by-side: 2, ${jams}}
  ${conveyors.outfeed}
`
const long = `${head}
line:
  ${conveyors.infeed}
  sealer divert: {type: divert, rule: shortest, to: [sealer 1, sealer 2]}
  sealer 1: {type: sealer, ${jams}, to: outfeed}
  sealer 2: {type: sealer, ${jams}, to: outfeed}
  ${conveyors.outfeed}
`

/** A CSV without the columns of both together, which only `side-by-side` has. */
function ofEach(csv: string): string[][] {
  const rows: string[][] = parse(csv)
  const isOfEach = rows[0]!.map((name) => !name.startsWith('equipment.sealer.'))
  return rows.map((row) => row.filter((_, column) => isOfEach[column]))
}

it('shifts and figures are the same, byte for byte', async () => {
  const [one, other] = await Promise.all(
    [short, long].map((text) =>
      face.run(face.loadScenario(text), { shifts: 10, seed: 'same', moment: false }),
    ),
  )
  const [csv, written] = [one!, other!].map((answer) =>
    [...face.toCsv(answer)].map(([name, text]) => [name, ofEach(text)]),
  )
  expect(csv).toEqual(written)
  const figures = ({
    document: { measures, equipment, crew, arrivals, held, losses },
  }: typeof one & object) => {
    const each = Object.entries(equipment).filter(([, { pieces }]) => pieces === undefined)
    return JSON.stringify({ measures, each, crew, arrivals, held, losses })
  }
  expect(figures(one!)).toBe(figures(other!))
  // a check of the check: another seed gives others
  const another = await face.run(face.loadScenario(long), { shifts: 10, seed: 'other', moment: false })
  expect(figures(another)).not.toBe(figures(one!))
})
