/** Inputs that are counted: chances in cases or strips, and running time to a stop. */

import { wordsFor } from '../../catalogue/printed-units.js'
import type { LoggedChance, LoggedTimeTo, Occurrence } from '../../record/input.js'
import { countLimits } from '../../statistics/events.js'
import { type FittedLaw, scaled } from '../../statistics/fitting/law.js'
import { eventsIn, timesIn } from '../../statistics/fitting/rough.js'
import { type ShareOver, shareOver } from '../../statistics/fitting/share-over.js'
import { chanceOf, type Limited, rateOf, ratioOf } from '../../statistics/rates.js'
import type { At, FittedInput, Remark } from './document.js'
import { familyResult, keptOf, type Laws } from './laws.js'
import { picturesOf } from './pictures.js'
import { few, noted, remark, remarksOfCount, remarksOfTimes } from './remarks.js'
import { toldHours } from './tests.js'
import { chanceText, lawText, timeToText } from './value-text.js'

const { share, time } = wordsFor('metric')

/** How many of the stops are long enough to be in the log, by the chosen law; within the intervals of all laws that the record does not tell from it. */
function loggedShare(seenFrom: number, lengths: Laws | null, confidence: number): ShareOver {
  if (seenFrom <= 0 || lengths === null) return { share: 1, low: 1, high: 1 }
  const all = keptOf(lengths).map((fit) => shareOver(lengths.sample, fit, seenFrom, confidence))
  return {
    share: all[0]!.share,
    low: Math.min(...all.map(({ low }) => low)),
    high: Math.max(...all.map(({ high }) => high)),
  }
}

/**
 * A rate with the limits of its count, which stands for all stops, those too that are in no log, and of the share that was logged: on the logarithm the
 * distances of both add as squares. A scenario is given the count alone: more short stops mean a shorter mean, so the time that is lost to all is known
 * as well as the count says.
 */
function knownRate(rate: Limited, logged: ShareOver, unit: string): NonNullable<FittedInput['rate']> {
  const { share: value, ...ends } = logged
  const ofLogged = { value: rate.value * value, low: rate.low * value, high: rate.high * value }
  const { low, high } = rate.value > 0 ? ratioOf(ofLogged, { value, ...ends }) : rate
  return { value: rate.value, low, high: Number.isFinite(high) ? high : null, unit }
}

/** A chance for each case or strip. */
export function countInput(
  input: LoggedChance,
  lengths: Laws | null,
  { confidence }: { confidence: number },
): FittedInput {
  const { count, exposure, seenFrom, occurrences } = input
  const logged = loggedShare(seenFrom, lengths, confidence)
  // a count that stands for all, those too that are in no log: in so much less exposure
  const cases = Math.max(count, Math.round((exposure?.value ?? 0) * logged.share))
  const isKnown = exposure !== null && cases > 0
  const rate = isKnown ? knownRate(chanceOf(count, cases, confidence), logged, exposure.unit) : null
  return {
    ...partsOf(input),
    what: 'chance',
    ...{ events: count, cutOff: 0, exposure },
    // a scenario has the chance of a strip
    value: isKnown && !isOfStripsInCases(input) ? chanceText(count, cases, exposure.unit) : null,
    restsOn: isKnown ? 'counted' : 'nothing',
    ...{ rate, mean: null, seen: null, chosen: null, alike: [], families: [] },
    remarks: [
      ...remarksOfCount({ events: count, rate }, confidence),
      ...unseenRemarks(seenFrom, lengths, logged, count),
      ...noted(input.notes),
    ],
    pictures: { ...noTimes, trend: trendOf(occurrences), hours: hoursOf(input, confidence) },
  }
}

/** Whether it is of strips, of which nobody knows how many a case has. */
const isOfStripsInCases = ({ path, exposure }: LoggedChance): boolean =>
  path.endsWith('.tape-breaks.chance') && exposure?.unit === 'cases'

