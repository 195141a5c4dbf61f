/** What the time of the shifts of a record went to, by what the log says of it. */
import type { CleanRecord, Span } from '../../record/record.js'
import type { FitResult } from './document.js'

const lengthOf = ({ begins, ends }: Span): number => ends - begins

/** Time that one of these takes, however many overlap, s. */
function covered(spans: readonly Span[]): number {
  let [until, sum] = [-Infinity, 0]
  for (const { begins, ends } of [...spans].sort((a, b) => a.begins - b.begins)) {
    sum += Math.max(0, ends - Math.max(begins, until))
    until = Math.max(until, ends)
  }
  return sum
}

const sumOf = (spans: readonly Span[]): number => spans.reduce((sum, each) => sum + lengthOf(each), 0)

/** Of all shifts, those kept back too. Stops of several pieces may overlap: then the parts come to more than the whole. */
export function timeOfShifts({ shifts, stops }: CleanRecord): FitResult['record']['time'] {
  const breaks = shifts.flatMap((shift) => shift.breaks)
  const lost = shifts.flatMap((shift) => shift.lost)
  const meanings = [...new Set(stops.map(({ means }) => means))]
  const row = (what: string, time: number, count = 0) => ({
    what,
    time: { value: time, unit: 's' },
    stops: count,
  })
  const still = shifts.reduce(
    (sum, shift, index) =>
      sum + covered([...shift.breaks, ...shift.lost, ...stops.filter((stop) => stop.shift === index)]),
    0,
  )
  return [
    row('running, or stops that are in no log', sumOf(shifts) - still),
    ...(breaks.length > 0 ? [row('breaks', sumOf(breaks), breaks.length)] : []),
    ...meanings.map((means) => {
      const own = stops.filter((stop) => stop.means === means)
      return row(means ?? 'reasons that the record does not explain', sumOf(own), own.length)
    }),
    ...(lost.length > 0 ? [row('stood, and counts for no stop', sumOf(lost))] : []),
  ]
}
