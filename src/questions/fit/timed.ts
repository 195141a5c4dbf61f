/** Inputs that are times: how long stops last, and how one case follows another. */
import { anySource } from '../../record/arrivals-of-record.js'
import type { LoggedTimeBetween, LoggedTimes } from '../../record/input.js'
import { readAs, type Sample } from '../../statistics/fitting/sample.js'
import type { FittedInput, Remark } from './document.js'
import { knownTime } from './known.js'
import { familyResult, type Laws, meanKnown } from './laws.js'
import { picturesOf } from './pictures.js'
import { noted, remark, remarksOf, remarksOfTimes } from './remarks.js'
import { lawText, observedText } from './value-text.js'

/** Times of which more are not written into a file to be drawn from. */
const mostObserved = 20_000

/** `observed` takes the text of a file that the value draws on. */
export function timesInput(
  input: LoggedTimes | LoggedTimeBetween,
  laws: Laws,
  observed: Map<string, string>,
  { confidence }: { confidence: number },
): FittedInput {
  const { sample, path } = input
  const { chosen, alike } = laws.choice
  const lengths = lengthsOf(sample)
  const events = lengths.length
  const law = chosen?.fit.law ?? null
  const seen = seenOf(lengths)
  const isObserved = law === null && events > 1 && events <= mostObserved
  if (isObserved) observed.set(fileOf(path), `seconds\n${lengths.join('\n')}\n`)
  const about = { events, chosen: law?.family ?? null, alike: alike.map(({ fit }) => fit.law.family) }
  return {
    ...{ path, words: input.words, what: input.what, also: {}, tests: [] },
    ...{ cutOff: input.count - events, exposure: null, ...about },
    value: law ? lawText(law, events) : isObserved ? observedText(fileOf(path)) : null,
    restsOn: law ? 'fitted' : isObserved ? 'observed' : 'nothing',
    rate: null,
    mean: meanKnown(laws),
    seen,
    families: laws.candidates.map(familyResult),
    remarks: remarksOf(
      ...remarksOfTimes(about, laws, { longest: lengths.at(-1) ?? 0, confidence }),
      seenRemark(input, seen),
      input.what === 'times' &&
        input.holdsWalk &&
        input.count > 0 &&
        remark(
          'walk-within',
          'the log measures from stop to restart, so these times include the walk and the wait for a free person: set the `walk` of the crew to 0 s',
        ),
      path.includes(anySource) &&
        remark(
          'no-source',
          'the record does not say to which entry of `arrivals` these cases belong: name it as `source` of `cases`',
        ),
      ...noted(input.notes),
    ),
    pictures: {
      ...picturesOf(sample, law, new Map(laws.candidates.map(({ fit }) => [fit.law.family, fit.law]))),
      ...{ trend: [], hours: [] },
    },
  }
}

const fileOf = (path: string): string => `observed-${path.replace(/[^\p{L}\p{N}._-]/gu, '-')}.csv`

/** As they were read, s, the shortest first, without what was cut off. */
function lengthsOf({ seen, counts }: Sample): number[] {
  const all = seen.flatMap((each, index) => {
    const length = readAs(each)
    return length === null ? [] : new Array<number>(counts[index]!).fill(length)
  })
  return all.sort((a, b) => a - b)
}

function seenOf(lengths: readonly number[]): FittedInput['seen'] {
  const n = lengths.length
  if (n === 0) return null
  const mean = lengths.reduce((sum, each) => sum + each, 0) / n
  const squares = lengths.reduce((sum, each) => sum + (each - mean) ** 2, 0)
  return { mean, standardError: n > 1 ? Math.sqrt(squares / (n - 1) / n) : null }
}

/** What is known of the stops that the log has, whatever of the others. */
function seenRemark(input: LoggedTimes | LoggedTimeBetween, seen: FittedInput['seen']): Remark | null {
  if (input.what !== 'times' || input.seenFrom === 0 || !seen || seen.standardError === null) return null
  const { mean, standardError } = seen
  const within = knownTime({
    value: mean,
    low: mean - 1.96 * standardError,
    high: mean + 1.96 * standardError,
  })
  return remark('mean-seen', `the logged ones last ${within.join(' ')} on average`)
}
