/** Counts as a scenario writes them: `36 in 40000 cases` for a chance, `2150 in 4 h` for a rate, `18 in 640 h` for a time that varies. */

import type { Ends, Known } from './known.js'
import { exampleApart } from './meant.js'
import { nearest } from './nearest.js'
import { numeralOf } from './numerals.js'
import { shown } from './printable.js'
import { parseQuantity } from './quantity.js'
import { fault, type Read } from './reading.js'
import { beyondEnds, inSi } from './units.js'

type Count = Extract<Known, { form: 'count' }>

/** What a chance may be counted in. */
export const countWords = ['cases', 'strips', 'jams', 'stops'] as const

/** More than this was not counted: a slip, and no arithmetic of chances would hold. */
const mostCounted = 999_999_999_999

const shape = /^\s*([+-]?\.?\d.*?)\s+in\s+([+-]?\.?\d.*?)\s*$/

/** Whether a text is written as a count, rightly or not. `18 in` alone is a length. */
export const isCount = (written: unknown): written is string =>
  typeof written === 'string' && written.length <= 200 && shape.test(written)

const plainNumber = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i

/** The counted number of a text, or what is wrong with it. */
function wholeOf(written: string, what: string): Read<number> {
  if (!plainNumber.test(written)) {
    const meant = numeralOf(written)
    const fix = meant?.readings.length === 1 ? `did you mean \`${meant.readings[0]}\`?` : 'write digits only'
    return fault(
      'not-a-quantity',
      `\`${shown(written, 40)}\` is not a count of ${what}: only digits are allowed`,
      fix,
    )
  }
  const number = Number(written)
  if (number < 0)
    return fault('out-of-range', `a count of ${what} must not be negative`, 'a count of 0 or more')
  if (number > mostCounted)
    return fault('out-of-range', `a count of ${what} must be at most ${mostCounted}`, 'what was counted')
  if (!Number.isInteger(number))
    return fault('out-of-range', `a count of ${what} must be a whole number`, `such as ${Math.round(number)}`)
  return { value: number }
}

/** A chance that was counted, such as `36 in 40000 cases`. */
export function readChance(written: string, ends: Ends): Read<Count> {
  const [, first, second] = shape.exec(written)!
  const events = wholeOf(first!, 'events')
  if ('fault' in events) return events
  const [, digits = '', word] = /^(.*?)\s*((?<![\d.])[a-z%][^\d]*)?$/i.exec(second!) ?? []
  const exposure = wholeOf(digits, word ?? 'cases')
  if ('fault' in exposure) return exposure
  const named = `${events.value} in ${exposure.value} cases`
  const counted = countWords.find((each) => each === word || each.slice(0, -1) === word)
  if (counted === undefined) {
    const list = `a count for a chance needs a word for what was counted: ${countWords.join(', ')}`
    if (word === undefined) return fault('no-unit', list, `such as \`${named}\``)
    return 'value' in parseQuantity(`1 ${word}`, 'time')
      ? fault(
          'wrong-unit',
          `a chance must be counted per ${countWords.join(', ')}, not per time`,
          `such as \`${named}\``,
        )
      : fault(
          'unknown-unit',
          `\`${shown(word, 40)}\` cannot be counted here: ${countWords.join(', ')}`,
          nearest(word.slice(0, 40), countWords),
        )
  }
  if (exposure.value === 0)
    return fault(
      'out-of-range',
      `a count in 0 ${counted} says nothing about a chance`,
      `give the number of ${counted}`,
    )
  if (events.value > exposure.value)
    return fault(
      'out-of-range',
      `${events.value} of ${exposure.value} ${counted}: more events than ${counted}`,
      `swap the two, or count again`,
    )
  return {
    value: { form: 'count', of: 'chance', events: events.value, exposure: exposure.value, counted, ...ends },
  }
}

/** Events in a time, such as `2150 in 4 h`; `least`: fewer say nothing here. */
export function readInTime(
  written: string,
  of: 'rate' | 'interval',
  least: 0 | 1,
  ends: Ends = { least: 0, most: Infinity },
): Read<Count> {
  const [, first, second] = shape.exec(written)!
  const events = wholeOf(first!, of === 'rate' ? 'cases' : 'events')
  if ('fault' in events) return events
  const time = parseQuantity(second, 'time')
  const fix = `write it like \`${events.value} in ${exampleApart('640 h', written)}\``
  if (!('value' in time)) {
    const isOfCases = countWords.some((each) => second!.endsWith(each))
    return fault(
      isOfCases ? 'wrong-unit' : time.code,
      isOfCases ? `here events must be counted per time, not per ${countWords.join(', ')}` : time.rule,
      fix,
    )
  }
  if (!(time.value > 0 && time.value < Infinity))
    return fault('out-of-range', 'the time of a count must be above 0 and finite', fix)
  const beyond = beyondEnds('time', time.value)
  if (beyond !== null) return fault('out-of-range', `the time of a count must be ${beyond.words}`, fix)
  if (events.value < least)
    return fault(
      'out-of-range',
      'a count of 0 gives no time from one event to the next: only breakdowns may have a count of 0',
      'count for longer, or give a value or a guess: `{guess: 2 h, between: [1 h, 5 h]}`',
    )
  const [counted] = /[a-z]+$/i.exec(second!)!
  return { value: { form: 'count', of, events: events.value, exposure: time.value, counted, ...ends } }
}

/** A chance, 1/s, or the mean time, s, that a count says. */
export const valueOfCount = ({ of, events, exposure }: Count): number =>
  of === 'interval' ? exposure / events : events / exposure

/** The same value without its count, as a file would write it. */
export function countAsValue({ of, events, exposure, counted }: Count): unknown {
  if (of === 'chance') return `${events} per ${exposure} cases`
  if (of === 'rate') return `${Number(((events / exposure) * 3600).toPrecision(12))} cases/h`
  // no law of the format says never
  if (events === 0) return `0 in ${Number((exposure / inSi('time', 1, counted)).toPrecision(12))} ${counted}`
  return { exponential: { mean: `${exposure / events / inSi('time', 1, counted)} ${counted}` } }
}
