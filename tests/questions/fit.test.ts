/** What a record says of inputs, by hand on small records: counts, times, runs, laws, and what a reader is told beside them. */
import { describe, expect, it } from 'vitest'
import { hasTimesEnough } from '../../src/questions/fit/laws.js'
import { standardNormal } from '../../src/statistics/quantile.js'
import { codesOf, evidenceOf, fitOf, inputOf, type Stop, wordsOf, written } from './fits.js'

const hour = 3600
const jams = 'line.sealer.jams.chance'
const clear = 'line.sealer.jams.clear'
const after = 'line.sealer.breakdowns.after'
const repair = 'line.sealer.breakdowns.repair'

/** Stops one after another from 6:10 on, ten minutes apart and a day for 40 of them, each of a length of its own. */
const inARow = (lengths: readonly number[]): Stop[] =>
  lengths.map((lasts, n): Stop => [1 + Math.floor(n / 40), 22_200 + 600 * (n % 40), lasts])

describe('a count', () => {
  it('of three jams in 4000 cases is that, with its exact limits', () => {
    const answer = fitOf(written(1, inARow([60, 70, 80])))
    const input = inputOf(answer, jams)
    expect(input).toMatchObject({ value: '3 in 4000 cases', restsOn: 'counted', events: 3, cutOff: 0 })
    expect(input.exposure!.value).toBeCloseTo(4000, 9)
    // Clopper & Pearson of 3 in 4000, computed with R 4.2.2
    expect(input.rate!.value).toBeCloseTo(3 / 4000, 12)
    expect(input.rate!.low! / 1.546947e-4).toBeCloseTo(1, 6)
    expect(input.rate!.high! / 2.190239e-3).toBeCloseTo(1, 6)
    // factors of Garwood for 3 events: 0.2062 and 2.9224
    expect(wordsOf(input, 'few')).toBe('based on 3 events: the true rate may be 0.21 to 2.9 times this')
    expect(evidenceOf(answer, input)).toEqual([
      ['line.sealer.jams.chance', expect.objectContaining({ form: 'count', of: 'chance', events: 3 })],
    ])
  })

  it('of none is no certainty, and no law', () => {
    const answer = fitOf(written(1, []))
    const chance = inputOf(answer, jams)
    expect(chance).toMatchObject({ value: '0 in 4000 cases', restsOn: 'counted', events: 0, families: [] })
    // Clopper & Pearson of 0 in 4000, computed with R 4.2.2
    expect(chance.rate!.high! / 9.217947e-4).toBeCloseTo(1, 6)
    expect(wordsOf(chance, 'none-seen')).toContain('may be up to 0.922 per 1000 cases')
    const runs = inputOf(answer, after)
    expect(runs).toMatchObject({ value: '0 in 8 h', restsOn: 'counted', events: 0, chosen: null })
    // 3.6889 / T, the two-sided limit of none: Garwood (1936)
    expect(runs.rate).toMatchObject({ value: 0, low: 0 })
    expect(runs.rate!.high! * 8 * hour).toBeCloseTo(3.6889, 4)
    expect(runs.families).toEqual([])
    for (const path of [clear, repair])
      expect(inputOf(answer, path)).toMatchObject({ value: null, restsOn: 'nothing', families: [] })
    expect(evidenceOf(answer, runs)).toEqual([
      [after, expect.objectContaining({ form: 'count', of: 'interval', events: 0, exposure: 8 * hour })],
    ])
  })

  it('stands for the stops that are too short for the log too, by the law of their lengths', () => {
    // exponential from 60 s on: the mean is what they last beyond, (30 + 60 + 180) / 3 = 90 s, and exp(-60 / 90) = 0.5134 of all are in the log
    const answer = fitOf(written(1, inARow([90, 120, 240]), { 'seen-from': '60 s' }))
    expect(inputOf(answer, clear)).toMatchObject({
      value: '{exponential: {mean: 90 s, from: 3}}',
      chosen: 'exponential',
    })
    const chance = inputOf(answer, jams)
    expect(chance.value).toBe(`3 in ${Math.round(4000 * Math.exp(-60 / 90))} cases`)
    expect(chance.rate!.value * 4000).toBeCloseTo(3 * Math.exp(60 / 90), 2)
    expect(wordsOf(chance, 'unseen-short')).toContain('stops under 60 s are not in the log')
    expect(wordsOf(chance, 'unseen-short')).toContain('48.7 %')
  })
})

