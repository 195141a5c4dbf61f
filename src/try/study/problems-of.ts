/** Why a line cannot be simulated, at the path of what must change. */
import { Standstill } from '../../line/standstill.js'
import { isFault } from '../../scenario/fault.js'
import { type Problem, problemWithoutPlace, ScenarioError } from '../../scenario/problems.js'

/** The problems that a fault tells; null where it is none of the scenario. */
export function problemsOf(error: unknown, file: string): readonly Problem[] | null {
  if (error instanceof ScenarioError) return error.problems
  if (error instanceof Standstill)
    return [{ ...problemWithoutPlace(file, 'conflict', error.rule, error.fix), path: `line.${error.piece}` }]
  if (isFault(error, 'unsettled')) {
    const [said = '', ...more] = error.message.split('\n')
    const [, rule = said] = /^shift\.start: (.*)$/.exec(said) ?? []
    const fix = more.find((line) => line.includes('fix:'))?.replace(/^\s*fix:\s*/, '') ?? ''
    return [{ ...problemWithoutPlace(file, 'conflict', rule, fix), path: 'shift.start' }]
  }
  return isFault(error, 'asked', 'file') ? [problemWithoutPlace(file, 'conflict', error.message, '')] : null
}
