/** What keeps a shift fast, without a clock: nothing is allocated per case, and a case takes no more events than it did. */
import { execFileSync } from 'node:child_process'
import { readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { lineOf, mixedFile, referenceFile } from './lines.js'
import type { Asked } from './measure.js'

/**
 * Bytes a case, measured as the program is bundled, in a process of its own, whose compiler works in the same thread: what it chooses then
 * depends on the program alone, not on how busy the machine is.
 */
function bytesPerCase(file: string, engine?: 'ahead' | 'events'): number {
  const asked: Asked = { what: 'allocation', file, ...(engine ? { engine } : {}) }
  const program = ['--single-threaded', '.build/bench/bench.js', JSON.stringify(asked)]
  return Number(execFileSync(process.execPath, program, { encoding: 'utf8' }))
}

describe('the reference line', () => {
  it.each(['ahead', 'events'] as const)('allocates nothing per case once it runs, %s', (engine) => {
    // the least that can be allocated is a number of 16 bytes: with one case in sixteen it would be 1
    expect(bytesPerCase(referenceFile, engine)).toBeLessThan(1)
  })

  it.each([
    // 6.4 a case
    ['events', { arrived: 8493, ahead: 0, events: 54602 }],
    // 0.2 a case: those of stops
    ['ahead', { arrived: 8493, ahead: 8213, events: 1584 }],
  ] as const)('takes as many events as when this was written, %s', async (engine, counts) => {
    const line = await lineOf(referenceFile, engine)
    line.simulate('bench', 1)
    expect(line.counts).toEqual(counts)
  })
})

describe('a line that uses all that a floor has', () => {
  // as the demos: per stop, per piece of other or planned work a little, per case nothing
  it('allocates less than four numbers per case once it runs', () => {
    expect(bytesPerCase(mixedFile)).toBeLessThan(64)
  })
})

describe('the demos', () => {
  const demos = readdirSync('scenarios').filter((name) => name.endsWith('.yaml'))

  // 0.4 to 38 when this was written: stops, and quantiles in the tails of a law, which are worked out anew
  it.each(demos)('%s allocates less than four numbers per case once it runs', (demo) => {
    expect(bytesPerCase(`scenarios/${demo}`)).toBeLessThan(64)
  })
})
