/** The study behind the page tells what `tapeshift run` tells of the same text, digit for digit, and gives up what is not asked any more. */
import { describe, expect, it } from 'vitest'
import { loadForCommand } from '../../src/cli/scenario.js'
import { compare } from '../../src/questions/compare/study.js'
import { run } from '../../src/questions/run/study.js'
import { inProcess } from '../../src/shifts/in-process.js'
import { setValue } from '../../src/try/draft/values.js'
import { changedName, type Told } from '../../src/try/study/messages.js'
import { Tryout } from '../../src/try/study/tryout.js'
import { demo, only, toldOf } from './demos.js'

/** A line that is simulated in no time, half as fast again as its target. */
const plain = `
title: A plain line
target: 4 cases/min
cases: {small: {length: 300 mm, width: 200 mm, height: 200 mm}}
arrivals: {packing: {time-between: {exponential: {mean: 10 s}}}}
line:
  infeed: {type: conveyor, length: 4 m}
  check: {type: station, time: {uniform: {low: 4 s, high: 9 s}}}
shift: {length: 1 h}
study: {shifts: 30, seed: plain}
`
const home = { name: 'line.yaml', files: {} }
const slower = (text: string) => {
  const made = setValue(text, 'line.check.time', '11 s')
  if (!('text' in made)) throw new Error(made.rule)
  return made.text
}
const until = (shifts: number) => (told: Told) => told.what === 'figures' && told.shifts >= shifts

describe('figures', () => {
  it.each(['soap-works.yaml', 'made-to-measure.yaml'])('of %s are those of a run', async (name) => {
    const { text, ...own } = demo(name)
    const told = await toldOf({ what: 'try', number: 1, home: own, before: text, after: text }, until(50))
    const figures = only(told, 'figures')
    expect(figures.map(({ shifts }) => shifts)).toEqual([20, 50])
    for (const { shifts, before, after, compared } of figures) {
      const loaded = await loadForCommand(own.name, { shifts }, { cwd: '/' } as never)
      const inputs = loaded.evidence.length > 0 ? { inputs: 'fixed' } : {}
      const { document } = await run(loaded, { ...inputs, moment: false })
      expect(after).toEqual(document)
      expect([before, compared]).toEqual([after, null])
    }
  })

  it('of both lines are on the same random numbers, with the differences of a comparison', async () => {
    const after = slower(plain)
    const told = await toldOf({ what: 'try', number: 7, home, before: plain, after }, until(50))
    const last = only(told, 'figures').at(-1)!
    expect(last.number).toBe(7)
    const { readScenario } = await import('../../src/scenario/read.js')
    const whatIf = [`${changedName}: line.check.time=11 s`]
    const { document } = await compare(readScenario(plain, { shifts: 50, whatIf }), {})
    expect(last.compared?.differences).toEqual(document.differences)
    expect(last.compared?.differences[changedName]?.throughput?.isShown).toBe(true)
    expect(last.after.measures.throughput).toEqual(document.variants[changedName]?.measures.throughput)
  })

  it('come with what check finds, and with a stretch of an ordinary shift', async () => {
    const told = await toldOf({ what: 'try', number: 1, home, before: plain, after: plain })
    expect(told.map(({ what }) => what).slice(0, 4)).toEqual(['checked', 'figures', 'figures', 'stretch'])
    expect(only(told, 'figures').at(-1)!.isDone).toBe(true)
    const { stretch } = only(told, 'stretch')[0]!
    expect(stretch.to - stretch.from).toBe(1200)
  })
})

describe('a text that is no scenario', () => {
  it('is told by its problems, at their paths', async () => {
    const after = plain.replace('4 m}', '4 km/h}')
    const [told] = only(await toldOf({ what: 'try', number: 2, home, before: plain, after }), 'problems')
    expect(told).toMatchObject({
      number: 2,
      of: 'after',
      problems: [{ path: 'line.infeed.length', line: 7 }],
    })
  })
})

it('another ask cuts off the one before it', async () => {
  const told: Told[] = []
  const tryout = new Tryout(inProcess(), (each) => told.push(each))
  const first = tryout.take({ what: 'try', number: 1, home, before: plain, after: plain })
  const second = tryout.take({ what: 'try', number: 2, home, before: plain, after: slower(plain) })
  await Promise.all([first, second])
  expect(only(told, 'figures').every(({ number }) => number === 2)).toBe(true)
  expect(only(told, 'figures').at(-1)!.isDone).toBe(true)
})

it('kept designs are compared with the first of them', async () => {
  const pins = [
    { name: 'base', text: plain },
    { name: 'slow', text: slower(plain) },
  ]
  const told = only(await toldOf({ what: 'pins', number: 3, home, pins }), 'pinned')
  expect(told.at(-1)).toMatchObject({ number: 3, isDone: true })
  expect(Object.keys(told.at(-1)!.compared.variants)).toEqual(['base', 'slow'])
})
