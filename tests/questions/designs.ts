/** Designs of a scenario text with their shifts, as a comparison gets them. */
import { readFileSync } from 'node:fs'
import path from 'node:path'
import type { Simulated } from '../../src/answers/figures.js'
import { type HeldOverShift, heldOverShift } from '../../src/answers/line-result.js'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'
import { demoFolder } from '../demo.js'

export const tapeChoice = readFileSync(path.join(demoFolder, 'tape-choice.yaml'), 'utf8')

export interface Design extends Simulated {
  name: string
  note: string
  set: Record<string, unknown>
  held: HeldOverShift[]
  tapeLayout: null
}

/** The base and the variants of these names in this order, all where none is named, `shifts` of each. */
export function designsOf(
  text: string,
  shifts: number,
  names?: readonly string[],
  seed = 'hamper',
): Design[] {
  const loaded = loadScenario(text)
  const variants =
    names === undefined
      ? loaded.variants
      : names.map((name) => loaded.variants.find((variant) => variant.name === name)!)
  return [{ ...loaded, name: 'base', note: '', set: {} }, ...variants].map(
    ({ name, note, set, scenario }) => {
      const line = new Line(scenario)
      const simulated = {
        ...{ scenario, line, countFrom: 0 },
        shifts: Array.from({ length: shifts }, (_, index) => line.simulate(seed, index + 1)),
      }
      return { ...simulated, name, note, set, held: heldOverShift(simulated), tapeLayout: null }
    },
  )
}
