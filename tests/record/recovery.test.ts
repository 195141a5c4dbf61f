/** A line whose rates are known writes a log, to the minute and across breaks and ends of shifts; the record gives the rates back. */
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { loggedInputs } from '../../src/record/inputs.js'
import { recordOf } from './texts.js'

const hour = 3600
/** What is true, s of running time; a case every 6 s. */
const truth = { untilBreakdown: 4 * hour, repair: 0.25 * hour, untilJam: 0.5 * hour, clear: 80, case: 6 }
const days = 120

/** The logs of `days` shifts from 06:00 to 14:00 with a break at 09:00; who mends a machine goes on through the break. */
function logs() {
  const stream = new Stream('tests', 'a log whose truth is known')
  stream.begin('tapeshift', 0)
  const exponential = (mean: number) => -mean * Math.log(stream.next())
  const shifts: string[] = []
  const stops: string[] = []
  const rest = { begins: 9 * hour, ends: 9.25 * hour }
  let untilBreakdown = exponential(truth.untilBreakdown)
  let untilJam = exponential(truth.untilJam)
  for (let day = 0; day < days; day++) {
    const date = new Date(Date.UTC(2026, 0, 1 + day)).toISOString().slice(0, 10)
    // a clock that shows whole minutes, those that are over
    const shown = (at: number) =>
      `${date} ${new Date(Math.floor(at / 60) * 60_000).toISOString().slice(11, 16)}`
    let at = 6 * hour
    let ran = 0
    while (at < 14 * hour) {
      if (at >= rest.begins && at < rest.ends) at = rest.ends
      const border = at < rest.begins ? rest.begins : 14 * hour
      const run = Math.min(untilBreakdown, untilJam, border - at)
      at += run
      ran += run
      untilBreakdown -= run
      untilJam -= run
      if (at >= border) continue
      const isBreakdown = untilBreakdown <= 0
      const ends = at + exponential(isBreakdown ? truth.repair : truth.clear)
      stops.push(`${shown(at)};${shown(ends)};Kleber;${isBreakdown ? 'Motor' : 'Stau'}`)
      if (isBreakdown) untilBreakdown = exponential(truth.untilBreakdown)
      else untilJam = exponential(truth.untilJam)
      at = ends
    }
    shifts.push(`${date} 06:00;${date} 14:00;${Math.round(ran / truth.case)}`)
  }
  return {
    shifts: `Beginn;Ende;Gut\n${shifts.join('\n')}\n`,
    stops: `Von;Bis;Anlage;Grund\n${stops.join('\n')}\n`,
  }
}

describe('a log whose truth is known', () => {
  const fixed =
    '{file: shifts.csv, begins: Beginn, ends: Ende, good: Gut, breaks: [{at: "09:00", for: 15 min}]}'
  const inputs = loggedInputs(recordOf({ ...logs(), keys: { times: 'iso', shifts: fixed } }))

  it.each([
    ['line.sealer.breakdowns.after', 1 / truth.untilBreakdown, 150],
    ['line.sealer.jams.chance', truth.case / truth.untilJam, 1000],
  ])('gives the rate of %s back', (path, rate, least) => {
    const input = inputs.find((each) => each.path === path)
    if (input?.what !== 'time-to' && input?.what !== 'chance') throw new Error(`${path} is no count`)
    expect(input.count).toBeGreaterThan(least)
    // a count of Poisson: its relative standard error is 1 / sqrt(count), and four of them hold all but 1 in 16 000
    const ratio = input.count / (rate * input.exposure!.value)
    expect(Math.abs(ratio - 1)).toBeLessThan(4 / Math.sqrt(input.count))
  })

  it.each([
    ['line.sealer.breakdowns.repair', truth.repair],
    ['line.sealer.jams.clear', truth.clear],
  ])('gives the mean of %s back: all the time that is seen over the stops that ended', (path, mean) => {
    const input = inputs.find((each) => each.path === path)
    if (input?.what !== 'times') throw new Error(`${path} is no sample of times`)
    const { seen, counts } = input.sample
    const sum = (of: (each: (typeof seen)[number]) => number) =>
      seen.reduce((total, each, index) => total + of(each) * counts[index]!, 0)
    const time = sum((each) => ('clocked' in each ? each.clocked : 'over' in each ? each.over : Number.NaN))
    const ended = sum((each) => ('clocked' in each ? 1 : 0))
    expect(ended).toBeLessThan(input.count)
    // exponential with censoring: total time over events, relative standard error 1 / sqrt(events) (textbooks of reliability; from memory)
    expect(Math.abs(time / ended / mean - 1)).toBeLessThan(4 / Math.sqrt(ended))
  })
})
