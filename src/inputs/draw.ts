/** Inputs as they may be: a scenario whose values are drawn from what each rests on. */
import type { RandomNumbers } from '../engine/draw.js'
import { Stream } from '../engine/stream.js'
import { Fault } from '../scenario/fault.js'
import { valueAt } from '../scenario/issues.js'
import type { Evidence, Known } from '../scenario/known.js'
import { type Distribution, isSound, type Observed, type PlainDistribution } from '../scenario/law.js'
import { ruleFindings } from '../scenario/rules.js'
import type { Scenario } from '../scenario/schema.js'
import { Copy } from './copy.js'
import { chanceAt, gammaAt, guessAt, rateAt } from './posterior.js'
import { lawBehind, next, within } from './refit.js'
import { ownerOfDays, resampled } from './resample.js'
import { DrawnShares } from './shares.js'
import { numberOf } from './what-is-known.js'

/** A scenario of one draw. */
export interface Drawn {
  scenario: Scenario
  /** What was drawn of each input, in the order of the evidence, in SI: of a law its mean. */
  inputs: number[]
}

/** Draws that break a rule between keys, such as a break that ends after the shift, are drawn again; so often at most. */
const mostAttempts = 100

/**
 * The draw of a number, from 1. Each input has random numbers of its own, by seed, path and number of the draw: what else is known changes
 * none of its draws. Days of a file are drawn once for all that is read from it. What two guesses say of one another nobody said: where together they break a rule of the format, all are drawn
 * again. Throws `Fault` `asked` where that does not end.
 */
export function drawInputs(
  { scenario, evidence }: { scenario: Scenario; evidence: readonly Evidence[] },
  seed: string,
  number: number,
): Drawn {
  const places = evidence.flatMap((each) => [each, ...(each.again ?? []).map((at) => ({ ...each, at }))])
  const shares = new DrawnShares(scenario, places)
  for (let attempt = 1; attempt <= mostAttempts; attempt++) {
    const purpose = attempt === 1 ? 'input' : `input, attempt ${attempt}`
    const copy = new Copy(scenario)
    for (const { path, at, known } of places) {
      const value = valueAt(scenario, at)
      const owner = known.form === 'observed' && known.days ? ownerOfDays(value as Observed) : path
      const stream = new Stream(owner, purpose)
      stream.begin(seed, number)
      copy.set(at, drawn(value, known, stream, shares.isOneOfAll(at)))
    }
    shares.balance(copy)
    const { made } = copy
    if (places.every(({ at }) => keepsOrder(made, at)) && ruleFindings(made).length === 0)
      return { scenario: made, inputs: evidence.map(({ at }) => numberOf(valueAt(made, at))) }
  }
  const guessed = evidence.filter(({ known }) => known.form === 'guess').map(({ path }) => `\`${path}\``)
  throw new Fault(
    'asked',
    `the guesses for ${guessed.join(', ')} rarely fit together by the rules of the format: make the ranges narrower, so that all values between the ends can be combined`,
  )
}

/** A number, or a law, in place of `value`. `isOneOfAll`: of shares that are brought to their sum later. */
function drawn(
  value: unknown,
  known: Known,
  stream: RandomNumbers,
  isOneOfAll: boolean,
): number | Distribution {
  switch (known.form) {
    case 'observed':
      return resampled(value as Observed, stream)
    case 'fitted':
      return lawBehind(value as PlainDistribution, known.observations, stream)
    case 'guess':
      return within(guessAt(next(stream), known), known.least, known.most)
    case 'count':
      return countDrawn(next(stream), known, isOneOfAll)
  }
}

function countDrawn(
  u: number,
  known: Extract<Known, { form: 'count' }>,
  isOneOfAll: boolean,
): number | Distribution {
  // no further than its key allows
  const { events, exposure, least, most } = known
  switch (known.of) {
    case 'chance':
      return isOneOfAll
        ? gammaAt(u, events + 1 / 2) / exposure
        : within(chanceAt(u, events, exposure), least, most)
    case 'rate':
      return within(rateAt(u, events, exposure), least, most)
    case 'interval':
      return { law: 'exponential', mean: 1 / rateAt(u, events, exposure) }
  }
}

/** Keys of which the lower of two values comes first: narrowest and widest tape, coldest and warmest. */
const pairs: readonly unknown[] = ['takes', 'temperature', 'applies-at']

/** Whether the laws on the way to a place keep the rules between their parameters, and pairs their order. */
function keepsOrder(scenario: Scenario, at: readonly (string | number)[]): boolean {
  const around = valueAt(scenario, at.slice(0, -1))
  // a time that planned or other work takes has that key too, and is no pair
  if (pairs.includes(at.at(-2)) && Array.isArray(around)) {
    const [low, high] = around as [number, number]
    return low <= high
  }
  let place: unknown = scenario
  for (const step of at) {
    place = (place as Record<string | number, unknown>)[step]
    if (typeof place === 'object' && place !== null && 'law' in place && typeof place.law === 'string') {
      if (!isSound(place as Distribution)) return false
    }
  }
  return true
}
