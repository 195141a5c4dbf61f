/** A tape that the heads do not take: the error says what must change along with it, ready to be copied. */
import { describe, expect, it } from 'vitest'
import { loadScenario } from '../../src/scenario/load.js'
import { ScenarioError } from '../../src/scenario/problems.js'

const text = (sealer = '') => `cases: {box: {length: 400 mm, width: 300 mm, height: 250 mm}}
arrivals: {door: {time-between: 10 s}}
shift: {length: 1 h}
line: {sealer: {type: sealer${sealer}, heads: {top: {takes: [36 mm, 50 mm]}, bottom: {takes: [48 mm, 80 mm]}}}}
`

/** What is to be copied of the first error that these changes bring. */
function copied(of: string, sets: readonly string[]): string {
  try {
    loadScenario(of, { sets })
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error
    const found = error.problems.flatMap(({ fix }) => /heads that take it: (.*)$/.exec(fix)?.[1] ?? [])
    if (found.length === 0) throw error
    return found[0]!
  }
  throw new Error('no error')
}

describe('by hand', () => {
  it('wider than a head takes: its end goes up, and the other head keeps its own', () => {
    expect(copied(text(), ['tape.width=72 mm'])).toBe('line.sealer.heads.top.takes=[36 mm, 72 mm]')
  })

  it('narrower than both: their ends go down to whole millimetres', () => {
    expect(copied(text(), ['tape.width=24.5 mm'])).toBe(
      'line.sealer.heads.top.takes=[24 mm, 50 mm]; line.sealer.heads.bottom.takes=[24 mm, 80 mm]',
    )
  })

  it('of pieces side by side the key of the file is named', () => {
    expect(copied(text(', side-by-side: 2'), ['tape.width=72 mm'])).toBe(
      'line.sealer.heads.top.takes=[36 mm, 72 mm]',
    )
  })
})

it.each(['72 mm', '3 in', '24.5 mm', '30 mm', '100.2 mm'])('what is copied mends it: %s', (width) => {
  const tape = `tape.width=${width}`
  const whatIfs = [`wide: ${tape}; ${copied(text(), [tape])}`]
  expect(loadScenario(text(), { whatIfs }).variants).toHaveLength(1)
})
