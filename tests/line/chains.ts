/** Rows of pieces in any order, fed in every way that the format knows, over shifts of several spells: wider than `rows`, with fewer stops. */
import fc from 'fast-check'
import { stringify } from 'yaml'
import { conveyor, type Row, sealer, source, station } from './rows.js'

type Keys = Record<string, unknown>

const whenFull = fc.constantFrom('wait', 'queue', 'turn-away')

const byHour = fc.record({
  'by-hour': fc.record({
    cases: fc.constant(['900 cases/h', '0 cases/h', '1500 cases/h', '600 cases/h']),
    spaced: fc.constantFrom('evenly', 'at-random'),
  }),
  'when-full': whenFull,
})

const orders = fc.record({
  orders: fc.constant([
    { case: 'short', quantity: 70, 'time-between': '3 s', before: '20 s' },
    { case: 'long', quantity: 90, 'time-between': { exponential: { mean: '4 s' } }, before: '50 s' },
    { case: 'short', quantity: 600, 'time-between': '5 s' },
  ]),
  'when-full': whenFull,
})

const breaks = [{ at: '6 min', for: '2 min' }]

/** In one of four it takes no time: cases come, are ready and go at one instant. */
const place = fc.oneof(
  { arbitrary: station, weight: 3 },
  { arbitrary: station.map((keys): Keys => ({ ...keys, time: '0 s' })), weight: 1 },
)

/** Cases go on from conveyor to conveyor: none of these starts late or is faster than the one before it, and all may be alike. */
function beds({ places, speeds, isEven }: { places: Keys[]; speeds: string; isEven: boolean }): Keys[] {
  let before: Keys | undefined
  return places.map((piece) => {
    const { acceleration, ...keys } = piece
    if (keys.type !== 'conveyor') {
      before = undefined
      return piece
    }
    if ('start-delay' in keys) keys['start-delay'] = '0 s'
    if (before !== undefined) {
      const isFaster = Number.parseFloat(`${keys.speed}`) > Number.parseFloat(`${before.speed}`)
      if (speeds === 'one' || isFaster) keys.speed = before.speed
      if (isEven) keys.spacing = before.spacing
    }
    before = keys
    return keys
  })
}

/** As `rows`. */
export const chains: fc.Arbitrary<Row> = fc
  .record({
    places: fc.array(fc.oneof(conveyor, place), { maxLength: 6 }),
    sealer: fc.option(sealer, { nil: undefined, freq: 2 }),
    at: fc.nat({ max: 6 }),
    first: fc.oneof(source, source, byHour, orders),
    more: fc.array(source, { maxLength: 2 }),
    isSound: fc.boolean(),
    lengths: fc.constantFrom(['300 mm', '600 mm'], ['313.7 mm', '587.1 mm'], ['300 mm', '300 mm']),
    length: fc.constantFrom('20 min', '20 min', '3 h'),
    shift: fc.constantFrom(
      {},
      { start: 'carry-over', campaign: 3 },
      { start: 'steady', campaign: 2 },
      { breaks, 'breaks-stop': 'everything' },
      { breaks, 'breaks-stop': 'arrivals-and-manual-work' },
    ),
    late: fc.constantFrom(0, 0, 0.3),
    speeds: fc.constantFrom('any', 'falling', 'falling', 'one'),
    isEven: fc.boolean(),
  })
  .filter(({ places, sealer }) => places.length > 0 || sealer !== undefined)
  .map((given) => {
    const pieces: Keys[] = given.speeds === 'any' ? [...given.places] : beds(given)
    if (given.sealer !== undefined) pieces.splice(given.at, 0, given.sealer)
    const line = Object.fromEntries(
      pieces.map(({ breakdowns, ...piece }, index) => [
        `piece-${index + 1}`,
        given.isSound || breakdowns === undefined ? piece : { ...piece, breakdowns },
      ]),
    )
    const folders = Object.entries(line).filter(
      ([, { flaps }]) => (flaps as Keys | undefined)?.['folded-by'] === 'people',
    )
    const size = { width: '300 mm', height: '300 mm' }
    return {
      uncounted: 'start' in given.shift ? (given.shift.start === 'steady' ? 1 : 0) : given.late,
      text: stringify({
        cases: {
          short: { length: given.lengths[0], ...size },
          long: { share: 0.4, length: given.lengths[1], width: '300 mm', height: '350 mm' },
        },
        arrivals: Object.fromEntries(
          [given.first, ...given.more].map((each, at) => [`table-${at + 1}`, each]),
        ),
        line,
        tape: { roll: '60 m', 'lost-per-roll': '1 m' },
        crew: {
          operator: {
            people: 1,
            walk: '5 s',
            does: ['jams', 'roll-change', 'blade', 'breakdowns', 'size-setting'],
          },
          ...Object.fromEntries(
            folders.map(([name]) => ['folder', { people: 1, 'stands-at': name, does: ['jams'] }]),
          ),
        },
        shift: { length: given.length, 'run-out': '2 min', 'rolls-start': 'part-used', ...given.shift },
      }),
    }
  })
