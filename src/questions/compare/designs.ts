/** The designs of a comparison before they are simulated. */
import { Line } from '../../line/line.js'
import { misuse } from '../../scenario/fault.js'
import type { Evidence } from '../../scenario/known.js'
import { nearest } from '../../scenario/nearest.js'
import { shown } from '../../scenario/printable.js'
import type { ReadScenario } from '../../scenario/read.js'
import type { Scenario } from '../../scenario/schema.js'
import { baseName } from './document.js'

/** A design before it is simulated. */
export interface Design {
  name: string
  note: string
  set: Record<string, unknown>
  scenario: Scenario
  line: Line
  /** What its values rest on. */
  evidence: readonly Evidence[]
  /** Names its shifts in the journal. */
  key: string
}

/** The base and the variants that were asked for, in the order of the file, those of the command line last. */
export function designsOf(loaded: ReadScenario, asked: readonly string[] | undefined): Design[] {
  const { whatIf = [] } = loaded.asked
  const known = loaded.variants.map(({ name }) => name)
  const own = known.slice(0, known.length - whatIf.length)
  const unknown = asked?.find((each) => !own.includes(each))
  if (unknown !== undefined)
    throw misuse(`--variants: there is no variant \`${shown(unknown)}\`; ${nearest(unknown, own)}`)
  const chosen = loaded.variants.filter(
    ({ name }, index) => index >= own.length || asked === undefined || asked.includes(name),
  )
  if (chosen.length === 0)
    throw misuse(
      'nothing to compare with: the scenario has no variants; add some under `variants:`, or give --what-if "PATH=VALUE"',
    )
  if (chosen.some(({ name }) => name === baseName))
    throw misuse(`a variant may not be called \`${baseName}\`: that is the scenario itself`)
  const base = { ...loaded, name: baseName, note: 'the scenario as it stands', set: {} }
  return [base, ...chosen].map(({ name, note, set, scenario, evidence, shiftsSha256 }) => ({
    name,
    note,
    set,
    scenario,
    evidence,
    line: new Line(scenario),
    key: shiftsSha256,
  }))
}
