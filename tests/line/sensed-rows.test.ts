/** Sensors and speeds by level on any row of conveyors, belts and sealers: no case lies on another, and balances close. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { DeadlockError } from '../../src/line/standstill.js'
import { loadScenario } from '../../src/scenario/load.js'
import { ScenarioError } from '../../src/scenario/problems.js'
import { overlapOf, type Row, rows, textOf } from './tails.js'

/** Sensors of one piece: of which conveyor, a share of its length, tenths of a second; and bounds of a step, %. */
const choice = fc.record({
  at: fc.nat(5),
  sees: fc.nat(5),
  place: fc.integer({ min: 0, max: 100 }),
  lasts: fc.integer({ min: 0, max: 60 }),
  restart: fc.integer({ min: 0, max: 40 }),
})

type Choice = ReturnType<(typeof choice)['generate']>['value']

/** The text of a row with `keys` more at the piece at which each choice is, where that can have them. */
function withKeys(
  row: Row,
  choices: readonly Choice[],
  keys: (each: Choice, row: Row) => string | null,
): string {
  let text = textOf(row)
  const done = new Set<number>()
  for (const each of choices) {
    const more = keys(each, row)
    if (more === null || done.has(each.at)) continue
    done.add(each.at)
    text = text.replace(`  p${each.at}: {`, `  p${each.at}: {${more}, `)
  }
  return text
}

const sensor = (each: Choice, { pieces }: Row): string | null => {
  const { sees, place, lasts, restart } = each
  const [piece, watched] = [pieces[each.at], pieces[sees]]
  if (!piece || !watched || each.at === sees || piece.what === 'gravity' || watched.what === 'sealer')
    return null
  // the check reads off states when belts run, and one that waits for a sensor stands: so only what closes up waits so
  if (sees < each.at && piece.what !== 'accumulating') return null
  // not where the longest case might be held over the sensor
  const at = (Math.max(0, watched.length / 10 - 0.75) * place) / 100
  const of = `p${sees}, at: ${at} m, for: ${lasts / 10} s`
  return `stops-when: {${sees > each.at ? 'full' : 'clear'}: ${of}}, restart: ${restart / 10} s`
}

const steps = ({ at, sees, place, lasts }: Choice, { pieces }: Row): string | null => {
  const [piece, watched] = [pieces[at], pieces[sees]]
  if (!piece || !watched || watched.what === 'sealer') return null
  if (piece.what !== 'belt' && piece.what !== 'sealer') return null
  return `speeds: [{of: p${sees}, above: ${place} %, at: ${10 + lasts / 3} m/min}]`
}

/** Refused by a rule, or locked as the row is designed: nothing to ask of it. */
function unlessRefused<T>(ask: () => T): T | 'refused' {
  try {
    return ask()
  } catch (error) {
    if (error instanceof ScenarioError || error instanceof DeadlockError) return 'refused'
    throw error
  }
}

const choices = fc.array(choice, { minLength: 1, maxLength: 3 })
const shifts = fc.integer({ min: 1, max: 1000 })

describe('rows of conveyors, belts and sealers', () => {
  it('that sensors stop have no case on another at any event', () => {
    let asked = 0
    fc.assert(
      fc.property(rows, choices, shifts, (row, some, shift) => {
        const text = withKeys(row, some, sensor)
        const found = unlessRefused(() => overlapOf(row, shift, text))
        if (found === 'refused') return
        if (text.includes('stops-when')) asked++
        expect(found).toBeNull()
      }),
      { numRuns: 150, seed: 20261129 },
    )
    // most rows have no place for what is drawn
    expect(asked).toBeGreaterThan(20)
  })

  it('whose speed follows levels close their balances', () => {
    fc.assert(
      fc.property(rows, choices, shifts, (row, some, shift) => {
        const { scenario } = loadScenario(withKeys(row, some, steps))
        expect(() => new Line(scenario).simulate('levels', shift)).not.toThrow()
      }),
      { numRuns: 60, seed: 20261129 },
    )
  })
})
