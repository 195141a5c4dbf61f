/** What documents tell of the inputs of a scenario: read off it, unlike `rests-on`, which prints what a document says. */
import { whatIsKnown } from '../inputs/what-is-known.js'
import { counted } from '../report/format.js'
import { exactValues } from '../scenario/evidence.js'
import { type Evidence, restingOn } from '../scenario/known.js'
import type { Resolved } from '../scenario/resolve.js'
import { type Dimension, dimensions } from '../scenario/units.js'
import { isWithin } from '../scenario/within.js'
import { orNull } from './line-result.js'
import type { InputsTold, RestsOn } from './rests-on.js'

/** Dimensions whose unit in documents is not that of their SI name. */
const units: Partial<Record<Dimension, string>> = {
  share: 'share',
  'case-rate': 'cases/s',
  yearly: 'a year',
  cuts: 'cuts',
}

function unitOf({ of }: Evidence): string {
  if (of === null) return 'count'
  return 'money' in of ? of.money : (units[of.dimension] ?? dimensions[of.dimension].si)
}

/** What the inputs of a scenario rest on, but for what is `chosen` or varied, by path: that is no input. */
export function inputsTold(
  given: Pick<Resolved, 'scenario' | 'resolved' | 'assumed' | 'evidence'>,
  chosen: readonly { path: string }[] = [],
): InputsTold {
  const isChosen = (path: string) => chosen.some((choice) => isWithin(path, choice.path))
  const resolved = { ...given, evidence: given.evidence.filter(({ path }) => !isChosen(path)) }
  const exact = exactValues(resolved).filter((path) => !isChosen(path))
  const evidence = resolved.evidence.map((each): RestsOn => {
    const { value, low, high, confidence } = whatIsKnown(resolved.scenario, each)
    return {
      path: each.path,
      form: each.known.form,
      restsOn: restingOn(each.known),
      unit: unitOf(each),
      ...{ value: orNull(value), low: orNull(low), high: orNull(high), confidence },
    }
  })
  return { evidence, exact: exactSentence(evidence.length, exact) }
}

/** Paths that are named. */
const mostNamed = 3

function exactSentence(told: number, exact: readonly string[]): string {
  const given = counted(exact.length, 'value')
  const named = exact.slice(0, mostNamed).join(', ')
  const first = exact.length > mostNamed ? `${named} and others` : named
  if (told === 0)
    return `None of the ${given} that the scenario gives says how well it is known. All are taken as exact, such as ${first}.`
  if (exact.length === 0) return 'All values of the scenario say how well they are known.'
  return `${counted(told, 'value')} ${told === 1 ? 'says' : 'say'} how well ${told === 1 ? 'it is' : 'they are'} known; ${exact.length === 1 ? 'one value of the scenario does not and is' : `the other ${exact.length} do not and are`} taken as exact: ${first}.`
}
