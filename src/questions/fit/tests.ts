/** Tests of what one law or rate for a whole record takes for granted: that all of it was alike, and one event said nothing of the next. */
import { Stream } from '../../engine/stream.js'
import type { LoggedInput, LoggedTimeBetween, Occurrence } from '../../record/input.js'
import { alike } from '../../statistics/alike.js'
import { againstExposure, type Classes, dispersion } from '../../statistics/dispersion.js'
import { holm } from '../../statistics/family.js'
import { autocorrelations, ljungBox, runsAboutMedian } from '../../statistics/independence.js'
import { laplace, orderTrend, powerLawTrend } from '../../statistics/trend.js'
import type { TestResult } from './document.js'

/** A test before it is judged with all others. `isSlight`: what it shows is too small to matter, however sure it is. */
export interface Asked extends Pick<TestResult, 'test' | 'asks' | 'statistic' | 'p'> {
  isSlight?: boolean
}

/** Fewer events tell none of these tests anything. */
const fewest = 5
/** Risk of all tests of a record together. */
const risk = 0.05
/** Among many thousands of times a correlation, or a difference between hours, below this changes nothing. */
const slight = 0.05

/** What is asked of an input, of which the record has so many shifts that are fitted. */
export function testsOf(input: LoggedInput, shifts: readonly number[], seed: string): Asked[] {
  switch (input.what) {
    case 'chance':
    case 'time-to':
      return testsOfEvents(input, shifts)
    case 'times':
      return testsOfTimes(
        input.occurrences.filter(({ isCutOff }) => !isCutOff),
        seed,
        input.path,
      )
    case 'time-between':
      return testsOfGaps(input)
    case 'mix':
      return []
  }
}

function testsOfEvents(
  {
    occurrences,
    exposure,
    exposureByHour,
    exposureByPiece,
  }: Extract<LoggedInput, { what: 'chance' | 'time-to' }>,
  shifts: readonly number[],
): Asked[] {
  if (exposure === null || occurrences.length < fewest) return []
  const times = occurrences.flatMap(({ exposureBefore }) => exposureBefore ?? []).filter((time) => time > 0)
  const first = laplace(times, exposure.value)
  const second = powerLawTrend(times, exposure.value)
  const byShift = shifts.map((shift) => occurrences.filter((each) => each.shift === shift).length)
  const spread = dispersion(byShift)
  const hours = exposureByHour && ofHours(occurrences, exposureByHour)
  return [
    {
      test: 'trend-laplace',
      asks: 'does it become more or less frequent (Laplace)',
      statistic: first.statistic,
      p: first.pValue,
    },
    {
      test: 'trend-mil-hdbk-189',
      asks: 'the same, early and late ones first (MIL-HDBK-189)',
      statistic: second.statistic,
      p: second.pValue,
    },
    ...classes('hour-of-day', 'do hours of the day differ', hours),
    ...(spread === null
      ? []
      : [
          {
            test: 'counts-a-shift' as const,
            asks: 'do shifts differ more, or less, than by chance',
            statistic: spread.statistic,
            p: spread.pValue,
          },
        ]),
    ...(exposureByPiece && exposureByPiece.size > 1
      ? classes(
          'alike',
          'do its names in the log differ in their rate',
          ratesByPiece(occurrences, exposureByPiece),
        )
      : []),
  ]
}

/** Hours in which fewer than one event is expected say nothing, and are left out. */
function ofHours(occurrences: readonly Occurrence[], exposureByHour: readonly number[]): Classes | null {
  const hours = exposureByHour
    .map((_, hour) => hour)
    .filter((hour) => isTold(exposureByHour, hour, occurrences.length))
  const counts = hours.map((hour) => occurrences.filter((each) => each.hour === hour).length)
  return againstExposure(
    counts,
    hours.map((hour) => exposureByHour[hour]!),
  )
}

/** Whether an hour of the day has one expected event or more. */
export function isTold(exposureByHour: readonly number[], hour: number, events: number): boolean {
  const all = exposureByHour.reduce((sum, each) => sum + each, 0)
  return all > 0 && (events * exposureByHour[hour]!) / all >= 1
}

