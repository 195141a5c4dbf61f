/** A value read off what was written, or what is wrong with it. */
import type { ProblemCode } from './problems.js'

export interface Fault {
  code: ProblemCode
  rule: string
  fix: string
  /** Where within what was written. */
  within: readonly (string | number)[]
}
export type Read<T> = { value: T } | { fault: Fault }

export const fault = (
  code: ProblemCode,
  rule: string,
  fix: string,
  within: readonly (string | number)[] = [],
): { fault: Fault } => ({
  fault: { code, rule, fix, within },
})
