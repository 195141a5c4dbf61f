/** The study behind the page tells what `tapeshift run` tells of the same text, digit for digit, and gives up what is not asked any more. */
import { describe, expect, it } from 'vitest'
import { loadForCommand } from '../../src/cli/scenario.js'
import { run } from '../../src/questions/run/study.js'
import type { Told } from '../../src/try/study/messages.js'
import { demo, only, toldOf } from './demos.js'

const isAfter = (shifts: number) => (told: Told) => told.what === 'figures' && told.shifts >= shifts

describe('figures', () => {
  it.each(['soap-works.yaml', 'stock-of-file.yaml'].slice(0, 1))('of %s are those of a run', async (name) => {
    const { text, ...home } = demo(name)
    const after = text.replace(/leg: .*/, 'leg: 60 mm')
    const told = await toldOf({ what: 'try', number: 1, home, before: text, after }, isAfter(50))
    const figures = only(told, 'figures').filter(({ compared }) => compared !== null)
    for (const { shifts, before } of figures) {
      const loaded = await loadForCommand(home.name, { shifts }, { cwd: '/' } as never)
      const inputs = loaded.evidence.length > 0 ? { inputs: 'fixed' } : {}
      const { document } = await run(loaded, { ...inputs, moment: false })
      expect(before).toEqual(document)
    }
    expect(figures.map(({ shifts }) => shifts)).toEqual([20, 50])
  })
})
