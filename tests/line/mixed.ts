/** Lines of random shape that mix all that the floor of a plant has: the lines of `topology`, with what their pieces and people may have besides. */
import fc from 'fast-check'
import { parse, stringify } from 'yaml'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'
import type { LoggedKind, RecordedStopsOfLine } from '../../src/scenario/recorded-stops.js'
import type { Scenario } from '../../src/scenario/schema.js'
import { lines } from './topology.js'

const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null, freq: 1 })
const seconds = (least: number, most: number) =>
  fc.integer({ min: least, max: most }).map((value) => `${value} s`)

const takes = fc.oneof(
  seconds(1, 40),
  seconds(2, 20).map((mean) => ({ exponential: { mean } })),
)

const planned = fc
  .array(
    fc.record({
      due: fc.oneof(
        seconds(0, 800).map((at) => ({ at })),
        seconds(50, 400).map((every) => ({ every })),
      ),
      takes,
      needs: fc.constantFrom(null, 'o', 'fitter'),
    }),
    { minLength: 1, maxLength: 2 },
  )
  .map((works) =>
    works.map(({ due, takes, needs }, index) => ({
      does: `work ${index}`,
      ...due,
      takes,
      ...(needs === null ? {} : { needs }),
    })),
  )

const jam = fc
  .record({ chance: fc.integer({ min: 0, max: 10 }), lost: fc.integer({ min: 0, max: 100 }), clear: takes })
  .map(({ chance, lost, clear }) => ({ chance: `${chance} %`, clear, 'case-lost': `${lost} %` }))
const jams = fc
  .tuple(jam, jam)
  .map(([flap, crushed]) => ({ flap, crushed: { ...crushed, by: 'fitter', isolate: '3 s' } }))

const sizeSetting = fc.oneof(
  fc.constant({ 'per-mm': { height: '20 ms' } }),
  fc.tuple(seconds(0, 20), takes).map(([there, back]) => ({
    between: { small: { long: there }, long: { small: back } },
  })),
)

/** Stops of the log: pairs of gap and length, s. */
const logged = fc.record({
  times: fc.array(fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 90 })), {
    maxLength: 5,
  }),
  instead: fc.subarray<LoggedKind>(['jams', 'breakdowns', 'roll-change', 'size-setting']),
})

/** What a piece may have besides; of a kind that has no such key it is left out. */
const more = fc.record({
  planned: maybe(planned),
  jams: maybe(jams),
  count: fc.constantFrom(1, 1, 2, 3),
  shared: fc.constantFrom('shortest', 'alternate'),
  sizeSetting,
  alsoBelow: fc.boolean(),
  paces: maybe(fc.array(fc.integer({ min: 60, max: 130 }), { minLength: 1, maxLength: 3 })),
  handover: maybe(seconds(5, 60)),
  logged: fc.option(logged, { nil: null, freq: 1 }),
})
type More = typeof more extends fc.Arbitrary<infer T> ? T : never

const otherWork = fc
  .tuple(
    fc.oneof(
      fc.integer({ min: 5, max: 40 }).map((share) => ({ share: `${share} %` })),
      seconds(100, 300).map((every) => ({ every })),
    ),
    takes,
    fc.boolean(),
  )
  .map(([due, takes, canBeLeft]) => ({ ...due, takes, 'can-be-left': canBeLeft }))

/** How a shift finds the line. */
type Start = Record<string, string | number>

const starts: Start[] = [
  {},
  { start: 'carry-over', campaign: 2 },
  { start: 'carry-over', campaign: 3 },
  { start: 'steady', campaign: 3 },
]

export interface Mixed {
  text: string
  recordedStops: RecordedStopsOfLine
  /** Shifts at the start that are not counted. */
  uncounted: number
}

/** Sides of the longer kind that vary, and by which law; no machine is set by people then where height or width do. */
const cut = fc.record({
  sides: fc.subarray(['length', 'width', 'height'] as const),
  law: fc.constantFrom(
    { uniform: { low: '250 mm', high: '700 mm' } },
    { normal: { mean: '500 mm', sd: '200 mm', 'at-least': '150 mm', 'at-most': '0.7 m' } },
    { triangular: { low: '100 mm', mode: '100 mm', high: '700 mm' } },
  ),
})

