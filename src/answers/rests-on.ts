/** What the inputs rest on, as documents and reports tell it. */
import type { Amount } from '../catalogue/figure.js'
import { amountText, type Display, inSmall, spanText, wordsFor } from '../catalogue/printed-units.js'
import { whatIsKnown } from '../inputs/what-is-known.js'
import { type Cell, figures, words } from '../report/cell.js'
import { counted } from '../report/format.js'
import type { Table } from '../report/report.js'
import { exactValues } from '../scenario/evidence.js'
import { type Evidence, type Known, restingOn } from '../scenario/known.js'
import type { Resolved } from '../scenario/resolve.js'
import { dimensions } from '../scenario/units.js'

/** A value that says how well it is known; in SI, of a law its mean. */
export interface RestsOn {
  path: string
  form: Known['form']
  restsOn: string
  unit: string
  value: number | null
  low: number | null
  high: number | null
  confidence: number
}

/** What a document tells of its inputs. */
export interface InputsTold {
  evidence: RestsOn[]
  /** A sentence on what is taken as exact. */
  exact: string
}

const orNull = (value: number): number | null => (Number.isFinite(value) ? value : null)

function unitOf({ of }: Evidence): string {
  if (of === null) return 'count'
  if ('money' in of) return of.money
  switch (of.dimension) {
    case 'share':
      return 'share'
    case 'case-rate':
      return 'cases/s'
    case 'yearly':
      return 'a year'
    case 'cuts':
      return 'cuts'
    default:
      return dimensions[of.dimension].si
  }
}

/** What the inputs of a scenario rest on, but for what is `chosen` or varied, by path: that is no input. */
export function inputsTold(
  given: Pick<Resolved, 'scenario' | 'resolved' | 'assumed' | 'evidence'>,
  chosen: readonly { path: string }[] = [],
): InputsTold {
  const isChosen = (path: string) =>
    chosen.some((choice) => path === choice.path || path.startsWith(`${choice.path}.`))
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
    return `Of the ${given} that the scenario gives none says how well it is known: all are taken as exact, ${first} among them.`
  if (exact.length === 0) return 'All values that the scenario gives say how well they are known.'
  return `${counted(told, 'value')} ${told === 1 ? 'says' : 'say'} how well ${told === 1 ? 'it is' : 'they are'} known; ${exact.length === 1 ? 'one that the scenario gives does not and is' : `the other ${exact.length} that the scenario gives do not and are`} taken as exact: ${first}.`
}

/** The table of what the inputs rest on; without rows where nothing says so. `isDrawn`: they are in the plus-minus. */
export function restsOnTable(evidence: readonly RestsOn[], display: Display, isDrawn = false): Table {
  return {
    title: 'What the inputs rest on',
    note: `Values that say how well they are known. Of a law the mean is told. Chances and rates that were counted lie between exact limits; a guess is believed to lie between its ends nine times in ten. ${isDrawn ? 'The plus-minus of this study holds what is not known of them.' : 'The plus-minus of a study is that of chance in its shifts, with these values held fixed.'}`,
    columns: [...words('input'), ...figures('value'), ...words('rests on'), ...figures('lies between')],
    rows: evidence.map((each): Cell[] => [
      { path: each.path },
      inputText(each.value, each, display) ?? 'none seen',
      each.restsOn,
      intervalText(each, display),
    ]),
  }
}

/** An input, or an end of it, with its unit; null where that is not known. */
export function inputText(
  value: number | null,
  { unit }: Pick<RestsOn, 'unit'>,
  display: Display,
): string | null {
  if (value === null) return null
  if (unit === 'K') return wordsFor(display).temperature(value)
  const amount: Amount = { value, unit }
  return amountText(unit === 'm' && Math.abs(value) < 1 ? inSmall(amount) : amount, display)
}

function intervalText(each: RestsOn, display: Display): string {
  const [low, high] = [inputText(each.low, each, display), inputText(each.high, each, display)]
  const sure = `(${each.confidence * 100} %)`
  return high === null ? `above ${low} ${sure}` : `${spanText(low ?? '', high)} ${sure}`
}