describe('times', () => {
  it('that ran into the end of a shift count as longer', () => {
    // 60 s and 120 s whole, 300 s cut off: all that is seen over what ended, 480 s / 2
    const answer = fitOf(written(1, [...inARow([60, 120]), [1, 50_100, 400]]))
    const input = inputOf(answer, clear)
    expect(input).toMatchObject({
      value: '{exponential: {mean: 240 s, from: 2}}',
      restsOn: 'fitted',
      events: 2,
      cutOff: 1,
      seen: { mean: 90 },
    })
    expect(wordsOf(input, 'left-out')).toContain('1 of 3 ended at a break or at the end of a shift')
    expect(wordsOf(input, 'few')).toContain('too few to choose a distribution')
    expect(evidenceOf(answer, input)).toEqual([[clear, { form: 'fitted', observations: 2 }]])
  })

  it('read from a clock of minutes, the short ones missing, are known to a minute either way', () => {
    const minutes = [2, 3, 2, 4, 2, 7, 3, 2]
    const answer = fitOf(
      written(1, inARow(minutes.map((each) => 60 * each)), { 'rounded-to': '1 min', 'seen-from': '30 s' }),
    )
    // a reading of k minutes, with where it began even chance, is exp(-k r) (2 cosh r - 2) / r for r minutes of rate; all that is over 30 s: exp(-r / 2)
    const height = (rate: number) =>
      minutes.reduce((sum, k) => sum - k * rate + Math.log((2 * Math.cosh(rate) - 2) / rate) + rate / 2, 0)
    const best = Array.from({ length: 200_000 }, (_, n) => 0.1 + n * 5e-6).reduce((one, other) =>
      height(other) > height(one) ? other : one,
    )
    const exponential = inputOf(answer, clear).families.find(({ family }) => family === 'exponential')!
    expect(exponential.mean.value / (60 / best)).toBeCloseTo(1, 4)
  })

  it('of two sorts are a mixture, whose share is counted', () => {
    // places of a normal law, evenly
    const z = Array.from({ length: 25 }, (_, n) => standardNormal((n + 0.5) / 25))
    const minor = [...z, ...z, ...z].map((each) => Math.round(40 * Math.exp(0.3 * each)))
    const major = z.map((each) => Math.round(400 * Math.exp(0.2 * each)))
    const answer = fitOf(written(4, inARow([...minor, ...major])))
    const input = inputOf(answer, clear)
    expect(input).toMatchObject({ chosen: 'mixture', restsOn: 'fitted', events: 100 })
    expect(input.value).toMatch(
      /^\{mixture: \[\{share: 75 in 100 stops, law: \{lognormal: \{mean: .* s, cv: .*, from: 75\}\}\}, \{share: 25 in 100 stops, law: \{lognormal: \{mean: .* s, cv: .*, from: 25\}\}\}\]\}$/,
    )
    const parts = Object.fromEntries(evidenceOf(answer, input))
    expect(
      Object.values(parts).map((known) => [
        known.form,
        'events' in known ? known.events : 'observations' in known ? known.observations : 0,
      ]),
    ).toEqual([
      ['count', 75],
      ['fitted', 75],
      ['count', 25],
      ['fitted', 25],
    ])
  })

  it('of two sorts are none where one of the two rests on a single time', () => {
    const lognormal = { family: 'lognormal', location: 0, spread: 1 } as const
    const both = (share: number) =>
      ({ family: 'mixture', share, first: lognormal, second: lognormal }) as const
    // 0.97 and 0.96 of 40 times: 39 and 1, 38 and 2
    expect(hasTimesEnough(both(0.97), 40)).toBe(false)
    expect(hasTimesEnough(both(0.96), 40)).toBe(true)
    expect(hasTimesEnough(both(0.03), 40)).toBe(false)
    expect(hasTimesEnough(lognormal, 40)).toBe(true)
  })

  it('that no law fits are drawn from as they are, never longer than the longest seen', () => {
    const lumps = [20, 100, 500].flatMap((middle) => Array.from({ length: 30 }, (_, n) => middle + (n % 3)))
    const answer = fitOf(written(3, inARow(lumps)))
    const input = inputOf(answer, clear)
    expect(input).toMatchObject({
      value: '{observed: {file: observed-line.sealer.jams.clear.csv, column: seconds, unit: s}}',
      chosen: null,
      restsOn: 'observed',
      events: 90,
    })
    expect(wordsOf(input, 'nothing-fits')).toContain(
      'never longer than the longest, 8.37 min; on average 1.1 % of future times are longer',
    )
    const sorted = [...lumps].sort((a, b) => a - b)
    expect(answer.observed.get('observed-line.sealer.jams.clear.csv')).toBe(`seconds\n${sorted.join('\n')}\n`)
    expect(evidenceOf(answer, input)).toEqual([[clear, { form: 'observed', observations: 90 }]])
    expect([...answer.rows().keys()]).toEqual(['fitted.yaml', 'observed-line.sealer.jams.clear.csv'])
  })
})

