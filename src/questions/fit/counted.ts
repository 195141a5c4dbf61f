/** Inputs that are counted: chances in cases or strips, and running time to a stop. */

import { wordsFor } from '../../catalogue/printed-units.js'
import type { LoggedChance, LoggedTimeTo, Occurrence } from '../../record/input.js'
import { countLimits } from '../../statistics/events.js'
import type { Fit } from '../../statistics/fitting/fit.js'
import { type FittedLaw, scaled } from '../../statistics/fitting/law.js'
import type { Sample } from '../../statistics/fitting/sample.js'
import { countFor, type ShareOver, shareOver } from '../../statistics/fitting/share-over.js'
import { survivalCurve } from '../../statistics/fitting/survival.js'
import { chanceOf, rateOf } from '../../statistics/rates.js'
import type { At, FittedInput, Remark } from './document.js'
import { familyResult, type Laws } from './laws.js'
import { picturesOf } from './pictures.js'
import { few, remarksOfCount, remarksOfTimes } from './remarks.js'
import { isTold } from './tests.js'
import { chanceText, lawText, timeToText } from './value-text.js'

const { share, time } = wordsFor('metric')

/** How many of the stops are long enough to be in the log. */
const loggedShare = (seenFrom: number, lengths: Fit | null): ShareOver =>
  seenFrom > 0 && lengths !== null ? shareOver(lengths, seenFrom) : { share: 1, logVariance: 0 }

/** Below this part of the variance of a count, what is not known of the share that was logged is nothing beside it. */
const slight = 0.05

/**
 * A count that stands for all, those too: in so much less exposure, and where the share that was logged is known no better, as fewer events,
 * so that their rate is known as well as it is.
 */
function countOfAll(count: number, exposure: number, logged: ShareOver): { count: number; exposure: number } {
  const standing = logged.logVariance * count < slight ? count : countFor(count, logged)
  return { count: standing, exposure: exposure * logged.share * (count === 0 ? 1 : standing / count) }
}

/** A chance for each case or strip. */
export function countInput(
  input: LoggedChance,
  lengths: Fit | null,
  { confidence }: { confidence: number },
): FittedInput {
  const { count, exposure, seenFrom, occurrences } = input
  const logged = loggedShare(seenFrom, lengths)
  const all = countOfAll(count, exposure?.value ?? 0, logged)
  const cases = Math.max(all.count, Math.round(all.exposure))
  const isKnown = exposure !== null && cases > 0
  const rate = isKnown ? { ...chanceOf(all.count, cases, confidence), unit: exposure.unit } : null
  return {
    ...partsOf(input),
    what: 'chance',
    ...{ events: count, cutOff: 0, exposure },
    value: isKnown ? chanceText(all.count, cases, exposure.unit) : null,
    restsOn: isKnown ? 'counted' : 'nothing',
    ...{ rate, seen: null, chosen: null, alike: [], families: [] },
    remarks: [
      ...remarksOfCount({ events: count, rate }, confidence),
      ...unseenRemarks(seenFrom, lengths, logged, { count, standing: all.count }),
      ...noted(input.notes),
    ],
    pictures: { ...noTimes, trend: trendOf(occurrences), hours: hoursOf(input, confidence) },
  }
}

