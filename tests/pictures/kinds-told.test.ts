/** A document of very many kinds of cases tells of those that its stretch shows, and pictures of it are the same. */
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { withKindsTold } from '../../src/pictures/kinds-told.js'
import { layoutOf } from '../../src/pictures/layout.js'
import { timeSpaceSvg } from '../../src/pictures/time-space.js'
import { loadScenario } from '../../src/scenario/load.js'
import { recordStretch } from '../../src/shifts/stretch.js'

/** So many kinds, 300 mm to 400 mm long. */
function drawn(kinds: number) {
  const cases = Array.from(
    { length: kinds },
    (_, kind) => `  k${kind}: {length: ${300 + (100 * kind) / kinds} mm, width: 250 mm, height: 200 mm}`,
  )
  const { scenario } = loadScenario(`cases:
${cases.join('\n')}
arrivals: {door: {time-between: {exponential: {mean: 3 s}}}}
line:
  infeed: {type: conveyor, length: 4 m, speed: 18 m/min}
  sealer: {type: sealer, belt-speed: 20 m/min}
  outfeed: {type: conveyor, carries: belt, length: 3 m, speed: 24 m/min}
shift: {length: 20 min}
`)
  const stretch = recordStretch(new Line(scenario), scenario, 'seed', 1, { length: 300 })
  return { layout: layoutOf(scenario), stretch }
}

describe('by hand', () => {
  const kind = (name: string) => ({ name, length: 0.4, width: 0.3 })
  const cases = Array.from({ length: 101 }, (_, index) => kind(`k${index}`))
  const { layout, stretch } = drawn(1)
  const seen = [7, 100, 7].map((each, id) => ({ id, kind: each, path: [], came: [0, 0] as [number, number] }))
  const pitches = cases.map((_, index) => index / 100)
  const pieces = [{ ...stretch.pieces[0]!, pitches }, stretch.pieces[1]!]

  it('two of 101 kinds are seen: two are told, in their order', () => {
    const told = withKindsTold({ layout: { ...layout, cases }, stretch: { ...stretch, cases: seen, pieces } })
    expect(told.layout.cases.map(({ name }) => name)).toEqual(['k7', 'k100'])
    expect(told.stretch!.cases.map((each) => each.kind)).toEqual([0, 1, 0])
    expect(told.stretch!.pieces.map((piece) => piece.pitches)).toEqual([[0.07, 1], []])
  })

  it('without a stretch the first hundred are told', () => {
    const told = withKindsTold({ layout: { ...layout, cases }, stretch: null })
    expect(told.layout.cases.map(({ name }) => name)).toEqual(cases.slice(0, 100).map(({ name }) => name))
  })

  it('a hundred are told as they are', () => {
    const given = { layout: { ...layout, cases: cases.slice(0, 100) }, stretch: null }
    expect(withKindsTold(given)).toEqual(given)
  })
})

it('of 1000 kinds a few hundred cases are told, with their names and lengths, and drawn alike', () => {
  const all = drawn(1000)
  const told = withKindsTold(all)
  expect(told.layout.cases.length).toBeLessThan(300)
  const sizes = ({ layout, stretch }: typeof told) => stretch!.cases.map((each) => layout.cases[each.kind])
  expect(sizes(told)).toEqual(sizes(all))
  expect(String(timeSpaceSvg(told.layout, told.stretch!))).toBe(String(timeSpaceSvg(all.layout, all.stretch)))
})
