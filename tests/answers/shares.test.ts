/**
 * How much each input adds to the uncertainty of a figure, through the whole path: a line without any other chance, of which one figure is the sum
 * of two guesses and another is a ratio of two. Shares are by hand.
 */
import { expect, it } from 'vitest'
import { loadScenario, run } from '../../src/index.js'
import { standardNormal } from '../../src/statistics/quantile.js'

const draws = 400

/** A case comes every half minute and waits for nothing; tape is all that costs. */
const line = ({ packer = '6 s', palletiser = '8 s', price = '40 EUR/roll', roll = '1000 m' }) => `cases:
  a: {length: 400 mm, width: 300 mm, height: 250 mm}
arrivals: {in: {time-between: 30 s}}
line:
  packer: {type: station, time: ${packer}}
  sealer: {type: sealer}
  palletiser: {type: station, time: ${palletiser}}
tape: {width: 48 mm, leg: 70 mm, price: ${price}, roll: ${roll}, lost-per-roll: 0 m}
money: {currency: EUR}
shift: {length: 10 min}
study: {shifts: 2}
`

/** The spread of a guess that lies between two ends with 90 %, as a part of it: its law is lognormal, and so narrow that it is as good as normal. */
const spreadOf = (low: number, high: number) => Math.log(high / low) / (2 * standardNormal(0.95))

async function sharesOf(text: string, measure: 'time-in-system' | 'cost-per-1000') {
  const { document, figure } = await run(loadScenario(text), { held: false, moment: false, draws })
  const { shares, explained } = document.drawn!.contributions.find((each) => each.measure === measure)!
  const { mean, inputs } = figure(measure)!
  const half = (inputs!.alone.high! - inputs!.alone.low!) / 2
  return {
    shares: new Map(shares.map(({ path, share }) => [path, share])),
    explained,
    spread: half / 1.96 / mean!,
  }
}

/** Four standard errors of the share of one of two: it is a ratio of two variances, of which each has sqrt(2 / draws) of itself. */
const nearly = (share: number) => (4 * 2 * share * (1 - share)) / Math.sqrt(draws)
/** Four of a spread, and the 1.97 or so of Student's law for the 1.96 of the normal. */
const nearlySpread = 4 / Math.sqrt(2 * draws) + 0.005

it('the time in the line is the sum of the times of its stations: shares as their variances', async () => {
  const packer = 6 * spreadOf(5.7, 6.3)
  const palletiser = 8 * spreadOf(7.8, 8.2)
  const { shares, explained, spread } = await sharesOf(
    line({
      packer: '{guess: 6 s, between: [5.7 s, 6.3 s]}',
      palletiser: '{guess: 8 s, between: [7.8 s, 8.2 s]}',
    }),
    'time-in-system',
  )
  const share = packer ** 2 / (packer ** 2 + palletiser ** 2)
  expect(share).toBeCloseTo(0.69, 2)
  expect(Math.abs(shares.get('line.packer.time')! - share)).toBeLessThan(nearly(share))
  expect(Math.abs(shares.get('line.palletiser.time')! - (1 - share))).toBeLessThan(nearly(share))
  expect(explained).toBeGreaterThan(0.99)
  // both stations and the 4.75 s that a case rides on the sealer
  const whole = 6 + 8 + 4.75
  expect(Math.abs(spread / (Math.hypot(packer, palletiser) / whole) - 1)).toBeLessThan(nearlySpread)
})

it('tape costs its price over what is on a roll: shares as the squares of their spreads, as a part of each', async () => {
  const price = spreadOf(38, 42)
  const roll = spreadOf(975, 1025)
  const { shares, explained, spread } = await sharesOf(
    line({
      price: '{guess: 40 EUR/roll, between: [38 EUR/roll, 42 EUR/roll]}',
      roll: '{guess: 1000 m, between: [975 m, 1025 m]}',
    }),
    'cost-per-1000',
  )
  const share = price ** 2 / (price ** 2 + roll ** 2)
  expect(share).toBeCloseTo(0.8, 2)
  expect(Math.abs(shares.get('tape.price')! - share)).toBeLessThan(nearly(share))
  expect(Math.abs(shares.get('tape.roll')! - (1 - share))).toBeLessThan(nearly(share))
  expect(explained).toBeGreaterThan(0.99)
  expect(Math.abs(spread / Math.hypot(price, roll) - 1)).toBeLessThan(nearlySpread)
})