/** Running time to a stop: a count in it, but where another law than the exponential is shown. */
export function timeToInput(
  input: LoggedTimeTo,
  laws: Laws,
  lengths: Fit | null,
  { confidence, work }: { confidence: number; work: ReadonlyMap<string, number> },
): FittedInput {
  const { count, exposure, seenFrom, occurrences, sample } = input
  const logged = loggedShare(seenFrom, lengths)
  const worked = workedShare(input, work)
  const all = countOfAll(count, (exposure?.value ?? 0) * (worked ?? 1), logged)
  const rate = all.exposure > 0 ? { ...rateOf(all.count, all.exposure, confidence), unit: 's' } : null
  const ageing = count >= few ? ageingOf(laws, worked ?? 1) : null
  const about = {
    events: count,
    chosen: ageing?.family ?? null,
    alike: ageing ? laws.choice.alike.map(({ fit }) => fit.law.family) : [],
  }
  const drawn = ageing ?? lawOfFamily(laws, 'exponential')
  return {
    ...partsOf(input),
    what: 'time-to',
    ...{ cutOff: cutOffIn(sample), exposure, rate, seen: null, ...about },
    ...writtenOf(rate === null ? null : all, count, ageing),
    families: laws.candidates.map(familyResult),
    remarks: [
      ...remarksOfCount({ events: count, rate }, confidence),
      ...(ageing ? remarksOfTimes(about, laws, { longest: 0, confidence }) : []),
      ...unseenRemarks(seenFrom, lengths, logged, { count, standing: all.count }),
      workedRemark(worked),
      ...noted(input.notes),
    ],
    pictures: {
      ...(count === 0 ? noTimes : picturesOf(sample, survivalCurve(sample), drawn, new Map())),
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

const workedRemark = (worked: number | null): Remark => ({
  code: 'worked-share',
  text:
    worked === null
      ? 'the clock of the model goes only while the piece works, that of the log while it does not stand: with `--into` the time that it works is reckoned from the good cases'
      : `of the running time of the log the piece worked ${share(worked)}, by hand from the good cases: the clock of the model goes only then`,
})

/** The law of a piece that fails the oftener, or the more seldom, the longer it has worked; null where it is exponential, or none fits. */
function ageingOf({ choice }: Laws, worked: number): FittedLaw | null {
  const law = choice.chosen?.fit.law ?? null
  return law === null || law.family === 'exponential' ? null : scaled(law, worked)
}

const lawOfFamily = ({ candidates }: Laws, family: FittedLaw['family']): FittedLaw | null =>
  candidates.find(({ fit }) => fit.law.family === family)?.fit.law ?? null

function writtenOf(
  all: { count: number; exposure: number } | null,
  count: number,
  ageing: FittedLaw | null,
): Pick<FittedInput, 'value' | 'restsOn'> {
  if (all === null) return { value: null, restsOn: 'nothing' }
  return ageing === null
    ? { value: timeToText(all.count, all.exposure), restsOn: 'counted' }
    : { value: lawText(ageing, count), restsOn: 'fitted' }
}

/** Runs that no stop had ended when the record did. */
const cutOffIn = ({ seen, counts }: Sample): number =>
  seen.reduce((sum, each, index) => sum + ('over' in each ? counts[index]! : 0), 0)

const partsOf = ({ path, words }: { path: string; words: string }) => ({ path, words, also: {}, tests: [] })

const noTimes = { quantiles: [], histogram: null, survival: null }

export const noted = (notes: readonly string[]): Remark[] => notes.map((text) => ({ code: 'left-out', text }))

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
  return exposureByHour.flatMap((within, hour) => {
    if (!isTold(exposureByHour, hour, occurrences.length)) return []
    const expected = (occurrences.length * within) / exposure.value
    const events = occurrences.filter((each) => each.hour === hour).length
    return [{ hour, events, exposure: within, ...poissonRange(expected, confidence) }]
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
  lengths: Fit | null,
  { share: logged }: ShareOver,
  { count, standing }: { count: number; standing: number },
): Remark[] {
  if (seenFrom <= 0 || count === 0 || (lengths !== null && 1 - logged < fewUnseen)) return []
  if (lengths === null)
    return [
      {
        code: 'unseen-short',
        text: `stops under ${time(seenFrom)} are in no log, and no law says how many: the true rate is higher`,
      },
    ]
  const known = standing < count ? `; as that share is known roughly, ${count} count as ${standing}` : ''
  return [
    {
      code: 'unseen-short',
      text: `stops under ${time(seenFrom)} are in no log: by the law of their lengths ${share(1 - logged)} of all, made up for by counting in so much less${known}`,
    },
  ]
}