/** Running time to a stop: a count in it, but where another law than the exponential is shown. */
export function timeToInput(
  input: LoggedTimeTo,
  laws: Laws,
  lengths: Laws | null,
  { confidence, work }: { confidence: number; work: ReadonlyMap<string, number> },
): FittedInput {
  const { count, exposure, seenFrom, occurrences, sample } = input
  const logged = loggedShare(seenFrom, lengths, confidence)
  const worked = workedShare(input, work)
  const running = (exposure?.value ?? 0) * (worked ?? 1) * logged.share
  const rate = running > 0 ? knownRate(rateOf(count, running, confidence), logged, 's') : null
  const ageing = count >= few ? ageingOf(laws, worked ?? 1) : null
  const about = {
    events: count,
    chosen: ageing?.family ?? null,
    alike: ageing ? laws.choice.alike.map(({ fit }) => fit.law.family) : [],
  }
  const exponential = laws.candidates.find(({ fit }) => fit.law.family === 'exponential')
  const drawn = ageing ?? exponential?.fit.law ?? null
  return {
    ...partsOf(input),
    what: 'time-to',
    // runs that no stop had ended when the record did
    ...{ cutOff: timesIn(sample) - eventsIn(sample), exposure, rate, mean: null, seen: null, ...about },
    ...writtenOf(running, count, ageing),
    families: laws.candidates.map(familyResult),
    remarks: [
      ...remarksOfCount({ events: count, rate }, confidence),
      ...(ageing ? remarksOfTimes(about, laws, { longest: 0, confidence }) : []),
      ...unseenRemarks(seenFrom, lengths, logged, count),
      workedRemark(worked),
      ...noted(input.notes),
    ],
    pictures: {
      ...(count === 0 ? noTimes : picturesOf(sample, drawn, new Map())),
      ...{ trend: trendOf(occurrences), hours: hoursOf(input, confidence) },
    },
  }
}

/** The share of the logged running time in which the piece worked; null where nobody knows. */
function workedShare({ path, exposure }: LoggedTimeTo, work: ReadonlyMap<string, number>): number | null {
  const seconds = work.get(path.split('.')[1]!)
  return seconds === undefined || exposure === null || exposure.value === 0
    ? null
    : Math.min(1, seconds / exposure.value)
}

const workedRemark = (worked: number | null): Remark =>
  remark(
    'worked-share',
    worked === null
      ? 'in the model this time counts only while the piece works, in the log whenever it is not stopped; `--into` calculates the working time from the good cases'
      : `the piece worked for ${share(worked)} of the running time of the log (calculated from the good cases); the model counts only this time`,
  )

/** The law of a piece that fails the oftener, or the more seldom, the longer it has worked; null where it is exponential, or none fits. */
function ageingOf({ choice }: Laws, worked: number): FittedLaw | null {
  const law = choice.chosen?.fit.law ?? null
  return law === null || law.family === 'exponential' ? null : scaled(law, worked)
}

function writtenOf(
  running: number,
  count: number,
  ageing: FittedLaw | null,
): Pick<FittedInput, 'value' | 'restsOn'> {
  if (running <= 0) return { value: null, restsOn: 'nothing' }
  return ageing === null
    ? { value: timeToText(count, running), restsOn: 'counted' }
    : { value: lawText(ageing, count), restsOn: 'fitted' }
}

const partsOf = ({ path, words }: { path: string; words: string }) => ({ path, words, also: {}, tests: [] })

const noTimes = { quantiles: [], histogram: null, survival: null }

const trendOf = (occurrences: readonly Occurrence[]): At[] =>
  occurrences.flatMap(({ exposureBefore }, index): At[] =>
    exposureBefore === null ? [] : [[exposureBefore, index + 1]],
  )

/** Of each hour with exposure: events, and how many one rate would give, 95 of 100 times. */
function hoursOf(
  { occurrences, exposureByHour, exposure }: LoggedChance | LoggedTimeTo,
  confidence: number,
): FittedInput['pictures']['hours'] {
  if (exposureByHour === null || exposure === null || exposure.value <= 0) return []
  return toldHours(occurrences, exposureByHour).map((told) => {
    const expected = (occurrences.length * told.exposure) / exposure.value
    return { ...told, ...poissonRange(expected, confidence) }
  })
}

/** The least and the most events of which so many are expected that are within chance: those whose own exact limits hold the expected number. */
function poissonRange(expected: number, confidence: number): { low: number; high: number } {
  const holds = (events: number) => {
    const { low, high } = countLimits(events, confidence)
    return low <= expected && expected <= high
  }
  const middle = Math.round(expected)
  let [low, high] = [middle, middle]
  while (low > 0 && holds(low - 1)) low--
  while (holds(high + 1)) high++
  return { low, high }
}

/** Below this share what was not seen is not worth a word. */
const fewUnseen = 0.005

function unseenRemarks(
  seenFrom: number,
  lengths: Laws | null,
  { share: logged, low, high }: ShareOver,
  count: number,
): Remark[] {
  if (seenFrom <= 0 || count === 0 || (lengths !== null && 1 - low < fewUnseen)) return []
  if (lengths === null)
    return [
      remark(
        'unseen-short',
        `stops under ${time(seenFrom)} are not in the log and no distribution says how many there are: the true rate is higher`,
      ),
    ]
  const ends = `${share(1 - high)} to ${share(1 - low)}`
  return [
    remark(
      'unseen-short',
      `stops under ${time(seenFrom)} are not in the log: by the distribution of lengths they are ${share(1 - logged)} (${ends}) of all stops, and the rate is corrected for them; the total time lost is known better than their number`,
    ),
  ]
}
