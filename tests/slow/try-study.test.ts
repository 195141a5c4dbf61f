/** On all demos the study behind the page tells what `tapeshift run` tells, digit for digit, after 20 and after 50 shifts. */
import { describe, expect, it } from 'vitest'
import { loadForCommand } from '../../src/cli/scenario.js'
import { run } from '../../src/questions/run/study.js'
import { demo, demoNames, only, toldOf } from '../try/demos.js'

describe('figures of the page', () => {
  it.each(demoNames)('of %s are those of a run', async (name) => {
    const { text, ...home } = demo(name)
    const told = await toldOf(
      { what: 'try', number: 1, home, before: text, after: text },
      (each) => each.what === 'figures' && each.shifts === 50,
    )
    const figures = only(told, 'figures').filter(({ shifts }) => shifts === 20 || shifts === 50)
    expect(figures.map(({ shifts }) => shifts)).toEqual([20, 50])
    for (const { shifts, after } of figures) {
      const loaded = await loadForCommand(home.name, { shifts }, { cwd: '/' } as never)
      const inputs = loaded.evidence.length > 0 ? { inputs: 'fixed' } : {}
      expect(after).toEqual((await run(loaded, { ...inputs, moment: false })).document)
    }
  })
})
