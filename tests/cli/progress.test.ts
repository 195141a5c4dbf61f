/** What a long study says of itself while it runs. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Io } from '../../src/cli/io.js'
import { startProgress } from '../../src/cli/progress.js'

beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  vi.useRealTimers()
})

/** What is said when `done` of 1000 are done after so many seconds. */
function saidAfter(seconds: number, done: number, isOpen = false): string {
  let said = ''
  const stderr = {
    write: (text: string) => {
      said += text
    },
  }
  const progress = startProgress(
    { total: 1000, known: 0, isOpen, counts: 'designs' },
    { stderr, env: {} } as unknown as Io,
    false,
  )
  vi.advanceTimersByTime(seconds * 1000)
  progress.update(done)
  progress.stop()
  return said
}

describe('a line of progress', () => {
  // rates and times left by hand
  it.each([
    [10, 500, 'simulated 500 of 1000 designs, 50 a second, 10 s left\n'],
    [100, 240, 'simulated 240 of 1000 designs, 2.4 a second, 5 min left\n'],
    [100, 20, 'simulated 20 of 1000 designs, 12 a minute, 82 min left\n'],
    [3600, 1, 'simulated 1 of 1000 designs, 1.0 an hour, 999 h left\n'],
  ])('after %i s and %i designs', (seconds, done, words) => {
    expect(saidAfter(seconds, done)).toBe(words)
  })

  it('says of an open study that it may end before', () => {
    expect(saidAfter(10, 500, true)).toBe(
      'simulated 500 of at most 1000 designs, 50 a second, at most 10 s left\n',
    )
  })

  it('comes no more often than every ten seconds', () => {
    expect(saidAfter(9, 500)).toBe('')
  })
})