describe('running time to a breakdown', () => {
  it('is all that was run over the breakdowns, what came after the last one too', () => {
    // 8 h less three times 30 min
    const stops = [7, 9, 13].map((at): Stop => [1, at * hour, 1800, 'Motor'])
    const answer = fitOf(written(1, stops))
    const input = inputOf(answer, after)
    expect(input).toMatchObject({
      value: '3 in 6.5 h',
      restsOn: 'counted',
      events: 3,
      cutOff: 1,
      chosen: null,
    })
    const exponential = input.families.find(({ family }) => family === 'exponential')!
    expect(exponential.mean.value).toBeCloseTo((6.5 * hour) / 3, 6)
    // factors of Garwood for 3 events: 0.2062 and 2.9224
    const rate = 3 / (6.5 * hour)
    expect(input.rate!.value).toBeCloseTo(rate, 12)
    expect(input.rate!.low! / rate).toBeCloseTo(0.2062, 4)
    expect(input.rate!.high! / rate).toBeCloseTo(2.9224, 4)
    expect(evidenceOf(answer, input)).toEqual([
      [after, expect.objectContaining({ form: 'count', of: 'interval', events: 3, exposure: 6.5 * hour })],
    ])
  })
})

describe('what is taken for granted', () => {
  const shown = (path: string, answer: ReturnType<typeof fitOf>) =>
    inputOf(answer, path)
      .tests.filter(({ isShown }) => isShown)
      .map(({ test }) => test)
  const lengths = Array.from({ length: 40 }, (_, n) => 40 + ((n * 37) % 23))

  it('two names of which one stands longer are told apart, unless the record says that they are one', () => {
    const stops = lengths.flatMap((lasts, n): Stop[] => [
      [1 + (n % 4), 22_000 + 600 * n, lasts, 'Stau', 'Alt'],
      [1 + (n % 4), 22_300 + 600 * n, lasts + 60, 'Stau', 'Neu'],
    ])
    const apart = fitOf(written(4, stops))
    expect(shown(clear, apart)).toContain('alike')
    expect(codesOf(inputOf(apart, clear))).toContain('not-alike')
    const one = fitOf(written(4, stops, { same: '{Alt: Neu}' }))
    expect(inputOf(one, clear).tests.map(({ test }) => test)).not.toContain('alike')
  })

  it('a rate that rises is shown as a trend', () => {
    // 40 jams, all in the second half of ten days
    const answer = fitOf(
      written(
        10,
        lengths.map((lasts, n): Stop => [6 + (n % 5), 22_000 + 650 * n, lasts]),
      ),
    )
    expect(shown(jams, answer)).toEqual(expect.arrayContaining(['trend-laplace']))
    expect(wordsOf(inputOf(answer, jams), 'trend')).toContain('its rate changed')
    expect(codesOf(inputOf(answer, jams)).filter((code) => code === 'trend')).toHaveLength(1)
  })

  it('an hour of the day with most of the jams is shown', () => {
    const answer = fitOf(
      written(
        10,
        lengths.map((lasts, n): Stop => [1 + (n % 10), 36_000 + 80 * n, lasts]),
      ),
    )
    expect(shown(jams, answer)).toContain('hour-of-day')
    expect(codesOf(inputOf(answer, jams))).toContain('hours-differ')
    const hours = inputOf(answer, jams).pictures.hours
    expect(hours.find(({ hour: of }) => of === 10)).toMatchObject({ events: 40 })
    expect(hours.every(({ hour: of, events, high }) => (of === 10 ? events > high : events === 0))).toBe(true)
  })

  it('nothing is shown where jams come evenly', () => {
    // by the golden section: no two of so many are near each other
    const place = (n: number) => (n * 0.618034) % 1
    const stops = lengths.map(
      (lasts, n): Stop => [1 + (n % 10), 21_600 + Math.floor(28_000 * place(n)), lasts],
    )
    const answer = fitOf(written(10, stops))
    expect(inputOf(answer, jams).tests.map(({ test }) => test)).toEqual([
      'trend-laplace',
      'trend-mil-hdbk-189',
      'hour-of-day',
      'counts-a-shift',
    ])
    // four in every shift: more even than chance would have it
    expect(shown(jams, answer)).toEqual(['counts-a-shift'])
    expect(codesOf(inputOf(answer, jams))).toContain('clustered')
  })
})

