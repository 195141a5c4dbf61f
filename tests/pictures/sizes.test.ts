/** Cases that are made to measure in pictures: each as long as it is, none on another. */
import { expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { motionOf, placeAt } from '../../src/pictures/motion.js'
import { loadScenario } from '../../src/scenario/load.js'
import { recordStretch } from '../../src/shifts/stretch.js'
import { stretchShape } from '../../src/shifts/stretch-shape.js'
import { plainLayout } from './plain-layout.js'

const text = `cases:
  cut: {length: {uniform: {low: 250 mm, high: 700 mm}}, width: {uniform: {low: 200 mm, high: 300 mm}}, height: 250 mm}
  stock: {length: 400 mm, width: 300 mm, height: 250 mm}
arrivals: {p: {time-between: {exponential: {mean: 5 s}}}}
line:
  infeed: {type: conveyor, length: 6 m, speed: 20 m/min, spacing: 20 mm}
  belt: {type: conveyor, carries: belt, length: 3 m, speed: 20 m/min, spacing: 20 mm}
  zoned: {type: conveyor, length: 6 m, speed: 20 m/min, zone: 400 mm}
  packer: {type: station, time: {exponential: {mean: 5 s}}}
shift: {length: 1 h}`

it('no case lies on another, by their own lengths', () => {
  const { scenario } = loadScenario(text)
  const stretch = recordStretch(new Line(scenario), scenario, 'sizes', 1, { length: 1200 })
  // what is kept of it can be read again
  expect(stretchShape.parse(JSON.parse(JSON.stringify(stretch)))).toEqual(stretch)
  const layout = plainLayout(scenario)
  // a case of stock has no size of its own
  expect(stretch.cases.every(({ kind, size }) => (kind === 0) === (size !== undefined))).toBe(true)
  const moves = motionOf(stretch, layout)
  let [pairs, close] = [0, 0]
  for (let time = stretch.from; time < stretch.to; time += 1.3)
    for (const piece of [0, 1, 2]) {
      const on = moves.filter((move) => move.piece === piece && move.in <= time && time < move.out)
      for (const [index, move] of on.slice(1).entries()) {
        const ahead = on[index]!
        const { length } = ahead.size ?? { length: 0.4 }
        const room = placeAt(ahead, time) - length - placeAt(move, time)
        pairs++
        if (room < 0.03) close++
        // one that is just entering is drawn at 0, with the tail of the one ahead before it
        if (placeAt(move, time) > 0) expect(room, `piece ${piece} at ${time}`).toBeGreaterThan(-1e-3)
      }
    }
  // a check of the check: many stand, and close to one another
  expect(pairs).toBeGreaterThan(3000)
  expect(close).toBeGreaterThan(300)
})
