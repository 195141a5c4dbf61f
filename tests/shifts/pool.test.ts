/** Threads that die: what they had in hand is simulated again, by a new thread, a few times and not for ever. */
import { existsSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { loadScenario } from '../../src/scenario/load.js'
import type { Executor } from '../../src/shifts/executor.js'
import { inProcess } from '../../src/shifts/in-process.js'
import { replicate } from '../../src/shifts/replicate.js'
import { threads } from '../../src/shifts/threads/pool.js'
import { smallLine } from '../cli/in-process.js'

/** Threads need a built file: `npm test` builds first. */
const built = new URL('../../.build/cli/worker.js', import.meta.url)
const subject = { seed: 'pool', scenario: loadScenario(smallLine).scenario }
const shifts = 40

/** Words of a thread's file that end the thread. */
const deaths = {
  ends: 'process.exit(1)',
  // an error that nobody catches, as of a library that fails beside the task
  throws: `setTimeout(() => { throw new Error('lost') }); await new Promise(() => {})`,
}

/** A file for threads in a folder of its own: `atLoading` before there is a line, `atTask` before each task. */
function threadFile(
  atTask: (marker: string) => string,
  atLoading: (marker: string) => string = () => '',
): URL {
  expect(existsSync(fileURLToPath(built)), 'npm run build').toBe(true)
  const folder = mkdtempSync(path.join(tmpdir(), 'tapeshift-pool-'))
  const file = path.join(folder, 'thread.mjs')
  const marker = JSON.stringify(path.join(folder, 'died'))
  writeFileSync(
    file,
    `import { existsSync, writeFileSync } from 'node:fs'
${atLoading(marker)}
const { default: work } = await import(${JSON.stringify(built.href)})
export default async (task) => {
  ${atTask(marker)}
  return work(task)
}
`,
  )
  return pathToFileURL(file)
}

/** Only the first thread that comes here dies. */
const once = (death: string) => (marker: string) =>
  `if (!existsSync(${marker})) { writeFileSync(${marker}, ''); ${death} }`

const open: Executor[] = []
function threadsOf(file: URL): Executor {
  const workers = threads(2, file)
  open.push(workers)
  return workers
}
afterEach(async () => {
  for (const workers of open.splice(0)) await workers.close()
})

const simulated = async (workers: Executor) => {
  const { shifts: results, isComplete } = await replicate(workers, { ...subject, shifts })
  expect(isComplete).toBe(true)
  return results
}

describe('a thread that dies', () => {
  it.each(Object.entries(deaths))(
    'once over a task (%s) costs no shift and changes none',
    async (_, death) => {
      const file = threadFile(once(death))
      const results = await simulated(threadsOf(file))
      expect(existsSync(path.join(path.dirname(fileURLToPath(file)), 'died'))).toBe(true)
      expect(results).toHaveLength(shifts)
      expect(results).toEqual(await simulated(inProcess()))
    },
  )

  it.each(Object.entries(deaths))(
    'whenever it has a task (%s) is told, with the shifts',
    async (_, death) => {
      await expect(simulated(threadsOf(threadFile(() => death)))).rejects.toThrow(
        /^a thread that simulated shifts \d+ to \d+ ended 3 times: /,
      )
    },
  )

  it('once while it loads costs no shift and changes none', async () => {
    const file = threadFile(() => '', once(deaths.ends))
    const results = await simulated(threadsOf(file))
    expect(existsSync(path.join(path.dirname(fileURLToPath(file)), 'died'))).toBe(true)
    expect(results).toEqual(await simulated(inProcess()))
  })

  it.each([
    ['ends', deaths.ends, /ended 3 times: it cannot be started$/],
    ['throws', `throw new Error('lost')`, /ended 3 times: lost$/],
  ])('whenever it loads (%s) is told, with the shifts', async (_, death, words) => {
    const file = threadFile(
      () => '',
      () => death,
    )
    const told = expect(simulated(threadsOf(file))).rejects
    await told.toThrow(/^a thread that simulated shifts \d+ to \d+ /)
    await expect(simulated(threadsOf(file))).rejects.toThrow(words)
  })

  it('while it loads and long before there is a task is told, with the shifts', async () => {
    const file = threadFile(
      () => '',
      (marker) => `writeFileSync(${marker}, ''); ${deaths.ends}`,
    )
    const workers = threadsOf(file)
    const marker = path.join(path.dirname(fileURLToPath(file)), 'died')
    await vi.waitFor(() => expect(existsSync(marker)).toBe(true), 10_000)
    await setTimeout(500)
    await expect(simulated(workers)).rejects.toThrow(/ended 3 times: it cannot be started$/)
  })

  it('while it records a stretch changes nothing of what is recorded', async () => {
    const file = threadFile(once(deaths.ends))
    const stretch = {
      ...subject,
      what: 'stretch',
      design: 0,
      from: 3,
      to: 3,
      countFrom: 0,
      length: 600,
      why: 'Why.',
    } as const
    const recorded = await threadsOf(file).work(stretch)
    expect(existsSync(path.join(path.dirname(fileURLToPath(file)), 'died'))).toBe(true)
    expect(recorded).toMatchObject({ shift: 3, why: expect.stringMatching(/^Why\. /) })
    expect(recorded.to - recorded.from).toBe(600)
    expect(recorded.cases.length).toBeGreaterThan(0)
    expect(recorded).toEqual(await inProcess().work(stretch))
  })

  it('is not begun again once the threads are closed', async () => {
    const file = threadFile(() => 'await new Promise(() => {})')
    const workers = threadsOf(file)
    const work = workers.work({ ...subject, what: 'shifts', design: 0, from: 1, to: 2, countFrom: 0 })
    const told = expect(work).rejects.toThrow('shifts 1 to 2 was ended')
    await workers.close()
    await told
  })
})