describe('days held out', () => {
  const stops = Array.from(
    { length: 60 },
    (_, n): Stop => [1 + (n % 10), 22_000 + 450 * n, 30 + ((n * 41) % 97)],
  )
  const kept = fitOf(written(10, stops), { holdOut: '40 %', seed: 'a' })
  const { heldOut } = kept.document.record

  it('change nothing, whatever happened on them', () => {
    expect(heldOut).toHaveLength(4)
    const more = heldOut.map((day): Stop => [Number(day.slice(-2)), 49_000, 1000, 'Motor'])
    const again = fitOf(written(10, [...stops, ...more]), { holdOut: '40 %', seed: 'a' })
    expect(again.document.inputs).toEqual(kept.document.inputs)
    expect(inputOf(kept, jams).value).toBe('36 in 24000 cases')
  })

  it('a day that is kept does', () => {
    const day = Array.from({ length: 10 }, (_, n) => n + 1).find(
      (each) => !heldOut.includes(`2026-01-${`${each}`.padStart(2, '0')}`),
    )!
    const again = fitOf(written(10, [...stops, [day, 50_000, 60]]), { holdOut: '40 %', seed: 'a' })
    expect(again.document.record.heldOut).toEqual(heldOut)
    expect(inputOf(again, jams).value).toBe('37 in 24000 cases')
  })

  it('are others for another seed, and stand in the file of the values', () => {
    const other = fitOf(written(10, stops), { holdOut: '40 %', seed: 'b' })
    expect(other.document.record.heldOut).not.toEqual(heldOut)
    const yaml = kept.rows().get('fitted.yaml')!
    for (const day of heldOut) expect(yaml).toContain(day)
  })
})
