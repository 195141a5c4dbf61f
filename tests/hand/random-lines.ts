/** Random but plausible lines, to measure the expected output of a check with: packers, infeed, one or two sealers, palletiser, crew. */
import { Stream } from '../../src/engine/stream.js'

/** A line of the list `seed`, as a file would have it. The ranges are common practice, no source. */
export function randomLine(seed: string, number: number): string {
  const stream = new Stream('random line', 'shape')
  stream.begin(seed, number)
  const between = (low: number, high: number) => low + (high - low) * stream.next()
  /** Even in proportion: as often from 1 to 2 as from 10 to 20. */
  const inProportion = (low: number, high: number) => low * (high / low) ** stream.next()
  const one = <T>(...of: T[]): T => of[Math.min(of.length - 1, Math.floor(stream.next() * of.length))]!
  const round = (value: number) => Number(value.toPrecision(4))

  const flow = between(5, 13)
  const lengths = [between(300, 420), between(380, 560)]
  const mean = 60 / flow
  const law = one(
    `${round(mean)} s`,
    `{gamma: {mean: ${round(mean)} s, cv: ${round(between(0.3, 0.8))}}}`,
    `{lognormal: {mean: ${round(mean)} s, cv: ${round(between(0.3, 0.8))}}}`,
    `{exponential: {mean: ${round(mean)} s}}`,
  )
  const conveyor = (name: string, low: number, high: number) =>
    `  ${name}: {type: conveyor, carries: ${one('accumulating', 'accumulating', 'belt')}, length: ${round(inProportion(low, high))} m, speed: ${round(between(15, 25))} m/min, spacing: ${round(between(0, 60))} mm}`
  const sealer = (name: string, heads: string) => {
    const breakdowns = `{after: {exponential: {mean: ${round(inProportion(8, 60))} h}}, repair: {lognormal: {mean: ${round(between(5, 25))} min, cv: 0.7}}}`
    return `  ${name}:
    type: sealer
    belt-speed: ${round(between(14, 24))} m/min
    flaps: {time: ${round(between(0, 1.5))} s}
    heads: ${heads}
    jams: {chance: ${round(inProportion(0.3, 5))} per 1000 cases, clear: {lognormal: {mean: ${round(between(30, 120))} s, cv: ${round(between(0.4, 1))}}}, case-lost: ${one(0, 20)} %}
    roll-change: {time: {lognormal: {mean: ${round(between(45, 150))} s, cv: 0.4}}, low-tape-warning: 40 m}
    breakdowns: ${breakdowns}`
  }
  const both = '{top: {}, bottom: {}}'
  const isTwo = stream.next() < 0.5
  // what the palletiser does after its planned stops, over what comes: some are too slow
  const spare = between(0.95, 1.7)
  const [cases, stop] = [Math.round(between(20, 80)), between(15, 90)]
  const work = Math.max(1.5, mean / spare - stop / cases)
  const stopLaw = one(
    `${round(stop)} s`,
    `{uniform: {low: ${round(0.5 * stop)} s, high: ${round(1.5 * stop)} s}}`,
    `{lognormal: {mean: ${round(stop)} s, cv: 0.5}}`,
  )
  const people = one(1, 2)
  const breaks = one('[]', '[{at: 2 h, for: 15 min}, {at: 4 h, for: 30 min}, {at: 6 h, for: 15 min}]')
  return [
    `title: random line ${number} of ${seed}`,
    `target: ${round(flow * between(0.8, 1))} cases/min`,
    `cases: {small: {share: ${round(between(30, 100))}, length: ${round(lengths[0]!)} mm, width: 280 mm, height: 250 mm}, large: {share: ${one(0.01, 30)}, length: ${round(lengths[1]!)} mm, width: 280 mm, height: 250 mm, jam-factor: 1.3}}`,
    `arrivals: {packing: {time-between: ${law}, when-full: ${one('wait', 'wait', 'wait', 'queue')}}}`,
    'line:',
    `  infeed: {type: conveyor, length: ${round(inProportion(1, 20))} m, speed: ${round(between(15, 25))} m/min, spacing: ${round(between(0, 60))} mm}`,
    ...(isTwo
      ? [sealer('lower', '{bottom: {}}'), conveyor('between', 1, 12), sealer('upper', '{top: {}}')]
      : [sealer('sealer', both)]),
    conveyor('outfeed', 2, 12),
    `  palletiser: {type: station, time: {triangular: {low: ${round(0.8 * work)} s, mode: ${round(work)} s, high: ${round(1.2 * work)} s}}, waiting-room: ${one(0, 0, 2)}, every: {cases: ${cases}, stop: ${stopLaw}}}`,
    `tape: {roll: ${one(914, 1371)} m, leg: 60 mm}`,
    'crew:',
    `  operator: {people: ${people}, walk: ${round(between(10, 60))} s, does: [jams, roll-change]}`,
    `  fitter: {people: 1, walk: ${round(between(1, 5))} min, does: [breakdowns]}`,
    `shift: {length: 8 h, rolls-start: part-used, breaks: ${breaks}}`,
    '',
  ].join('\n')
}
