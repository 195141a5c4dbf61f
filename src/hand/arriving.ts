/** How evenly cases come, over the shift and one after the other, as far as the expected output asks. */
import { type Distribution, meanOf, varianceOf } from '../scenario/law.js'
import type { Scenario } from '../scenario/schema.js'
import { excess, shapesOf } from '../trade/stop-times.js'
import type { LineHand } from './line.js'

/** Rates of the arrivals, cases/s, each with the share of the working time in which it holds. Their mean is that of the shift. */
export function profileOf(scenario: Scenario, line: LineHand): { rate: number; share: number }[] {
  const isByHour = Object.values(scenario.arrivals).some((source) => source['by-hour'] || source.log)
  if (!isByHour) {
    const coming = 1 - scenario.shift['start-up'] / line.working
    return [{ rate: line.arriving / coming, share: coming }]
  }
  const hours = Math.max(...line.sources.map(({ hourly }) => hourly.length))
  const rates = Array.from({ length: hours }, (_, hour) =>
    line.sources.reduce((total, { hourly }) => total + (hourly[hour] ?? 0), 0),
  )
  const mean = rates.reduce((total, rate) => total + rate, 0) / hours
  return rates.map((rate) => ({ rate: (rate * line.arriving) / mean, share: 1 / hours }))
}

const squaredVariation = (law: Distribution): number =>
  meanOf(law) > 0 ? varianceOf(law) / meanOf(law) ** 2 : 0

/**
 * Squared coefficient of variation of the time from one arrival to the next; 1, as by chance, where several sources come together or nothing
 * is known of it.
 */
export function varianceOfArrivals({ arrivals }: Pick<Scenario, 'arrivals'>): number {
  const [source, ...others] = Object.values(arrivals)
  if (!source || others.length > 0 || source.log) return 1
  if (source['by-hour']) return source['by-hour'].spaced === 'evenly' ? 0 : 1
  if (source['time-between']) return squaredVariation(source['time-between'])
  if (!source.orders) return 0
  const all = source.orders.reduce((total, { quantity }) => total + quantity, 0)
  return source.orders.reduce(
    (total, order) => total + (order.quantity / all) * squaredVariation(order['time-between']),
    0,
  )
}

/**
 * Rate at which packers, who wait while the place where cases enter is not clear, come to put cases on, cases/s: `rate` is theirs without
 * waiting, `time` what a case takes to clear it, s. One source waits as long as its interval is shorter than what a case takes to clear; of
 * several each finds the place taken by chance (residual time). Derived.
 */
export function entryOf({ arrivals }: Pick<Scenario, 'arrivals'>, rate: number, time: number): number {
  const sources = Object.values(arrivals)
  if (sources.length > 1) return sources.length / (sources.length / rate + (rate * time * time) / 2)
  const batch = sources[0]!.batch
  const interval = batch / rate
  const shapes = shapesOf(interval, Math.sqrt(varianceOfArrivals({ arrivals })))
  const waits = (batch - 1) * time + time - interval + excess(time, shapes)
  return batch / (interval + waits)
}
