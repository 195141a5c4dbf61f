/**
 * `npm run bench`: what a shift costs on this machine, line by line, and what of it grows with the line, the shift and the threads. With
 * BENCH_BRIEF=1 all is measured once and for a moment: whether it works, and nothing else.
 */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { availableParallelism, cpus, tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { referenceFile } from './lines.js'
import { lineOfKinds } from './many-kinds.js'
import { type Asked, isBrief, measure, quantile, type ShiftTimes } from './measure.js'

const mainDemo = 'scenarios/soap-works.yaml'
const demos = [
  mainDemo,
  ...[
    'refill-hall',
    'two-sealers',
    'night-orders',
    'parcel-corner',
    'recorded-day',
    'tape-choice',
    'pet-food',
  ].map((name) => `scenarios/${name}.yaml`),
]
/** Demos whose lines are rows. */
const inRow = ['soap-works', 'tape-choice', 'made-to-measure', 'refill-hall', 'night-orders'].map(
  (name) => `scenarios/${name}.yaml`,
)
const program = '.build/cli/main.js'

/** How often something is measured whose median is told. */
const often = (times: number): number => (isBrief ? 1 : times)

/** What the main demo would rest on if somebody had counted: all that stops its sealer, and two guesses. */
const known = [
  'line.sealer.jams.chance=36 in 40000 cases',
  'line.sealer.jams.clear={lognormal: {mean: 85 s, cv: 0.8, from: 36}}',
  'line.sealer.breakdowns.after=14 in 630 h',
  'line.sealer.breakdowns.repair={lognormal: {mean: 16 min, cv: 0.7, from: 14}}',
  'line.sealer.roll-change.time={lognormal: {mean: 95 s, cv: 0.4, from: 40}}',
  'line.sealer.flaps.time={guess: 0.8 s, between: [0.6 s, 1.1 s]}',
  'crew.fitter.walk={guess: 4 min, between: [2 min, 8 min]}',
].flatMap((value) => ['--set', value])

function bench(): void {
  say(
    `Node.js ${process.version}, ${cpus()[0]?.model.trim() ?? 'unknown processor'}, ${availableParallelism()} cores`,
  )
  aheadOfEvents()
  startUp()
  shifts()
  againstTwins()
  lengths()
  workers()
  draws()
  commands()
}

/** Measures in a process of its own. */
function measured<Result = ShiftTimes>(asked: Asked): Result {
  const { stdout, status, stderr } = spawnSync(
    process.execPath,
    [fileURLToPath(import.meta.url), JSON.stringify(asked)],
    { encoding: 'utf8' },
  )
  if (status !== 0) throw new Error(`a measurement failed: ${stderr}`)
  return JSON.parse(stdout) as Result
}

/** The median of ratios, and in brackets the least and the most. */
const withEnds = (ratios: readonly number[]): string =>
  `${median(ratios).toFixed(2)} (${Math.min(...ratios).toFixed(2)} to ${Math.max(...ratios).toFixed(2)})`

/** How many times as fast rows are when they are worked ahead as by events alone, in turn: once compiled, and the first hundred shifts of a process. */
function aheadOfEvents(): void {
  say(
    '\nRows worked ahead against events alone, times as fast: median of 3 (least to most); the first 100 shifts',
  )
  for (const file of [referenceFile, ...inRow]) {
    const ratios = (what: 'shifts' | 'cold') =>
      Array.from({ length: often(3) }, () => {
        const [ahead, events] = (['ahead', 'events'] as const).map((engine) =>
          measured({ what, file, engine }),
        ) as [ShiftTimes, ShiftTimes]
        return what === 'cold' ? events.time / ahead.time : events.quantiles[1] / ahead.quantiles[1]
      })
    const warm = ratios('shifts')
    const name = file.replace(/^.*\/|\.yaml$/g, '')
    say(` ${name.padEnd(18)}  ${withEnds(warm)}${median(ratios('cold')).toFixed(2).padStart(8)}`)
  }
}

function startUp(): void {
  say('\nStart-up, whole process: median of 9, ms')
  for (const [words, args] of [
    ['node alone', ['-e', '0']],
    ['--help', [program, '--help']],
    [`check ${mainDemo}`, [program, 'check', mainDemo]],
  ] as const)
    say(` ${words.padEnd(34)}${(seconds(args, 9) * 1000).toFixed(0).padStart(8)}`)
}

/** Median time of a process, s. */
function seconds(args: readonly string[], times: number): number {
  return median(
    Array.from({ length: often(times) }, () => {
      const began = performance.now()
      const { status } = spawnSync(process.execPath, args, { stdio: 'ignore' })
      if (status !== 0) throw new Error(`node ${args.join(' ')} ended with ${status}`)
      return (performance.now() - began) / 1000
    }),
  )
}

function shifts(): void {
  say('\nA shift of each line on one core, all measures on: median (10 to 90 % of the shifts)')
  say(
    ` ${'line'.padEnd(18)}   ms a shift             shifts/s   cases/s   events/s  events/case  ns/event  bytes/case`,
  )
  const many = [5, 10_000].map(lineOfKinds)
  for (const file of [referenceFile, ...demos, ...many]) {
    const { quantiles, cases, events, time } = measured({ what: 'shifts', file })
    const bytes = measured<number>({ what: 'allocation', file })
    const [low, middle, high] = quantiles.map((each) => each.toFixed(2))
    const name = file.replace(/^.*\/|\.yaml$/g, '')
    say(
      ` ${name.padEnd(18)}${`${middle} (${low} to ${high})`.padStart(24)}${(1000 / time).toFixed(0).padStart(11)}${thousands((cases / time) * 1000).padStart(10)}${thousands((events / time) * 1000).padStart(11)}${(events / cases).toFixed(2).padStart(13)}${((time / events) * 1e6).toFixed(0).padStart(10)}${bytes.toFixed(1).padStart(12)}`,
    )
  }
  for (const file of many) rmSync(dirname(file), { recursive: true })
}

/** The reference line written twice more, and how many times as long as the engine each takes: in turn, three times. */
function againstTwins(): void {
  say('\nThe reference line written anew, times as long as the engine: median of 3 (least to most)')
  for (const [words, what] of [
    ['a heap of events with a closure each, by events alone (tests/bench/heap-line.ts)', 'heap'],
    ['a plain program for this line alone, worked ahead (tests/bench/plain-line.ts)', 'plain'],
  ] as const) {
    const engine = what === 'heap' ? 'events' : 'ahead'
    const ratios = Array.from({ length: often(3) }, () => {
      const ours = measured({ what: 'shifts', file: referenceFile, engine })
      return measured({ what }).quantiles[1] / ours.quantiles[1]
    })
    say(` ${withEnds(ratios)}  ${words}`)
  }
}

function lengths(): void {
  say('\nCost against the number of pieces (the reference line with more outfeeds, 8 h)')
  for (const pieces of [5, 10, 20, 40, 80]) {
    const { time, cases } = measured({ what: 'long', pieces, hours: 8 })
    const each = (time / cases) * 1e6
    say(
      ` ${String(pieces).padStart(5)} pieces${each.toFixed(0).padStart(8)} ns a case${(each / pieces).toFixed(0).padStart(7)} ns a case and piece`,
    )
  }
  say('\nCost against the length of the shift (the reference line)')
  for (const hours of [1, 8, 40, 200, 1000]) {
    const { time, cases } = measured({ what: 'long', pieces: 5, hours })
    say(` ${String(hours).padStart(5)} h${((time / cases) * 1e6).toFixed(0).padStart(8)} ns a case`)
  }
}

function workers(): void {
  say(`\n1 000 shifts of ${mainDemo} as a whole process, no files: median of 3`)
  let alone = 0
  for (let threads = 1; threads <= availableParallelism(); threads *= 2) {
    const time = seconds(
      [program, 'run', mainDemo, '--shifts', '1000', '--no-files', '--quiet', '--workers', String(threads)],
      3,
    )
    if (threads === 1) alone = time
    say(
      ` ${threads} ${threads === 1 ? 'worker ' : 'workers'}${time.toFixed(2).padStart(8)} s${(time / alone).toFixed(2).padStart(7)} of one worker's`,
    )
  }
}

function draws(): void {
  say(
    `\n60 draws of what ${known.length / 2} inputs of ${mainDemo} may be, 25 shifts of each, beside its 200 shifts: as a whole process, no files, median of 3`,
  )
  for (let threads = 1; threads <= availableParallelism(); threads *= 2) {
    const asked = ['--draws', '60', '--no-files', '--quiet', '--workers', String(threads)]
    const time = seconds([program, 'run', mainDemo, ...known, ...asked], 3)
    say(` ${threads} ${threads === 1 ? 'worker ' : 'workers'}${time.toFixed(2).padStart(8)} s`)
  }
}

/** Said by a process as it ends: what all of its threads took of the processor, s. */
const tellingUser = `import { isMainThread } from 'node:worker_threads'
if (isMainThread) process.on('exit', () => process.stderr.write(\`user \${process.cpuUsage().user / 1e6}\`))`

function commands(): void {
  say(`\nWhole commands about ${mainDemo} with all their files, as many workers as cores, s`)
  const changed = ['--vary', 'line.infeed.length=4..8 m', '--vary', 'crew.operator.people=1..2']
  for (const [words, asked, times] of [
    ['run, 200 shifts: median of 5', ['run', mainDemo], 5],
    ['sweep --each of 2 values: median of 3', ['sweep', mainDemo, '--each', ...changed], 3],
    ['size as in the file: once', ['size', mainDemo], 1],
  ] as const) {
    const both = Array.from({ length: often(times) }, () => wallAndUser(asked))
    const [wall, user] = [0, 1].map((at) =>
      median(both.map((each) => each[at]!))
        .toFixed(2)
        .padStart(8),
    )
    say(` ${words.padEnd(40)}${wall} wall${user} user`)
  }
}

/** Times of a command that writes its files into a folder of its own, s. */
function wallAndUser(asked: readonly string[]): [wall: number, user: number] {
  const out = mkdtempSync(join(tmpdir(), 'tapeshift-bench-'))
  const told = `data:text/javascript,${encodeURIComponent(tellingUser)}`
  const began = performance.now()
  const { stderr, status } = spawnSync(
    process.execPath,
    ['--import', told, program, ...asked, '--quiet', '--out', out],
    { encoding: 'utf8' },
  )
  const wall = (performance.now() - began) / 1000
  rmSync(out, { recursive: true })
  const user = /user ([\d.]+)$/.exec(stderr)
  if (status !== 0 || !user) throw new Error(`tapeshift ${asked.join(' ')} ended with ${status}: ${stderr}`)
  return [wall, Number(user[1])]
}

function median(values: readonly number[]): number {
  return quantile(values, 0.5)
}

function thousands(value: number): string {
  return Math.round(value).toLocaleString('en').replaceAll(',', ' ')
}

function say(line: string): void {
  process.stdout.write(`${line}\n`)
}

// last, when all above is there
if (process.argv[2] === undefined) bench()
else process.stdout.write(JSON.stringify(await measure(JSON.parse(process.argv[2]) as Asked)))
