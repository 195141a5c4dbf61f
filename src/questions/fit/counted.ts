/** Inputs that are counted: chances in cases or strips, and running time to a stop. */

import { wordsFor } from '../../catalogue/printed-units.js'
import type { LoggedChance, LoggedTimeTo, Occurrence } from '../../record/input.js'
import { countLimits } from '../../statistics/events.js'
import { distributionOf, type FittedLaw } from '../../statistics/fitting/law.js'
import { survivalCurve } from '../../statistics/fitting/survival.js'
import { chanceOf, rateOf } from '../../statistics/rates.js'
import type { At, FittedInput, Remark } from './document.js'
import { familyResult, type Laws } from './laws.js'
import { picturesOf } from './pictures.js'
import { few, remarksOfCount, remarksOfTimes } from './remarks.js'
import { isTold } from './tests.js'
import { chanceText, lawText, timeToText } from './value-text.js'

/** The law of the lengths of what was counted. */
export type Above = FittedLaw

const { share, time } = wordsFor('metric')

/** Share of the stops that are long enough to be in the log. */
const loggedShare = (seenFrom: number, law: Above | null): number =>
  seenFrom > 0 && law !== null ? distributionOf(law).above(seenFrom) : 1

/** A chance for each case or strip. */
export function countInput(
  input: LoggedChance,
  law: Above | null,
  { confidence }: { confidence: number },
): FittedInput {
  const { count, exposure, seenFrom, occurrences } = input
  const logged = loggedShare(seenFrom, law)
  // events that were too short to be logged are undone by counting in fewer cases
  const cases = exposure === null ? null : Math.max(count, Math.round(exposure.value * logged))
  const rate =
    exposure === null || cases === null || cases === 0
      ? null
      : { ...chanceOf(count, cases, confidence), unit: exposure.unit }
  const known = { events: count, rate }
  return {
    ...partsOf(input),
    what: 'chance',
    ...{ events: count, cutOff: 0, exposure },
    value: rate === null ? null : chanceText(count, cases!, exposure!.unit),
    restsOn: rate === null ? 'nothing' : 'counted',
    ...{ rate, seen: null, chosen: null, alike: [], families: [] },
    remarks: [
      ...remarksOfCount(known, confidence),
      ...unseenRemarks(seenFrom, law, logged, count),
      ...noted(input.notes),
    ],
    pictures: { ...noTimes, trend: trendOf(occurrences), hours: hoursOf(input, confidence) },
  }
}

/** Running time to a stop: a count in it, but where another law than the exponential is shown. */
export function timeToInput(
  input: LoggedTimeTo,
  laws: Laws,
  law: Above | null,
  { confidence }: { confidence: number },
): FittedInput {
  const { count, exposure, seenFrom, occurrences, sample } = input
  const logged = loggedShare(seenFrom, law)
  const running = (exposure?.value ?? 0) * logged
  const rate = running > 0 ? { ...rateOf(count, running, confidence), unit: 's' } : null
  const ageing = count >= few ? ageingOf(laws) : null
  const about = {
    events: count,
    chosen: ageing?.family ?? null,
    alike: ageing ? laws.choice.alike.map(({ fit }) => fit.law.family) : [],
  }
  const drawn = ageing ?? lawOfFamily(laws, 'exponential')
  return {
    ...partsOf(input),
    what: 'time-to',
    ...{ cutOff: 1, exposure, rate, seen: null, ...about },
    ...writtenOf(count, rate === null ? null : running, ageing),
    families: laws.candidates.map(familyResult),
    remarks: [
      ...remarksOfCount({ events: count, rate }, confidence),
      ...(ageing ? remarksOfTimes(about, laws, { longest: 0, confidence }) : []),
      ...unseenRemarks(seenFrom, law, logged, count),
      ...noted(input.notes),
    ],
    pictures: {
      ...(count === 0 ? noTimes : picturesOf(sample, survivalCurve(sample), drawn, new Map())),
      ...{ trend: trendOf(occurrences), hours: hoursOf(input, confidence) },
    },
  }
}

/** The law of a piece that fails the oftener, or the more seldom, the longer it has run; null where it is exponential, or none fits. */
const ageingOf = ({ choice }: Laws): FittedLaw | null => {
  const law = choice.chosen?.fit.law ?? null
  return law?.family === 'exponential' ? null : law
}

const lawOfFamily = ({ candidates }: Laws, family: FittedLaw['family']): FittedLaw | null =>
  candidates.find(({ fit }) => fit.law.family === family)?.fit.law ?? null

function writtenOf(
  count: number,
  running: number | null,
  ageing: FittedLaw | null,
): Pick<FittedInput, 'value' | 'restsOn'> {
  if (running === null) return { value: null, restsOn: 'nothing' }
  return ageing === null
    ? { value: timeToText(count, running), restsOn: 'counted' }
    : { value: lawText(ageing, count), restsOn: 'fitted' }
}

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

function unseenRemarks(seenFrom: number, law: Above | null, logged: number, count: number): Remark[] {
  if (seenFrom <= 0 || count === 0) return []
  if (law === null)
    return [
      {
        code: 'unseen-short',
        text: `stops under ${time(seenFrom)} are in no log, and no law says how many: the true rate is higher`,
      },
    ]
  return [
    {
      code: 'unseen-short',
      text: `stops under ${time(seenFrom)} are in no log: by the law of their lengths ${share(1 - logged)} of all, which is made up for by counting in so much less`,
    },
  ]
}
