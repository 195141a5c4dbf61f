/** What can be wrong with a scenario: a closed set of codes, each finding with its place, rule and nearest mend. */
import { Fault } from './fault.js'
import { printable } from './printable.js'

/** Every code that a finding may have. */
export type ProblemCode =
  | 'file'
  | 'not-yaml'
  | 'too-large'
  | 'unknown-key'
  | 'missing-key'
  | 'wrong-type'
  | 'not-allowed'
  | 'bad-name'
  | 'not-a-quantity'
  | 'no-unit'
  | 'unknown-unit'
  | 'wrong-unit'
  | 'out-of-range'
  | 'one-of'
  | 'conflict'
  | 'no-such-path'

/** One finding. Line and column count from 1; `window` is the line of the source with a caret under the place. */
export interface Problem {
  code: ProblemCode
  /** Dotted path of the key. */
  path: string
  /** File name, or the option that brought the value, such as `--set`. */
  source: string
  line: number
  column: number
  /** The value as it was written, shortened. */
  found: string
  rule: string
  fix: string
  window: string
}

/** One finding as text: place, rule, window with caret, mend. */
export function problemText(problem: Problem): string {
  const place = problem.line > 0 ? `${problem.source}:${problem.line}:${problem.column}` : problem.source
  const lines = [
    printable(`${place}: ${problem.path ? `${problem.path}: ` : ''}${problem.rule} [${problem.code}]`),
  ]
  if (problem.window) lines.push(problem.window)
  if (problem.found) lines.push(printable(`    found: ${problem.found}`))
  if (problem.fix) lines.push(printable(`    fix:   ${problem.fix}`))
  return lines.join('\n')
}

/** The scenario cannot be used; carries every finding, not only the first. */
export class ScenarioError extends Fault {
  constructor(readonly problems: readonly Problem[]) {
    super('scenario', problems.map(problemText).join('\n'))
  }
}

/** A problem of the whole text or of an option, which has no line. */
export function problemWithoutPlace(
  source: string,
  code: Problem['code'],
  rule: string,
  fix: string,
  found = '',
): Problem {
  return { code, path: '', source, line: 0, column: 0, found, rule, fix, window: '' }
}

/** Such a problem alone as the error that it is. */
export const refusal = (...problem: Parameters<typeof problemWithoutPlace>): ScenarioError =>
  new ScenarioError([problemWithoutPlace(...problem)])

/** What `read` gives, or the first problem why it is no scenario, in words. */
export function unlessNoScenario<T>(
  read: () => T,
): { made: T } | { error: ScenarioError; problem: Problem; reason: string } {
  try {
    return { made: read() }
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error
    const problem = error.problems[0]!
    return { error, problem, reason: `${problem.path}: ${problem.rule}` }
  }
}
