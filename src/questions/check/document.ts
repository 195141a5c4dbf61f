/** The result document of `command: check`: findings, the hand calculation and what was assumed; SI, in a fixed order. */

import { inputsTold } from '../../answers/inputs-told.js'
import type { Made } from '../../answers/made.js'
import type { RestsOn } from '../../answers/rests-on.js'
import type { Checked } from '../../hand/check.js'
import { type CheckFinding, type FindingCode, type Severity, severities } from '../../hand/finding.js'
import { kindsTold, type OtherKinds } from '../../hand/kinds-told.js'
import type { Likely } from '../../hand/likely.js'
import { arrivingShares } from '../../hand/line.js'
import type { GivenAt, Loaded } from '../../scenario/load.js'
import type { Problem } from '../../scenario/problems.js'
import { cautions } from '../../trade/cautions.js'
import { caseResult, closureResult, handResult } from './hand-result.js'

/** A finding as it stands in the document. */
export interface FindingResult extends Omit<CheckFinding, 'code' | 'place' | 'over'> {
  code: FindingCode | Problem['code']
  place: Omit<GivenAt, 'window'> | null
  /** How many times what its bound allows was found, from 1; absent where that is not counted. */
  over?: number
}

/** What made the document. */
type CheckMade = Pick<Made, 'version' | 'node' | 'scenario' | 'repeat'>

export interface CheckResult {
  format: 'tapeshift-result/1'
  command: 'check'
  /** Null where the scenario could not be read. */
  made: CheckMade | null
  display: Loaded['scenario']['display']
  canWork: boolean
  counts: Record<Severity, number>
  findings: FindingResult[]
  cases: Record<string, ReturnType<typeof caseResult>>
  /** Of many kinds those that are not told by name, together; sides in m, least and most. */
  otherCases?: OtherKinds
  hand: ReturnType<typeof handResult> | null
  closure: ReturnType<typeof closureResult> | null
  assumed: Loaded['assumed']
  evidence: readonly RestsOn[]
  /** A sentence on the values that are taken as exact. */
  exact: string
  /** Hand figures as the inputs may be: by their keys, 5 % and 95 % of the draws of inputs lie below, in SI. Only where something says how well it is known. */
  likely?: Likely & { meaning: string }
  cautions: readonly string[]
}

/** Makes the document of a scenario that was read. */
export function checkResult(
  loaded: Pick<Loaded, 'scenario' | 'resolved' | 'assumed' | 'evidence'>,
  { likely, ...checked }: Checked & { likely?: Likely | null },
  made: CheckMade,
): CheckResult {
  const { scenario, assumed } = loaded
  const findings = checked.findings.map(
    ({ code, severity, path, place, message, basis, fix, over, others }): FindingResult => ({
      ...{ code, severity, path },
      place: place && { source: place.source, line: place.line, column: place.column },
      ...{ message, basis, fix },
      ...(over === null ? {} : { over }),
      ...(others === undefined ? {} : { others }),
    }),
  )
  const mix = arrivingShares(scenario, checked.hand.line)
  const { told, others } = kindsTold(scenario, mix)
  return {
    format: 'tapeshift-result/1',
    command: 'check',
    made,
    display: scenario.display,
    canWork: checked.canWork,
    counts: countsOf(findings),
    findings,
    cases: Object.fromEntries(
      Object.entries(scenario.cases).flatMap(([name, kind], index) =>
        told.has(name) ? [[name, caseResult(kind, mix[index]!)]] : [],
      ),
    ),
    ...(others ? { otherCases: others } : {}),
    hand: handResult(scenario, checked.hand),
    closure: checked.closure && closureResult(scenario, checked.closure, told),
    assumed,
    ...inputsTold(loaded),
    ...(likely ? { likely: { meaning: '5 to 95 % of the draws of the inputs', ...likely } } : {}),
    cautions,
  }
}

/** Makes the document of a scenario that breaks the rules of the format: its findings are all that is known. */
export function refusedResult(problems: readonly Problem[]): CheckResult {
  const findings = problems.map(
    ({ code, path, source, line, column, found, rule, fix }): FindingResult => ({
      code,
      severity: 'error',
      path,
      place: { source, line, column },
      message: found ? `${rule}; found: ${found}` : rule,
      basis: 'rule of the format',
      fix,
    }),
  )
  return {
    format: 'tapeshift-result/1',
    command: 'check',
    made: null,
    display: 'metric',
    canWork: false,
    counts: countsOf(findings),
    findings,
    cases: {},
    hand: null,
    closure: null,
    assumed: [],
    ...{ evidence: [], exact: '' },
    cautions,
  }
}

function countsOf(findings: readonly FindingResult[]): Record<Severity, number> {
  const count = (severity: Severity) =>
    findings.reduce((sum, each) => sum + (each.severity === severity ? 1 + (each.others ?? 0) : 0), 0)
  return Object.fromEntries(severities.map((each) => [each, count(each)])) as Record<Severity, number>
}