const ratesByPiece = (occurrences: readonly Occurrence[], exposureByPiece: ReadonlyMap<string, number>) => {
  const names = [...exposureByPiece.keys()]
  return againstExposure(
    names.map((name) => occurrences.filter(({ piece }) => piece === name).length),
    [...exposureByPiece.values()],
  )
}

/** Of few expected events the likelihood ratio keeps to its law no better: none is told then. */
const classes = (test: TestResult['test'], asks: string, found: Classes | null): Asked[] =>
  found === null || found.leastExpected < 1
    ? []
    : [{ test, asks, statistic: found.pearson.statistic, p: found.pearson.pValue }]

function testsOfTimes(occurrences: readonly Occurrence[], seed: string, path: string): Asked[] {
  const values = occurrences.map(({ value }) => value)
  if (values.length < fewest) return []
  const trend = orderTrend(values)
  // long times are rare and far out: their logarithms hang together as they do; 0 is half a second
  const logs = values.map((value) => Math.log(Math.max(0.5, value)))
  const lags = Math.min(10, Math.floor(values.length / 5))
  const box = ljungBox(logs, lags)
  const runs = runsAboutMedian(values)
  return [
    {
      test: 'trend-lengths',
      asks: 'do they grow longer or shorter (Kendall)',
      statistic: trend.tau,
      p: trend.pValue,
    },
    ...(box
      ? [
          {
            test: 'ljung-box' as const,
            asks: `does each time depend on those before ${lags} (Ljung-Box)`,
            statistic: box.statistic,
            p: box.pValue,
          },
        ]
      : []),
    ...(runs
      ? [
          {
            test: 'runs' as const,
            asks: 'do long ones come together (runs about the median)',
            statistic: runs.statistic,
            p: runs.pValue,
          },
        ]
      : []),
    ...alikeByPiece(occurrences, seed, path),
  ]
}

function alikeByPiece(occurrences: readonly Occurrence[], seed: string, path: string): Asked[] {
  const names = [...new Set(occurrences.map(({ piece }) => piece))]
  const samples = names
    .map((name) => occurrences.filter(({ piece }) => piece === name).map(({ value }) => value))
    .filter((sample) => sample.length >= fewest)
  if (samples.length < 2) return []
  const random = new Stream('fit', `alike ${path}`)
  random.begin(seed, 0)
  const found = alike(samples, random)
  if (found === null) return []
  return [
    {
      test: 'alike',
      asks: 'do its names in the log differ in their lengths (Anderson-Darling)',
      statistic: found.statistic,
      p: found.pValue,
    },
  ]
}

function testsOfGaps({ gaps, countByHour, secondsByHour }: LoggedTimeBetween): Asked[] {
  if (gaps.length < 20) return []
  const values = [...gaps]
  const lags = 10
  const box = ljungBox(values, lags)
  const largest = Math.max(...autocorrelations(values, lags).map(Math.abs))
  const mean = gaps.length / secondsByHour.reduce((sum, each) => sum + each, 0)
  const rates = countByHour.flatMap((count, hour) =>
    count >= 100 ? count / secondsByHour[hour]! / mean - 1 : [],
  )
  const hours = againstExposure(countByHour, secondsByHour)
  return [
    ...(box
      ? [
          {
            test: 'ljung-box' as const,
            asks: `does each time depend on those before ${lags} (Ljung-Box)`,
            statistic: box.statistic,
            p: box.pValue,
            isSlight: largest < slight,
          },
        ]
      : []),
    ...classes('hour-of-day', 'do hours of the day differ', hours).map((each) => ({
      ...each,
      isSlight: Math.max(0, ...rates.map(Math.abs)) < slight,
    })),
  ]
}

/** Judges all tests of a record together. */
export function judged(all: readonly (readonly Asked[])[]): TestResult[][] {
  const adjusted = holm(all.flat().map(({ p }) => p))
  let at = 0
  return all.map((own) =>
    own.map(({ isSlight = false, ...asked }) => {
      const adjustedP = adjusted[at++]!
      return { ...asked, adjustedP, isShown: adjustedP <= risk && !isSlight }
    }),
  )
}
