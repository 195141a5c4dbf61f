/** Scenarios as questions take them, made of others without reading a text again. */
import { isMap } from '../../scenario/is-map.js'
import type { ReadScenario } from '../../scenario/read.js'

/** The scenario with another number of shifts: what `--shifts` makes of it. */
export function withShifts(read: ReadScenario, shifts: number): ReadScenario {
  const { scenario, resolved, asked, assumed } = read
  const study = isMap(resolved.study) ? resolved.study : {}
  const tree = { ...resolved, study: { ...study, shifts } }
  return {
    ...read,
    scenario: { ...scenario, study: { ...scenario.study, shifts } },
    resolved: tree,
    assumed: assumed.filter(({ path }) => path !== 'study.shifts'),
    asked: { ...asked, shifts },
    sha256: read.hashOf(tree),
  }
}

/** A scenario by the name that it has in a comparison, and what differs in it, in words of the format. */
export interface Other {
  name: string
  read: ReadScenario
  set: Record<string, unknown>
}

/** The scenario with others as its variants, whatever variants it had. */
export const withVariants = (base: ReadScenario, others: readonly Other[]): ReadScenario => ({
  ...base,
  variants: others.map(({ name, read, set }) => ({ ...read, name, note: '', set })),
})