const given = fc.record({
  text: lines,
  cut: maybe(cut),
  pieces: fc.array(more, { minLength: 6, maxLength: 6 }),
  others: fc.array(otherWork, { maxLength: 2 }),
  fitters: fc.integer({ min: 1, max: 2 }),
})

type Given = typeof given extends fc.Arbitrary<infer T> ? T : never

/** Shifts that each begin empty. */
export const mixedShifts: fc.Arbitrary<Mixed> = given.map((of) => mixedOf(of, {}))

/** Shifts that begin empty, and campaigns of them. */
export const mixed: fc.Arbitrary<Mixed> = fc
  .tuple(given, fc.constantFrom(...starts))
  .map(([of, start]) => mixedOf(of, start))

function mixedOf({ text, cut: sizes, pieces, others, fitters }: Given, start: Start): Mixed {
  const written = parse(text)
  const recordedStops: Record<string, RecordedStopsOfLine[string]> = {}
  const first = new Set(Object.values<Keys>(written.line).map((keys) => keys['right-of-way']))
  const line = Object.entries<Keys>(written.line).map(([name, keys], index) => {
    const extra = pieces[index % pieces.length]!
    const count = first.has(name) ? 1 : extra.count
    if (extra.logged) recordedStops[count > 1 ? `${name} 1` : name] = stopsOf(extra.logged)
    return [name, setBy(withMore(keys, extra, count), sizes?.sides ?? [])]
  })
  const o = { ...written.crew.o, ...(others.length > 0 ? { 'other-work': others } : {}) }
  const fitter = { people: fitters, walk: '8 s', does: ['breakdowns'] }
  const all = {
    ...written,
    cases: { ...written.cases, long: { ...written.cases.long, ...sidesOf(sizes) } },
    line: Object.fromEntries(line),
    crew: { o, fitter },
    shift: { ...written.shift, ...start },
  }
  return { text: stringify(all), recordedStops, uncounted: start.start === 'steady' ? 1 : 0 }
}

type Keys = Record<string, unknown>
type Cut = Given['cut']

const sidesOf = (sizes: Cut): Keys =>
  Object.fromEntries((sizes?.sides ?? []).map((side) => [side, sizes!.law]))

/** A machine that must be set for each case sets itself. */
const setBy = (keys: Keys, varying: readonly string[]): Keys =>
  keys.type === 'sealer' && varying.some((side) => side !== 'length')
    ? { ...keys, 'size-setting': { ...(keys['size-setting'] as Keys), by: 'machine' } }
    : keys

function withMore(keys: Keys, extra: More, count: number): Keys {
  const kind = String(keys.type)
  const isManual = keys['run-by'] === 'people' && kind === 'station'
  return {
    ...keys,
    ...(extra.planned ? { planned: extra.planned } : {}),
    ...(extra.jams ? { jams: extra.jams } : {}),
    ...(count > 1 ? { 'side-by-side': count, divert: { rule: extra.shared, time: '0.3 s' } } : {}),
    ...(kind === 'sealer'
      ? {
          'size-setting': { ...(keys['size-setting'] as Keys), ...extra.sizeSetting },
          'roll-change': {
            ...(keys['roll-change'] as Keys),
            ...(extra.alsoBelow ? { 'also-below': '15 m' } : {}),
          },
        }
      : {}),
    ...(isManual && extra.paces ? { 'by-hour': extra.paces.map((pace) => `${pace} %`) } : {}),
    ...(isManual && extra.handover ? { handover: extra.handover } : {}),
  }
}

function stopsOf({ times, instead }: NonNullable<More['logged']>): RecordedStopsOfLine[string] {
  const begins: number[] = []
  const ends: number[] = []
  let at = 0
  for (const [gap, length] of times) {
    begins.push(at + gap)
    at += gap + length
    ends.push(at)
  }
  return { instead, begins, ends, kinds: times.map((_, index) => (index % 2 === 0 ? 'jams' : 'breakdowns')) }
}

export function scenarioOf({ text, recordedStops }: Mixed): Scenario {
  const { scenario } = loadScenario(text)
  return Object.keys(recordedStops).length > 0 ? { ...scenario, recordedStops } : scenario
}

export function mixedLine(given: Mixed): Line {
  const { shift } = loadScenario(given.text).scenario
  const line = new Line(scenarioOf(given))
  if (given.uncounted > 0) line.countFrom = given.uncounted * (shift.length + shift['run-out'])
  return line
}
