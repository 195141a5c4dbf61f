/** Lines of random shape for property tests: branches side by side that join, inspections, rejects that leave, repair loops. */
import fc from 'fast-check'

const seconds = (most: number) => fc.integer({ min: 0, max: most }).map((value) => `${value} s`)
const random = fc.integer({ min: 1, max: 12 }).map((mean) => `{exponential: {mean: ${mean} s}}`)
const time = fc.oneof(seconds(8), random)

const breakdowns = fc
  .record({
    after: fc.integer({ min: 40, max: 900 }),
    clock: fc.constantFrom('running-time', 'calendar-time'),
    repair: fc.integer({ min: 0, max: 200 }),
  })
  .map(
    ({ after, clock, repair }) =>
      `, breakdowns: {after: {exponential: {mean: ${after} s}}, counted-in: ${clock}, repair: ${repair} s}`,
  )
const maybe = (arbitrary: fc.Arbitrary<string>) => fc.option(arbitrary, { nil: '', freq: 2 })

const jam = fc
  .record({ chance: fc.integer({ min: 0, max: 8 }), lost: fc.integer({ min: 0, max: 100 }), clear: random })
  .map(({ chance, lost, clear }) => `{chance: ${chance} %, clear: ${clear}, case-lost: ${lost} %}`)
const jams = fc
  .oneof(
    jam,
    fc
      .tuple(jam, jam)
      .map(([flap, crushed]) => `{flap: ${flap}, crushed: ${crushed.slice(0, -1)}, isolate: 5 s}}`),
  )
  .map((keys) => `, jams: ${keys}`)

const conveyor = fc
  .record({
    carries: fc.constantFrom('accumulating', 'belt', 'gravity', 'zoned'),
    length: fc.integer({ min: 12, max: 60 }),
    delay: fc.integer({ min: 0, max: 4 }),
    fails: maybe(breakdowns),
    jamming: maybe(jams),
  })
  .map(({ carries, length, delay, fails, jamming }) => {
    const kind = carries === 'zoned' ? 'accumulating, zone: 500 mm' : carries
    return `type: conveyor, carries: ${kind}, length: ${length / 10} m, speed: 20 m/min, start-delay: ${delay / 10} s${carries === 'gravity' ? '' : fails}${jamming}`
  })

const station = fc
  .record({
    time,
    servers: fc.integer({ min: 1, max: 3 }),
    room: fc.constantFrom('0', '2', 'unlimited'),
    people: fc.boolean(),
    every: fc.boolean(),
    fails: maybe(breakdowns),
    jamming: maybe(jams),
  })
  .map(
    ({ time, servers, room, people, every, fails, jamming }) =>
      `type: station, time: ${time}, servers: ${servers}, waiting-room: ${room}, run-by: ${people ? 'people' : 'machine'}${every ? ', every: {cases: 7, stop: 9 s}' : ''}${fails}${jamming}`,
  )

const sealer = fc
  .record({
    jam: fc.integer({ min: 0, max: 8 }),
    by: fc.constantFrom('machine', 'crew'),
    warning: fc.constantFrom('none', '5 m'),
    fails: maybe(breakdowns),
  })
  .map(
    ({ jam, by, warning, fails }) =>
      `type: sealer, size-setting: {by: ${by}, time: 4 s}, jams: {chance: ${jam} %, clear: {exponential: {mean: 30 s}}, case-lost: 30 %}, roll-change: {low-tape-warning: ${warning}, noticed-after: 4}${fails}`,
  )

const piece = fc.oneof(conveyor, station, { arbitrary: sealer, weight: 1 })

/** A part of a line: a piece, branches side by side, or an inspection whose rejects leave or come back repaired. */
const part = fc.oneof(
  { arbitrary: piece.map((keys) => ({ what: 'piece' as const, keys })), weight: 3 },
  {
    arbitrary: fc.record({
      what: fc.constant('branches' as const),
      rule: fc.constantFrom('by-case', 'alternate', 'shortest'),
      time: seconds(3),
      jamming: maybe(jams),
      branches: fc.array(fc.array(piece, { minLength: 1, maxLength: 2 }), { minLength: 2, maxLength: 3 }),
      right: fc.boolean(),
    }),
    weight: 2,
  },
  {
    arbitrary: fc.record({
      what: fc.constant('inspection' as const),
      time: seconds(4),
      chance: fc.integer({ min: 0, max: 60 }),
      finds: fc.integer({ min: 0, max: 100 }),
      rejects: fc.constantFrom('leave', 'lane', 'repair'),
      repairs: fc.boolean(),
      back: fc.nat(),
      room: fc.constantFrom('0', '2', 'unlimited'),
      fails: maybe(breakdowns),
      jamming: maybe(jams),
    }),
    weight: 2,
  },
)

