/** What the arrivals bring by hand: the mean over the working time, the busiest hour, and which cases. */
import type { Change } from '../kinds/by-hand.js'
import { meanOf } from '../scenario/law.js'
import type { Scenario } from '../scenario/schema.js'
import { workingTime } from '../scenario/working-time.js'

const hour = 3600

/** What one source brings, none of it held up by the line. */
export interface SourceDemand {
  name: string
  whenFull: 'wait' | 'queue' | 'turn-away'
  /** Cases of a shift. */
  perShift: number
  /** Rate in each hour of the shift, cases/s, while cases come; of orders the briskest one's in all hours. */
  hourly: number[]
  /** Share of each kind, by its place in the scenario. */
  shares: number[]
  /** Changes from one kind to another; null where the kinds are drawn from the mix. */
  changes: Change[] | null
  /** How the figures come about. */
  how: string
}

/** Working time in which cases may come, s: less the start-up too. */
const comingTime = ({ shift }: Scenario): number => workingTime(shift) - shift['start-up']

/** Shares of the mix, by kind. */
export function mixOf({ cases }: Scenario): number[] {
  const shares = Object.values(cases).map(({ share }) => share)
  const sum = shares.reduce((total, share) => total + share, 0)
  return shares.map((share) => share / sum)
}

/** Hours of the shift, the last one begun. */
const hoursOf = ({ shift }: Scenario): number => Math.ceil(shift.length / hour - 1e-9)

/** What every source brings, in the order of the file. */
export function demandOf(scenario: Scenario): SourceDemand[] {
  return Object.entries(scenario.arrivals).map(([name, source]) => {
    const base = { name, whenFull: source['when-full'], shares: mixOf(scenario), changes: null }
    if (source['by-hour']) return { ...base, ...byHour(scenario, source['by-hour'].cases) }
    if (source.orders) return { ...base, ...byOrders(scenario, source.orders) }
    if (source.log) return { ...base, ...byLog(scenario, source.log) }
    const rate = source.rate ?? source.batch / meanOf(source['time-between']!)
    return {
      ...base,
      perShift: rate * comingTime(scenario),
      hourly: Array.from({ length: hoursOf(scenario) }, () => rate),
      how: source.rate === undefined ? 'cases together / mean time between' : 'the steady rate',
    }
  })
}

type Shape = Pick<SourceDemand, 'perShift' | 'hourly' | 'how'> & Partial<SourceDemand>

/** Rates of the hours, summed over the time in which cases come. */
function byHour(scenario: Scenario, rates: readonly number[]): Shape {
  const { shift } = scenario
  const pauses = [{ at: 0, for: shift['start-up'] }, ...shift.breaks]
  const hourly = Array.from({ length: hoursOf(scenario) }, (_, index) => rates[index] ?? rates.at(-1)!)
  const perShift = hourly.reduce((sum, rate, index) => {
    const [from, to] = [index * hour, Math.min((index + 1) * hour, shift.length)]
    const paused = pauses.reduce(
      (lost, pause) => lost + Math.max(0, Math.min(to, pause.at + pause.for) - Math.max(from, pause.at)),
      0,
    )
    return sum + rate * (to - from - paused)
  }, 0)
  return { perShift, hourly, how: 'the hourly rates, without breaks' }
}

/** Orders one after the other at their mean pace, as far as the shift reaches. */
function byOrders(scenario: Scenario, orders: NonNullable<Scenario['arrivals'][string]['orders']>): Shape {
  const kinds = Object.keys(scenario.cases)
  const counts = kinds.map(() => 0)
  let left = comingTime(scenario)
  const order: number[] = []
  let briskest = 0
  for (const each of orders) {
    left -= each.before ? meanOf(each.before) : 0
    const between = meanOf(each['time-between'])
    const done = Math.min(each.quantity, Math.max(0, left / between))
    if (done <= 0) break
    left -= done * between
    order.push(kinds.indexOf(each.case))
    counts[order.at(-1)!]! += done
    briskest = Math.max(briskest, 1 / between)
  }
  const perShift = counts.reduce((sum, count) => sum + count, 0)
  return {
    perShift,
    hourly: Array.from({ length: hoursOf(scenario) }, () => briskest),
    shares: counts.map((count) => (perShift > 0 ? count / perShift : 0)),
    changes: changesAlong(order, perShift),
    how: 'the orders at their mean pace; the peak is the fastest order',
  }
}

/** Changes along kinds that follow one another, of so many cases. */
function changesAlong(kinds: ArrayLike<number>, cases: number): Change[] {
  const changes = new Map<string, Change>()
  for (let index = 1; index < kinds.length; index++) {
    const [from, to] = [kinds[index - 1]!, kinds[index]!]
    if (from === to) continue
    const key = `${from} ${to}`
    changes.set(key, { from, to, perCase: (changes.get(key)?.perCase ?? 0) + 1 / cases })
  }
  return [...changes.values()]
}

/** The recorded cases of the shift; the peak is the fullest hour of the clock. */
function byLog(scenario: Scenario, log: NonNullable<Scenario['arrivals'][string]['log']>): Shape {
  const counts = Object.keys(scenario.cases).map(() => 0)
  const hourly = Array.from({ length: hoursOf(scenario) }, () => 0)
  let perShift = 0
  for (const [index, time] of log.times.entries()) {
    if (time >= scenario.shift.length) break
    perShift++
    hourly[Math.floor(time / hour)]!++
    if (!log.kinds) continue
    counts[log.kinds[index]!]!++
  }
  const lastHour = scenario.shift.length - (hourly.length - 1) * hour
  const rates = hourly.map((cases, index) => cases / (index === hourly.length - 1 ? lastHour : hour))
  return {
    perShift,
    hourly: rates,
    how: 'the recorded cases; the peak is the fullest hour',
    ...(log.kinds && perShift > 0
      ? {
          shares: counts.map((count) => count / perShift),
          changes: changesAlong(log.kinds.slice(0, perShift), perShift),
        }
      : {}),
  }
}

/** The busiest hour of all sources together: its number from 0, and what it brings, cases/s. */
export function busiestHour(demand: readonly SourceDemand[]): { hour: number; rate: number } {
  const hours = Math.max(0, ...demand.map(({ hourly }) => hourly.length))
  let best = { hour: 0, rate: 0 }
  for (let index = 0; index < hours; index++) {
    const rate = demand.reduce((sum, { hourly }) => sum + (hourly[index] ?? 0), 0)
    if (rate > best.rate * (1 + 1e-12)) best = { hour: index, rate }
  }
  return best
}
