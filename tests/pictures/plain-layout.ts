/** Pieces one behind the other, as a stand-in for where a line has them. */

import type { Layout, LayoutPiece } from '../../src/pictures/layout.js'
import { outsideSize } from '../../src/scenario/outside.js'
import { arrivalWays, lineWays } from '../../src/scenario/routes.js'
import type { Scenario } from '../../src/scenario/schema.js'

export function plainLayout(scenario: Scenario): Layout {
  const cases = Object.entries(scenario.cases).map(([name, kind]) => ({ name, ...outsideSize(kind) }))
  const longest = Math.max(...cases.map(({ length }) => length))
  const width = Math.max(...cases.map((kind) => kind.width)) + 0.1
  const ways = lineWays(scenario)
  let x = 0
  const pieces = Object.entries(scenario.line).map(([name, keys]): LayoutPiece => {
    const given = keys.type === 'station' ? keys['waiting-room'] : 0
    const room = given === 'unlimited' ? 3 : given
    const length =
      keys.type === 'conveyor'
        ? keys.length
        : keys.type === 'sealer'
          ? keys.bed + longest
          : (1 + Math.min(room, 5)) * (longest + 0.2)
    const piece: LayoutPiece = {
      name,
      type: keys.type,
      x,
      y: 0,
      length,
      width,
      speed: keys.type === 'conveyor' ? keys.speed : keys.type === 'sealer' ? keys['belt-speed'] : null,
      heads: [],
      next: ways.get(name)!.map(({ target }) => target),
    }
    x += length
    return piece
  })
  const arrivals = [...arrivalWays(scenario)].map(([name, [way]]) => ({ name, next: way!.target }))
  const crews = Object.entries(scenario.crew).map(([name, { people }]) => ({ name, people }))
  return {
    pieces,
    arrivals,
    cases: cases.map(({ name, length, width: across }) => ({ name, length, width: across })),
    crews,
    length: x,
    width,
  }
}