const source = fc
  .record({
    mean: fc.integer({ min: 2, max: 20 }),
    batch: fc.integer({ min: 1, max: 3 }),
    full: fc.constantFrom('wait', 'queue', 'turn-away'),
  })
  .map(
    ({ mean, batch, full }) =>
      `time-between: {exponential: {mean: ${mean} s}}, batch: ${batch}, when-full: ${full}`,
  )

/** A whole scenario with shifts of a quarter of an hour, as YAML. */
export const lines: fc.Arbitrary<string> = fc
  .record({
    sources: fc.array(fc.record({ keys: source, into: fc.nat() }), { minLength: 1, maxLength: 2 }),
    parts: fc.array(part, { minLength: 1, maxLength: 5 }),
    people: fc.integer({ min: 1, max: 2 }),
    stop: fc.constantFrom('everything', 'arrivals-and-manual-work'),
  })
  .map(({ sources, parts, people, stop }) => {
    const rows: string[] = []
    /** First piece of each part, and after the last one the loader. */
    const entry = (index: number) => (index < parts.length ? `p${index}` : 'loader')
    for (const [index, each] of parts.entries()) {
      const here = entry(index)
      const next = entry(index + 1)
      if (each.what === 'piece') rows.push(`${here}: {${each.keys}, to: ${next}}`)
      else if (each.what === 'branches') {
        const names = each.branches.map((_, branch) => `${here}-${'abc'[branch]}0`)
        const to =
          each.rule === 'by-case' ? `{small: ${names[0]}, long: ${names.at(-1)}}` : `[${names.join(', ')}]`
        const used = each.rule === 'by-case' ? [0, names.length - 1] : names.keys()
        rows.push(`${here}: {type: divert, rule: ${each.rule}, time: ${each.time}, to: ${to}${each.jamming}}`)
        for (const branch of new Set(used)) {
          const pieces = each.branches[branch]!
          for (const [place, keys] of pieces.entries()) {
            const name = `${here}-${'abc'[branch]}`
            const to = place + 1 < pieces.length ? `${name}${place + 1}` : `${here}-join`
            rows.push(`${name}${place}: {${keys}, to: ${to}}`)
          }
        }
        const right = each.right ? `, right-of-way: ${here}-a${each.branches[0]!.length - 1}` : ''
        rows.push(`${here}-join: {type: station, time: 1 s${right}, to: ${next}}`)
      } else {
        const to = { leave: 'exit', lane: `${here}-lane`, repair: `${here}-bench` }[each.rejects]
        rows.push(
          `${here}: {type: inspect, time: ${each.time}, chance: ${each.chance} %, finds-unsealed: ${each.finds} %, rejects-to: ${to}, to: ${next}${each.fails}${each.jamming}}`,
        )
        if (each.rejects === 'lane')
          rows.push(`${here}-lane: {type: conveyor, length: 2 m, speed: 20 m/min, to: exit}`)
        if (each.rejects === 'repair')
          rows.push(
            `${here}-bench: {type: station, time: 12 s, waiting-room: ${each.room}, run-by: people, repairs: ${each.repairs}, to: ${entry(each.back % (index + 1))}}`,
          )
      }
    }
    rows.push('loader: {type: station, time: {exponential: {mean: 3 s}}, to: exit}')
    const arrivals = sources.map(
      ({ keys, into }, index) => `s${index}: {${keys}, to: ${entry(index === 0 ? 0 : into % parts.length)}}`,
    )
    return `cases: {small: {length: 400 mm, width: 300 mm, height: 300 mm}, long: {share: 0.4, length: 700 mm, width: 300 mm, height: 300 mm}}
arrivals: {${arrivals.join(', ')}}
line:
${rows.map((row) => `  ${row}`).join('\n')}
tape: {roll: 40 m, lost-per-roll: 1 m}
crew: {o: {people: ${people}, walk: 5 s, does: [jams, roll-change, size-setting, blade, breakdowns]}}
shift: {length: 15 min, run-out: 1 min, rolls-start: part-used, breaks-stop: ${stop}, breaks: [{at: 4 min, for: 1 min}, {at: 9 min, for: 2 min}]}
`
  })
