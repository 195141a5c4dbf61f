/** The hand calculation: figures of the line without simulation, each with the measure of a run that it foretells. */

import { costElementKeys, costElements, costKey } from '../catalogue/costs.js'
import type { Scenario } from '../scenario/schema.js'
import { type BufferHand, buffersOf, type MachineBuffer, machineBuffers } from './buffers.js'
import { type Curve, curvesOf } from './curve.js'
import { type Expected, expectedOutput } from './expected.js'
import { type LineHand, lineByHand } from './line.js'
import { hasSealer } from './pace.js'
import { type BufferedPair, bufferedPairs } from './pairs.js'
import { type CrewLoad, crewLoads } from './people.js'
import { type HandRow, handRows } from './rows.js'
import { type TapeUse, tapeUse } from './tape-use.js'

/** All that pencil and paper say of a scenario. */
export interface HandCalculation {
  line: LineHand
  rows: HandRow[]
  buffers: BufferHand[]
  machineBuffers: MachineBuffer[]
  pairs: BufferedPair[]
  curves: Curve[]
  crews: CrewLoad[]
  tape: TapeUse | null
  /** Output that stops and buffers leave. Worked out when it is first asked for: it takes longer than all the rest. */
  readonly expected: Expected
}

/** Works the scenario out by hand. Mixed cases by their shares: mean headway, not the headway of a mean case. */
export function handCalculation(scenario: Scenario): HandCalculation {
  const line = lineByHand(scenario)
  const buffers = buffersOf(scenario, line)
  const tape = hasSealer(scenario) ? tapeUse(scenario, line) : null
  const crews = crewLoads(scenario, line)
  let expected: Expected | null = null
  return {
    get expected() {
      expected ??= expectedOutput(scenario, line, buffers)
      return expected
    },
    line,
    rows: handRows(scenario, line, tape, crews),
    buffers,
    machineBuffers: machineBuffers(scenario, line, buffers),
    pairs: bufferedPairs(scenario, line, buffers),
    curves: curvesOf(scenario, line),
    crews,
    tape,
  }
}

/**
 * Cost of a shift by hand, for putting designs in order before anything is simulated: at `rate` good cases a second of working time: what is paid by the shift, and for those cases what is
 * paid by the case. Stops of the sealers are left out. Null where nothing is priced.
 */
export function shiftCostByHand(scenario: Scenario, rate: number): number | null {
  const { rows, line } = handCalculation(scenario)
  const thousands = (line.throughput * line.working) / 1000
  const priced = rows.flatMap(({ measure, value }) => {
    const element = costElementKeys.find((key) => measure === `measures.${costKey(key)}`)
    if (element === undefined) return []
    return [value * (costElements[element].isByShift ? thousands : (rate * line.working) / 1000)]
  })
  return priced.length === 0 ? null : priced.reduce((sum, cost) => sum + cost, 0)
}
