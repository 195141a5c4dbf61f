/** What the page asks of the study: nothing that a comparison of kept designs cut off is lost. */
import { beforeEach, describe, expect, it, vi } from 'vitest'
import type { Ask, Told } from '../../src/try/study/messages.js'
import { Desk } from '../../src/try/view/desk/desk.js'

/** A desk with a study that only notes what it is asked, and lets the test tell. */
function deskOf() {
  const asked: Ask[] = []
  let tell: (told: Told) => void = () => {}
  const desk = new Desk({ name: 'line.yaml', files: {}, text: 'a: 1' } as never, (hear) => {
    tell = hear
    return { ask: (ask) => asked.push(ask), close: () => {} }
  })
  desk.ask()
  return {
    desk,
    asked: () => asked.map((ask) => (ask.what === 'try' ? ask.after : ask.what)),
    answer: (told: object) => tell({ number: asked.at(-1)!.number, ...told } as Told),
  }
}
const figures = (evidence: readonly string[] = []) => ({
  ...{ what: 'figures', isDone: true, shifts: 200, compared: null },
  ...{ before: { evidence }, after: { evidence } },
})
const pinned = { what: 'pinned', isDone: true, compared: {} }

describe('a comparison of kept designs', () => {
  beforeEach(() => {
    vi.useFakeTimers()
    return () => vi.useRealTimers()
  })

  it('is asked alone where all is told', () => {
    const { desk, asked, answer } = deskOf()
    answer(figures())
    desk.askPins()
    answer(pinned)
    expect(asked()).toEqual(['a: 1', 'pins'])
  })

  it.each([0, 100])('%s ms after a change leaves the figures of the change to be told after it', (wait) => {
    const { desk, asked, answer } = deskOf()
    answer(figures())
    desk.take('a: 2', 'text')
    vi.advanceTimersByTime(wait)
    desk.askPins()
    vi.advanceTimersByTime(1000)
    answer({ ...pinned, isDone: false })
    expect(asked().at(-1)).toBe('pins')
    answer(pinned)
    expect(asked()).toEqual(['a: 1', ...(wait === 0 ? [] : ['a: 2']), 'pins', 'a: 2'])
  })

  it('leaves draws that were on their way to be told after it', () => {
    const { desk, asked, answer } = deskOf()
    answer(figures(['arrivals.packing']))
    desk.askPins()
    answer(pinned)
    expect(asked()).toEqual(['a: 1', 'pins', 'a: 1'])
    answer(figures(['arrivals.packing']))
    answer({ ...figures(['arrivals.packing']), what: 'drawn' })
    desk.askPins()
    answer(pinned)
    expect(asked()).toEqual(['a: 1', 'pins', 'a: 1', 'pins'])
  })

  it('says which design cannot be simulated, whatever it is called, and goes on', () => {
    const { desk, asked, answer } = deskOf()
    desk.askPins()
    answer({ what: 'problems', of: 'after', problems: [{ path: 'a', rule: 'is no length' }] })
    expect(desk.pinFault.value).toBe('after cannot be simulated: a: is no length.')
    expect(desk.known.problems.value).toEqual([])
    expect(asked()).toEqual(['a: 1', 'pins', 'a: 1'])
  })
})
