/** Tests of what one law or rate for a whole record takes for granted: that all of it was alike, and one event said nothing of the next. */
import { Stream } from '../../engine/stream.js'
import type {
  LoggedChance,
  LoggedInput,
  LoggedTimeBetween,
  LoggedTimeTo,
  Occurrence,
} from '../../record/input.js'
import { alike } from '../../statistics/alike.js'
import { againstExposure, type Classes, dispersion } from '../../statistics/dispersion.js'
import { holm } from '../../statistics/family.js'
import { autocorrelations, ljungBox, runsAboutMedian } from '../../statistics/independence.js'
import { laplace, orderTrend, powerLawTrend } from '../../statistics/trend.js'
import type { TestResult } from './document.js'

/** A test before it is judged with all others. `isSlight`: what it shows is too small to matter, however sure it is. */
export interface Asked extends Pick<TestResult, 'test' | 'asks' | 'statistic' | 'p'> {
  isSlight: boolean
}

/** A test with what was found; none where it could not be made. */
const asked = (
  test: TestResult['test'],
  asks: string,
  found: { statistic: number; pValue: number } | null,
  isSlight = false,
): Asked[] => (found === null ? [] : [{ test, asks, statistic: found.statistic, p: found.pValue, isSlight }])

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
  { occurrences, exposure, exposureByHour, exposureByPiece }: LoggedChance | LoggedTimeTo,
  shifts: readonly number[],
): Asked[] {
  if (exposure === null || occurrences.length < fewest) return []
  const times = occurrences.flatMap(({ exposureBefore }) => exposureBefore ?? []).filter((time) => time > 0)
  const byShift = shifts.map((shift) => occurrences.filter((each) => each.shift === shift).length)
  return [
    ...asked(
      'trend-laplace',
      'does it become more or less frequent (Laplace)',
      laplace(times, exposure.value),
    ),
    ...asked(
      'trend-mil-hdbk-189',
      'the same, early and late ones first (MIL-HDBK-189)',
      powerLawTrend(times, exposure.value),
    ),
    ...hoursDiffer(exposureByHour && ofHours(occurrences, exposureByHour)),
    ...asked('counts-a-shift', 'do shifts differ more, or less, than by chance', dispersion(byShift)),
    ...(exposureByPiece && exposureByPiece.size > 1
      ? asked(
          'alike',
          'do its names in the log differ in their rate',
          told(ratesByPiece(occurrences, exposureByPiece)),
        )
      : []),
  ]
}

/** Events and exposure of the hours of the day; those in which fewer than one event is expected say nothing, and are left out. */
export function toldHours(occurrences: readonly Occurrence[], exposureByHour: readonly number[]) {
  const all = exposureByHour.reduce((sum, each) => sum + each, 0)
  return exposureByHour.flatMap((exposure, hour) =>
    all > 0 && (occurrences.length * exposure) / all >= 1
      ? [{ hour, events: occurrences.filter((each) => each.hour === hour).length, exposure }]
      : [],
  )
}

function ofHours(occurrences: readonly Occurrence[], exposureByHour: readonly number[]): Classes | null {
  const hours = toldHours(occurrences, exposureByHour)
  return againstExposure(
    hours.map(({ events }) => events),
    hours.map(({ exposure }) => exposure),
  )
}

const ratesByPiece = (occurrences: readonly Occurrence[], exposureByPiece: ReadonlyMap<string, number>) => {
  const names = [...exposureByPiece.keys()]
  return againstExposure(
    names.map((name) => occurrences.filter(({ piece }) => piece === name).length),
    [...exposureByPiece.values()],
  )
}

/** Of few expected events the likelihood ratio keeps to its law no better: none is told then. */
const told = (found: Classes | null) => (found === null || found.leastExpected < 1 ? null : found.pearson)

const hoursDiffer = (found: Classes | null, isSlight?: boolean): Asked[] =>
  asked('hour-of-day', 'do hours of the day differ', told(found), isSlight)

const dependOnThoseBefore = (values: readonly number[], lags: number, isSlight?: boolean): Asked[] =>
  asked(
    'ljung-box',
    `does each time depend on those before ${lags} (Ljung-Box)`,
    ljungBox(values, lags),
    isSlight,
  )

function testsOfTimes(occurrences: readonly Occurrence[], seed: string, path: string): Asked[] {
  const values = occurrences.map(({ value }) => value)
  if (values.length < fewest) return []
  const { tau, pValue } = orderTrend(values)
  // long times are rare and far out: their logarithms hang together as they do; 0 is half a second
  const logs = values.map((value) => Math.log(Math.max(0.5, value)))
  const lags = Math.min(10, Math.floor(values.length / 5))
  return [
    ...asked('trend-lengths', 'do they grow longer or shorter (Kendall)', { statistic: tau, pValue }),
    ...dependOnThoseBefore(logs, lags),
    ...asked('runs', 'do long ones come together (runs about the median)', runsAboutMedian(values)),
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
  return asked(
    'alike',
    'do its names in the log differ in their lengths (Anderson-Darling)',
    alike(samples, random),
  )
}

function testsOfGaps({ gaps, countByHour, secondsByHour }: LoggedTimeBetween): Asked[] {
  if (gaps.length < 20) return []
  const values = [...gaps]
  const lags = 10
  const largest = Math.max(...autocorrelations(values, lags).map(Math.abs))
  const mean = gaps.length / secondsByHour.reduce((sum, each) => sum + each, 0)
  const rates = countByHour.flatMap((count, hour) =>
    count >= 100 ? count / secondsByHour[hour]! / mean - 1 : [],
  )
  return [
    ...dependOnThoseBefore(values, lags, largest < slight),
    ...hoursDiffer(againstExposure(countByHour, secondsByHour), Math.max(0, ...rates.map(Math.abs)) < slight),
  ]
}

/** Judges all tests of a record together. */
export function judged(all: readonly (readonly Asked[])[]): TestResult[][] {
  const adjusted = holm(all.flat().map(({ p }) => p))
  let at = 0
  return all.map((own) =>
    own.map(({ isSlight, ...test }) => {
      const adjustedP = adjusted[at++]!
      return { ...test, adjustedP, isShown: adjustedP <= risk && !isSlight }
    }),
  )
}
