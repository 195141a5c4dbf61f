/** Lines of random shape of which most can be worked ahead: a row of conveyors and places, with all that may stop it. */
import fc from 'fast-check'
import { stringify } from 'yaml'

const seconds = (least: number, most: number) =>
  fc.integer({ min: least, max: most }).map((value) => `${value} s`)
/** Whole seconds, at which much meets at one instant, or uneven ones. */
const time = (most: number) =>
  fc.oneof(
    seconds(0, most),
    fc.integer({ min: 1, max: most }).map((mean) => ({ exponential: { mean: `${mean} s` } })),
    fc.double({ min: 0.1, max: most, noNaN: true }).map((value) => `${value} s`),
  )
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined, freq: 1 })
/** In one line of four. */
const rarely = <T>(arbitrary: fc.Arbitrary<T>) =>
  fc.oneof({ arbitrary, weight: 1 }, { arbitrary: fc.constant(undefined), weight: 3 })
const metres = (least: number, most: number) =>
  fc.oneof(
    fc.integer({ min: least * 10, max: most * 10 }).map((tenths) => `${tenths / 10} m`),
    fc.double({ min: least, max: most, noNaN: true }).map((value) => `${value} m`),
  )
const speed = fc.oneof(
  fc.integer({ min: 3, max: 8 }).map((tenths) => `${tenths / 10} m/s`),
  fc.double({ min: 0.25, max: 0.8, noNaN: true }).map((value) => `${value} m/s`),
)

const beltSpeed = fc.oneof(
  fc.constantFrom('0.3 m/s', '0.4 m/s'),
  fc.double({ min: 0.2, max: 0.4, noNaN: true }).map((value) => `${value} m/s`),
)

const breakdowns = fc
  .record({
    after: fc.integer({ min: 100, max: 2000 }),
    clock: fc.constantFrom('running-time', 'calendar-time'),
    repair: time(90),
  })
  .map(({ after, clock, repair }) => ({
    after: { exponential: { mean: `${after} s` } },
    'counted-in': clock,
    repair,
  }))

const defined = (keys: Record<string, unknown>) =>
  Object.fromEntries(Object.entries(keys).filter(([, value]) => value !== undefined))

export const conveyor = fc
  .record({
    carries: fc.constantFrom('accumulating', 'accumulating', 'zoned', 'belt', 'gravity'),
    length: metres(2, 7),
    speed,
    spacing: fc.constantFrom('0 mm', '20 mm', '200 mm'),
    delay: fc.constantFrom('0 s', '0 s', '0.3 s'),
    breakdowns: rarely(breakdowns),
    acceleration: rarely(fc.constant('0.5 m/s2')),
  })
  .map(({ carries, delay, ...keys }) =>
    defined({
      type: 'conveyor',
      ...keys,
      carries: carries === 'zoned' ? 'accumulating' : carries,
      ...(carries === 'zoned' ? { zone: '700 mm' } : {}),
      ...(carries === 'accumulating' || carries === 'zoned' ? { 'start-delay': delay } : {}),
      ...(carries === 'gravity' ? { breakdowns: undefined, acceleration: undefined } : {}),
    }),
  )

export const sealer = fc
  .record({
    bed: fc.constantFrom('1.8 m', '2.3137 m'),
    'belt-speed': beltSpeed,
    folding: time(4),
    people: fc.boolean(),
    by: fc.constantFrom('machine', 'machine', 'crew'),
    setting: time(5),
    per: fc.constantFrom(undefined, '20 ms'),
    gap: fc.constantFrom('300 mm', '0 mm', '123.4 mm'),
    chance: fc.integer({ min: 0, max: 6 }),
    clear: time(60),
    lost: fc.constantFrom('0 %', '40 %'),
    named: fc.boolean(),
    warning: fc.constantFrom('none', '5 m'),
    change: fc.constantFrom('when-empty', 'at-break'),
    roll: time(90),
    blade: rarely(fc.integer({ min: 20, max: 200 })),
    breakdowns: rarely(breakdowns),
    acceleration: rarely(fc.constant('0.5 m/s2')),
  })
  .map(
    ({
      folding,
      setting,
      per,
      gap,
      chance,
      clear,
      lost,
      named,
      warning,
      change,
      roll,
      blade,
      people,
      by,
      ...keys
    }) => {
      const jam = { chance: `${chance} %`, clear, 'case-lost': lost }
      return defined({
        type: 'sealer',
        ...keys,
        flaps: { 'folded-by': people ? 'people' : 'machine', time: folding },
        'size-setting': { by, time: setting, ...(per ? { 'per-mm': { height: per } } : {}) },
        'minimum-gap': gap,
        jams: named ? { flap: jam, crushed: { ...jam, isolate: '5 s' } } : jam,
        'roll-change': {
          time: roll,
          'low-tape-warning': warning,
          ...(warning === 'none' ? {} : { change }),
          'noticed-after': 4,
        },
        ...(blade ? { blade: { 'service-after': `${blade} cuts`, time: '20 s' } } : {}),
      })
    },
  )

