/** What a design is worth in money against another: what it saves a year, when it has paid, and how many failures it must spare. */
import { type DifferenceFigure, type Interval, wholeInterval } from '../../answers/difference-figure.js'
import { measureNamed, measuresOf, type Simulated } from '../../answers/figures.js'
import { type CostElement, costKey } from '../../catalogue/costs.js'
import type { MeasureKey } from '../../catalogue/of-line.js'
import { capitalOf } from '../../scenario/capital.js'
import type { Scenario } from '../../scenario/schema.js'
import {
  breakEvenFailures,
  invested,
  inYears,
  labourCost,
  netPresentValue,
  simplePayback,
} from '../../trade/money.js'
import type { Compared } from './judge.js'

/** A difference with its interval; where inputs were drawn the whole one counts. */
type Difference = Interval & Pick<DifferenceFigure, 'inputs'>

/** Against the base: in money of the scenario. What is not given is null, and named in `leftOut`. */
export interface Worth {
  /** What is bought more. */
  investment: number | null
  /** Saved a year at the base's yearly number of cases, capital recovery left out. */
  yearlySaving: Interval | null
  /** Cases of that year. */
  yearlyCases: number | null
  /** Whole years that are looked at, and the yearly interest. */
  years: number | null
  interest: number | null
  netPresentValue: Interval | null
  /** Years until the savings have paid it, without interest; an end that is never reached is null. */
  payback: Interval | null
  /** Closures a 1000 cases that must open less often to pay for what else it costs more; only where tape or closure differ. */
  breakEven: (Interval & { spared: number | null }) | null
  leftOut: string[]
}

/**
 * Cost of 1000 good cases without some of its elements, by their keys: of each shift what it cost without them, and its thousands of good
 * cases; nothing where nothing is priced.
 */
const costWithout = (name: string, label: string, elements: readonly CostElement[]): Compared => ({
  name,
  label,
  unit: 'money',
  of(design) {
    const measures = measuresOf(design)
    const all = measureNamed(measures, 'cost-per-1000' satisfies MeasureKey)
    if (!all) return null
    const without = elements.flatMap((key) => measureNamed(measures, costKey(key)) ?? [])
    return (shifts) => ({
      kind: 'ratio',
      values: shifts.map(
        ({ values }) => values[all.index]! - without.reduce((sum, { index }) => sum + values[index]!, 0),
      ),
      overs: shifts.map(({ values }) => values[all.index + 1]!),
    })
  },
})

/** What 1000 cases cost while the line runs: what an investment saves or not. */
export const runningCost = costWithout('running-cost', 'Cost of 1000 good cases without capital recovery', [
  'capital',
])

/** What a layout costs more before its failures are counted. */
export const costBeforeFailures = costWithout(
  'cost-before-failures',
  'Cost of 1000 good cases without closures that open later',
  ['failures', 'failure-repair'],
)

/** Whether two designs close their cases differently. */
const closesOtherwise = (one: Scenario, other: Scenario): boolean =>
  JSON.stringify([one.tape, one.closure]) !== JSON.stringify([other.tape, other.closure])

/**
 * The worth of `design` against `base`. `running` and `beforeFailures` are the differences of `runningCost` and
 * `costBeforeFailures`, design less base; `yearlyCases` is what the base puts out a year.
 */
export function worth(
  { scenario: design }: Pick<Simulated, 'scenario'>,
  { scenario: base }: Pick<Simulated, 'scenario'>,
  running: Difference | null,
  beforeFailures: Difference | null,
  yearlyCases: number | null,
): Worth {
  const { money, closure } = design
  const [capital, capitalBefore] = [capitalOf(design), capitalOf(base)]
  const leftOut: string[] = []
  const missing = (what: string): null => {
    leftOut.push(what)
    return null
  }
  const investment =
    capital && capitalBefore
      ? invested({ capital }) - invested({ capital: capitalBefore })
      : missing('purchase prices (money.capital)')
  if (yearlyCases === null) missing('shifts a year (money.shifts)')
  // what costs less saves: the ends change places
  const yearlySaving =
    running && yearlyCases !== null ? mapped(running, (cost) => (-cost * yearlyCases) / 1000, true) : null
  const years =
    money?.life === undefined ? missing('life (money.life)') : Math.max(1, Math.round(inYears(money.life)))
  const interest = money?.interest ?? missing('interest (money.interest)')
  const value = (saving: number) =>
    netPresentValue(investment!, new Array<number>(years!).fill(saving), interest!)
  const isKnown = yearlySaving !== null && investment !== null
  return {
    investment,
    yearlySaving,
    yearlyCases,
    years,
    interest,
    netPresentValue: isKnown && years !== null && interest !== null ? mapped(yearlySaving, value) : null,
    // the more it saves the sooner: the ends change places
    payback:
      isKnown && investment > 0
        ? mapped(yearlySaving, (saving) => simplePayback(investment, saving), true)
        : null,
    breakEven:
      beforeFailures && closesOtherwise(design, base)
        ? breakEven(beforeFailures, closure, base.closure, money, missing)
        : null,
    leftOut,
  }
}

function breakEven(
  beforeFailures: Difference,
  closure: Scenario['closure'],
  before: Scenario['closure'],
  money: Scenario['money'],
  missing: (what: string) => null,
): Worth['breakEven'] {
  const { reopens } = closure ?? before ?? {}
  const repair = reopens?.repair && money?.labour ? labourCost(1, money.labour.amount, reopens.repair) : 0
  const each = (reopens?.cost?.amount ?? 0) + repair
  if (!(each > 0)) return missing('cost of a closure that opens later (closure.reopens)')
  const [chance, chanceBefore] = [closure?.reopens?.chance, before?.reopens?.chance]
  return {
    ...mapped(beforeFailures, (cost) => breakEvenFailures(cost, each)),
    spared: chance === undefined || chanceBefore === undefined ? null : (chanceBefore - chance) * 1000,
  }
}

/** Each end of the whole interval through `of`, a function that only rises, or with `isFalling` only falls. */
function mapped(difference: Difference, of: (value: number) => number, isFalling = false): Interval {
  const interval = wholeInterval(difference)
  const through = (value: number | null) => {
    const found = value === null || Number.isNaN(value) ? Number.NaN : of(value)
    return Number.isFinite(found) ? found : null
  }
  const [low, high] = [through(interval.low), through(interval.high)]
  return { mean: through(interval.mean), low: isFalling ? high : low, high: isFalling ? low : high }
}
