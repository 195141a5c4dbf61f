/** Can this be built and run at all? What pencil, paper and the standards say of a scenario, without simulating it. */
import { type ClosureComparison, compareClosures } from './closing.js'
import { type Asked, type CheckFinding, findingsOf, type Rule } from './finding.js'
import {
  boardFindings,
  seamFindings,
  tapeFindings,
  tapeForCaseFindings,
  weakerFindings,
} from './findings/case.js'
import { expectedFindings } from './findings/expected.js'
import { evidenceFindings } from './findings/inputs.js'
import { bufferFindings, conveyorFindings, legFindings, sealerFindings } from './findings/machine.js'
import {
  breakFindings,
  crewFindings,
  rollStartFindings,
  safetyFindings,
  unsealedFindings,
} from './findings/people.js'
import { readAsFindings } from './findings/plain-words.js'
import { droppedFindings, priceFindings } from './findings/prices.js'
import { arrivalFindings, targetFindings } from './findings/rates.js'
import { sensorFindings, speedFindings, startFindings } from './findings/sensors.js'
import { interlockFindings, uncheckedFindings, unnamedStopFindings } from './findings/silence.js'
import { type HandCalculation, handCalculation } from './hand.js'

/** All rules, in the order in which findings of one severity are told. */
const rules: readonly Rule[] = [
  targetFindings,
  expectedFindings,
  arrivalFindings,
  legFindings,
  sealerFindings,
  conveyorFindings,
  safetyFindings,
  crewFindings,
  unsealedFindings,
  boardFindings,
  seamFindings,
  weakerFindings,
  tapeFindings,
  tapeForCaseFindings,
  bufferFindings,
  rollStartFindings,
  breakFindings,
  interlockFindings,
  sensorFindings,
  speedFindings,
  startFindings,
  droppedFindings,
  priceFindings,
  unnamedStopFindings,
  evidenceFindings,
  readAsFindings,
  uncheckedFindings,
]

/** What a check says. */
export interface Checked {
  /** No finding is an error. */
  canWork: boolean
  findings: CheckFinding[]
  hand: HandCalculation
  /** Null where nothing tapes. */
  closure: ClosureComparison | null
}

/** What says first that a scenario cannot work, null where nothing does, and the hand calculation. Cheaper than all findings: those that tell no error are not asked. */
export function firstError(loaded: Asked): Pick<Checked, 'hand'> & { error: CheckFinding | null } {
  const hand = handCalculation(loaded.scenario)
  const closure = compareClosures(loaded.scenario, hand.line)
  const asked = rules.filter((rule) => rule !== expectedFindings)
  const error = findingsOf(asked, loaded, hand, closure).find(({ severity }) => severity === 'error') ?? null
  return { error, hand }
}

/** Checks a loaded scenario. Takes no random number and simulates nothing. */
export function checkScenario(loaded: Asked): Checked {
  const hand = handCalculation(loaded.scenario)
  const closure = compareClosures(loaded.scenario, hand.line)
  const findings = findingsOf(rules, loaded, hand, closure)
  return { canWork: findings.every(({ severity }) => severity !== 'error'), findings, hand, closure }
}
