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

/** What is said when `done` of 1000 are done after so many seconds, `free` of them without simulating. */
function saidAfter(
  seconds: number,
  done: number,
  { free = 0, isOpen = false, counts = 'shifts' as 'shifts' | 'designs' } = {},
): string {
  let said = ''
  const stderr = {
    write: (text: string) => {
      said += text
    },
  }
  const progress = startProgress(
    { total: 1000, known: free, isOpen, counts },
    { stderr, env: {} } as unknown as Io,
    false,
  )
  vi.advanceTimersByTime(seconds * 1000)
  progress.update(done, free)
  progress.stop()
  return said
}

describe('a line of progress', () => {
  // rates and times left by hand
  it.each([
    [10, 500, 'simulated 500 of 1000 shifts, 50 a second, 10 s left\n'],
    [100, 240, 'simulated 240 of 1000 shifts, 2.4 a second, 5 min left\n'],
    [100, 20, 'simulated 20 of 1000 shifts, 12 a minute, 82 min left\n'],
    [3600, 1, 'simulated 1 of 1000 shifts, 1.0 an hour, 999 h left\n'],
  ])('after %i s and %i shifts', (seconds, done, words) => {
    expect(saidAfter(seconds, done)).toBe(words)
  })

  it('says of an open study that it may end before', () => {
    expect(saidAfter(10, 500, { isOpen: true })).toBe(
      'simulated 500 of at most 1000 shifts, 50 a second, at most 10 s left\n',
    )
  })

  it('does not take for fast what took no time: shifts that are known, designs that were ruled out', () => {
    expect(saidAfter(10, 600, { free: 500 })).toBe('simulated 600 of 1000 shifts, 10 a second, 40 s left\n')
    expect(saidAfter(10, 520, { free: 500, counts: 'designs' })).toBe(
      'done with 520 of 1000 designs, 20 by simulating, 2.0 a second, 4 min left\n',
    )
  })

  it('of a search says no time left: how many designs it rules out nobody can tell', () => {
    expect(saidAfter(10, 520, { free: 500, isOpen: true, counts: 'designs' })).toBe(
      'done with 520 of at most 1000 designs, 20 by simulating, 2.0 a second\n',
    )
  })

  it('comes no more often than every ten seconds', () => {
    expect(saidAfter(9, 500)).toBe('')
  })
})