export const station = fc
  .record({
    time: time(6),
    'waiting-room': fc.constantFrom(0, 0, 2, 'unlimited'),
    'run-by': fc.constantFrom('machine', 'people'),
    every: maybe(fc.record({ cases: fc.integer({ min: 3, max: 40 }), stop: time(45) })),
    breakdowns: rarely(breakdowns),
  })
  .map((keys) => defined({ type: 'station', ...keys }))

export const source = fc.record({
  'time-between': fc.oneof(
    fc.integer({ min: 2, max: 9 }).map((mean) => ({ exponential: { mean: `${mean} s` } })),
    fc.integer({ min: 2, max: 9 }).map((value) => `${value} s`),
    fc.double({ min: 2, max: 9, noNaN: true }).map((mean) => ({ gamma: { mean: `${mean} s`, cv: 0.5 } })),
  ),
  batch: fc.constantFrom(1, 1, 3),
  'when-full': fc.constantFrom('wait', 'queue', 'turn-away'),
})

const otherWork = fc.record({ every: seconds(200, 600), takes: seconds(5, 60), 'can-be-left': fc.boolean() })

/** A scenario as YAML, and how many of its shifts in a row, or how much of its shift, is not counted. */
export interface Row {
  text: string
  uncounted: number
}

/** Rows, of which many are worked ahead and the others hold that they are left to the events. */
export const rows: fc.Arbitrary<Row> = fc
  .record({
    source,
    more: fc.oneof(
      { arbitrary: fc.array(source, { maxLength: 0 }), weight: 2 },
      { arbitrary: fc.array(source, { minLength: 1, maxLength: 2 }), weight: 1 },
    ),
    infeed: conveyor,
    check: rarely(fc.record({ station, lane: conveyor })),
    first: station,
    sealer,
    outfeed: conveyor,
    station,
    which: fc.constantFrom('both', 'both', 'both', 'sealer', 'station', 'sealer first', 'places'),
    lengths: fc.constantFrom(['300 mm', '600 mm'], ['400 mm', '500 mm'], ['313.7 mm', '587.1 mm']),
    people: fc.integer({ min: 1, max: 2 }),
    walk: time(30),
    other: rarely(otherWork),
    stops: fc.constantFrom('everything', 'arrivals-and-manual-work'),
    breaks: maybe(fc.constant([{ at: '20 min', for: '4 min' }])),
    start: fc.constantFrom(
      {},
      {},
      { start: 'carry-over', campaign: 2 },
      { start: 'steady', campaign: 2 },
      { 'start-up': '2 min' },
    ),
    rolls: fc.constantFrom('full', 'part-used'),
    cut: rarely(fc.constant({ uniform: { low: '250 mm', high: '650 mm' } })),
    late: rarely(fc.double({ min: 0.01, max: 0.6, noNaN: true })),
  })
  .map(
    ({
      source,
      more,
      infeed,
      check,
      first,
      sealer,
      outfeed,
      station,
      which,
      lengths,
      people,
      walk,
      other,
      stops,
      breaks,
      start,
      rolls,
      cut,
      late,
    }) => {
      const folds = sealer.flaps as { 'folded-by': string } | undefined
      const hasFolder = which !== 'station' && which !== 'places' && folds?.['folded-by'] === 'people'
      const line =
        which === 'both'
          ? {
              infeed,
              ...(check ? { check: check.station, lane: check.lane } : {}),
              sealer,
              outfeed,
              palletiser: station,
            }
          : which === 'sealer'
            ? { infeed, sealer }
            : which === 'sealer first'
              ? { sealer, outfeed, palletiser: station }
              : which === 'places'
                ? { check: first, palletiser: station }
                : { outfeed, palletiser: station }
      const size = { width: '300 mm', height: '300 mm' }
      return {
        uncounted: 'start' in start ? (start.start === 'steady' ? 1 : 0) : (late ?? 0),
        text: stringify({
          cases: {
            short: { length: lengths[0], ...size },
            long: { share: 0.4, length: cut ?? lengths[1], width: '300 mm', height: '350 mm' },
          },
          arrivals: { packing: source, ...Object.fromEntries(more.map((each, at) => [`table-${at}`, each])) },
          line,
          tape: { roll: '60 m', 'lost-per-roll': '1 m' },
          crew: {
            operator: {
              people,
              walk,
              does: ['jams', 'roll-change', 'blade', 'breakdowns', 'size-setting'],
              ...(other ? { 'other-work': [other] } : {}),
            },
            ...(hasFolder ? { folder: { people: 1, 'stands-at': 'sealer', does: ['jams'] } } : {}),
          },
          shift: {
            length: '45 min',
            'run-out': '2 min',
            'rolls-start': rolls,
            'breaks-stop': stops,
            ...(breaks && !('start-up' in start) ? { breaks } : {}),
            ...start,
          },
        }),
      }
    },
  )
