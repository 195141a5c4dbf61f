/** Sensors and speeds by level for random rows of conveyors, belts and sealers. */
import fc from 'fast-check'
import { DeadlockError } from '../../src/line/standstill.js'
import { ScenarioError } from '../../src/scenario/problems.js'
import { type Row, textOf } from './tails.js'

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
export function withKeys(
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

export const sensor = (each: Choice, { pieces }: Row): string | null => {
  const { sees, place, lasts, restart } = each
  const [piece, watched] = [pieces[each.at], pieces[sees]]
  if (!piece || !watched || each.at === sees || piece.what === 'gravity' || watched.what === 'sealer')
    return null
  // not where the longest case might be held over the sensor
  const at = (Math.max(0, watched.length / 10 - 0.75) * place) / 100
  const of = `p${sees}, at: ${at} m, for: ${lasts / 10} s`
  return `stops-when: {${sees > each.at ? 'full' : 'clear'}: ${of}}, restart: ${restart / 10} s`
}

export const steps = ({ at, sees, place, lasts }: Choice, { pieces }: Row): string | null => {
  const [piece, watched] = [pieces[at], pieces[sees]]
  if (!piece || !watched || watched.what === 'sealer') return null
  if (piece.what !== 'belt' && piece.what !== 'sealer') return null
  return `speeds: [{of: p${sees}, above: ${place} %, at: ${10 + lasts / 3} m/min}]`
}

/** Refused by a rule, or locked as the row is designed: nothing to ask of it. */
export function unlessRefused<T>(ask: () => T): T | 'refused' {
  try {
    return ask()
  } catch (error) {
    if (error instanceof ScenarioError || error instanceof DeadlockError) return 'refused'
    throw error
  }
}

export const choices = fc.array(choice, { minLength: 1, maxLength: 3 })
