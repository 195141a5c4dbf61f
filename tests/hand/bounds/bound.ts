/** Where a finding begins: a change that just triggers it and one that just does not, the arithmetic beside it. */
import type { FindingCode, Severity } from '../../../src/hand/finding.js'

export interface Bound {
  code: FindingCode
  severity: Severity
  /** Changes that trigger it, and that just do not. */
  told: readonly string[]
  not: readonly string[]
  path: string
}
