/** What keeps a shift fast, without a clock: nothing is allocated per case, and a case takes no more events than it did. */
import { execFileSync } from 'node:child_process'
import { describe, expect, it } from 'vitest'
import { lineOf, referenceFile } from './lines.js'
import type { Asked } from './measure.js'

describe('the reference line', () => {
  it('allocates nothing per case once it runs', () => {
    const asked: Asked = { what: 'allocation', file: referenceFile }
    // as the program is bundled, in a process of its own: the compiler's choices depend on what else has run
    const bytes = Number(
      execFileSync(process.execPath, ['.build/bench/bench.js', JSON.stringify(asked)], { encoding: 'utf8' }),
    )
    // the least that can be allocated is a number of 16 bytes: with one case in sixteen it would be 1
    expect(bytes).toBeLessThan(1)
  })

  it('takes as many events as when this was written: 7.9 a case', async () => {
    const line = await lineOf(referenceFile)
    line.simulate('bench', 1)
    expect(line.counts).toEqual({ arrived: 8493, events: 67279 })
  })
})
