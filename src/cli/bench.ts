/** `npm run bench`: how fast shifts of the demo lines simulate on this machine. */
import { readFileSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { quantileSorted } from 'simple-statistics'
import { Line } from '../line/line.js'
import { loadScenario } from '../scenario/load.js'
import type { Scenario } from '../scenario/schema.js'
import { replicate } from '../study/replicate.js'
import { workersOf } from '../study/workers/pool.js'

/** Shifts not counted: the compiler of the language is still at work on them. */
const warmUp = 100
const counted = 400

const demos = ['soap-works', 'refill-hall']

function load(name: string): Scenario {
  const file = new URL(`../../scenarios/${name}.yaml`, import.meta.url)
  return loadScenario(readFileSync(file, 'utf8'), { file: `${name}.yaml` }).scenario
}

function benchShift(name: string): void {
  const line = new Line(load(name))
  const times: number[] = []
  let cases = 0
  let events = 0
  for (let shift = 1; shift <= warmUp + counted; shift++) {
    const started = performance.now()
    line.simulate('bench', shift)
    if (shift <= warmUp) continue
    times.push(performance.now() - started)
    cases += line.counts.arrived
    events += line.counts.events
  }
  times.sort((a, b) => a - b)
  const total = times.reduce((sum, time) => sum + time, 0) / 1000
  const [low, middle, high] = [0.1, 0.5, 0.9].map((p) => quantileSorted(times, p).toFixed(2))
  process.stdout.write(
    `${name}: an 8-hour shift in ${middle} ms (${low} to ${high} in 8 of 10), one core; ${(counted / total).toFixed(0)} shifts/s, ${Math.round(cases / total)} cases/s, ${Math.round(events / total)} events/s\n`,
  )
}

async function benchWorkers(name: string): Promise<void> {
  const scenario = load(name)
  const shifts = 1000
  let alone = 0
  for (const workers of [1, availableParallelism()]) {
    const started = performance.now()
    const threads = workersOf(workers, { designs: [scenario], seed: 'bench' })
    await replicate(threads, { shifts })
    await threads.close()
    const seconds = (performance.now() - started) / 1000
    if (workers === 1) alone = seconds
    process.stdout.write(
      `${name}: ${shifts} shifts with ${workers} worker${workers > 1 ? 's' : ''} in ${seconds.toFixed(2)} s (${(seconds / alone).toFixed(2)} of one worker's time)\n`,
    )
  }
}

for (const name of demos) benchShift(name)
await benchWorkers('soap-works')
