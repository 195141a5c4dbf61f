/** How often causes of stops are found to differ where they do not: stops of a day are few, and lopsided. */
import { expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { gapsOf } from '../../src/questions/validate/gaps.js'
import { standardNormal } from '../../src/statistics/quantile.js'

/** Stops a day by the law of Poisson, mean length in s, spread of its logarithm. */
const causes = [
  { rate: 5.6, length: 210, spread: 1 },
  { rate: 0.55, length: 840, spread: 0.7 },
  { rate: 2.8, length: 100, spread: 0.35 },
  { rate: 0.95, length: 75, spread: 0.5 },
]

it('some cause is shown to differ in no more than one of twenty records of 20 days of a plant that is the model', () => {
  const stream = new Stream('stops of a day', 'test')
  stream.begin('validate', 1)
  const gap = () => -Math.log(stream.next())
  const dayOf = ({ rate, length, spread }: (typeof causes)[number]) => {
    let [stops, seconds] = [0, 0]
    for (let at = gap(); at < rate; at += gap()) {
      stops++
      seconds += length * Math.exp(spread * standardNormal(stream.next()) - spread ** 2 / 2)
    }
    return { stops, seconds }
  }
  const model = causes.map(({ rate, length }) => ({ stops: rate, seconds: rate * length }))
  const named = causes.map((_, place) => ({ path: `line.sealer.${place}`, words: `cause ${place}` }))
  const records = 1000
  let shown = 0
  for (let record = 0; record < records; record++) {
    const days = Array.from({ length: 20 }, () => ({ plant: causes.map(dayOf), model }))
    if (gapsOf(named, days, 0.95).some(({ stops, seconds }) => stops.isShown || seconds.isShown)) shown++
  }
  // four standard errors up; Student's t by itself shows some in one of ten
  expect(shown).toBeLessThan(0.05 * records + 4 * Math.sqrt(records * 0.05 * 0.95))
  expect(shown).toBeGreaterThan(0)
})
