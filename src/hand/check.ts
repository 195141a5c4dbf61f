/** Can this be built and run at all? What pencil, paper and the standards say of a scenario, without simulating it. */
import { type ClosureComparison, compareClosures } from './closing.js'
import { type Asked, type CheckFinding, findingsOf, type Rule } from './finding.js'
import * as ofCases from './findings/case.js'
import { expectedFindings } from './findings/expected.js'
import * as ofInputs from './findings/inputs.js'
import * as ofMachines from './findings/machine.js'
import * as ofPeople from './findings/people.js'
import * as ofPrices from './findings/prices.js'
import * as ofRates from './findings/rates.js'
import * as ofSensors from './findings/sensors.js'
import * as ofSilence from './findings/silence.js'
import { type HandCalculation, handCalculation } from './hand.js'

/** All rules, in the order in which findings of one severity are told. */
const rules: readonly Rule[] = [
  ofRates.targetFindings,
  expectedFindings,
  ofRates.arrivalFindings,
  ofMachines.legFindings,
  ofMachines.sealerFindings,
  ofMachines.conveyorFindings,
  ofPeople.safetyFindings,
  ofPeople.crewFindings,
  ofPeople.unsealedFindings,
  ofCases.boardFindings,
  ofCases.seamFindings,
  ofCases.weakerFindings,
  ofCases.tapeFindings,
  ofCases.tapeForCaseFindings,
  ofMachines.bufferFindings,
  ofPeople.rollStartFindings,
  ofPeople.breakFindings,
  ofSilence.interlockFindings,
  ofSensors.sensorFindings,
  ofSensors.speedFindings,
  ofSensors.startFindings,
  ofPrices.droppedFindings,
  ofPrices.priceFindings,
  ofSilence.unnamedStopFindings,
  ofInputs.evidenceFindings,
  ofInputs.readAsFindings,
  ofSilence.uncheckedFindings,
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

/** What the rules find in a scenario, and what they look at. */
function found(rules: readonly Rule[], loaded: Asked): Omit<Checked, 'canWork'> {
  const hand = handCalculation(loaded.scenario)
  const closure = compareClosures(loaded.scenario, hand.line)
  return { findings: findingsOf(rules, loaded, hand, closure), hand, closure }
}

const isError = ({ severity }: CheckFinding): boolean => severity === 'error'

/** What says first that a scenario cannot work, null where nothing does, and the hand calculation. Cheaper than all findings: those that tell no error are not asked. */
export function firstError(loaded: Asked): Pick<Checked, 'hand'> & { error: CheckFinding | null } {
  const { findings, hand } = found(
    rules.filter((rule) => rule !== expectedFindings),
    loaded,
  )
  return { error: findings.find(isError) ?? null, hand }
}

/** Checks a loaded scenario. Takes no random number and simulates nothing. */
export function checkScenario(loaded: Asked): Checked {
  const all = found(rules, loaded)
  return { canWork: !all.findings.some(isError), ...all }
}
