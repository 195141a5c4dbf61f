/** What a validation does not say, and how it was done: printed with its figures. */

import { figures } from '../../catalogue/printed-units.js'
import { stopPathOf } from '../../record/meanings.js'
import type { CleanRecord } from '../../record/record.js'
import { counted, durationText, percentText, sentences } from '../../report/format.js'
import type { ReadScenario } from '../../scenario/read.js'
import { covered, type Driver } from './asked.js'
import type { Stopped } from './causes.js'
import type { OwnStopsResult, ValidateResult } from './document.js'

/** Fewer days than this show little. */
const fewDays = 10
/** From so many on the mean of days that are skewed is nearly normal. */
const enoughDays = 30

/** What of the plant's stops was put in, and what was not. */
function ownStopsText(
  { put, left, open }: OwnStopsResult,
  drivenBy: Driver,
  { seenFrom, roundedTo }: CleanRecord,
): string {
  const told = ({ stops, seconds }: Stopped) =>
    `${figures(stops)} stops and ${figures(seconds / 60)} minutes a day`
  return sentences(
    `${drivenBy === 'both' ? 'With its own stops' : 'Of the plant'}: ${told(put)} are replayed as logged, with their pieces, times and lengths, instead of simulated stops. The crew is not called to them: their lengths include the wait for somebody.`,
    left.stops > 0 && `${told(left)} are not put in: the record does not say where in the line they were.`,
    open > 0 &&
      `The clock of the log has steps of ${durationText(roundedTo)}. This makes the stopped minutes of a day uncertain by about ${figures(open / 60, 2)} (one standard deviation). The runs do not include this, so more days than usual lie outside. In the mean over the days it averages out.`,
    seenFrom > 0 &&
      `Stops shorter than ${durationText(seenFrom)} are not in the log, so the model has none and may be faster.`,
  ).join(' ')
}

/** Runs that have no luck left. */
function alike(days: ValidateResult['days']): string | false {
  const count = days.filter(({ model }) => model.low === model.high).length
  return (
    count > 0 &&
    `On ${counted(count, 'day')} ${percentText(covered)} of the runs have the same output. With arrivals and stops of the plant hardly anything is random, so a day lies outside after any small difference. The verdict uses the mean over the days and is not affected.`
  )
}

export function notesOf(
  { scenario }: Pick<ReadScenario, 'scenario'>,
  record: CleanRecord,
  { days, drivenBy, ownStops }: Pick<ValidateResult, 'days' | 'drivenBy' | 'ownStops'>,
): string[] {
  const replayed = days.filter((day) => day.drivenBy === 'cases').length
  const missing = [
    ...new Set(
      record.meanings.flatMap((path) => {
        const piece = stopPathOf(path)?.piece
        return piece !== undefined && !Object.hasOwn(scenario.line, piece) ? [piece] : []
      }),
    ),
  ]
  return sentences(
    days.length < fewDays &&
      `Only ${counted(days.length, 'day')}: the intervals are wide, and days of another season may be different.`,
    days.length < enoughDays &&
      'If bad days are rare, a few days may include none. Then a wrong yes is more likely than stated (8 % instead of 5 %, in 200 simulated records of 12 days each).',
    replayed > 0 &&
      `On ${counted(replayed, 'day')} the cases arrive as recorded, with their times and kinds.`,
    replayed < days.length &&
      `On ${counted(days.length - replayed, 'day')} the arrivals were not recorded, or not completely. There the arrivals of the scenario are simulated, and they are tested too. The day's good cases are not used as arrivals: a line with spare capacity would always pass them all, even if the model is wrong.`,
    ownStops && ownStopsText(ownStops, drivenBy, record),
    drivenBy === 'stops' && alike(days),
    'Each day has the length of its shift in the record, and every shift begins with an empty line.',
    record.shifts.every(({ breaks }) => breaks.length === 0) &&
      'The record shows no breaks: the breaks of the scenario are used.',
    record.seenFrom > 0 &&
      drivenBy !== 'stops' &&
      `Stops shorter than ${durationText(record.seenFrom)} are not in the log. Such stops of the model are not counted either, and lengths are read by the same clock.`,
    missing.length > 0 && `The record names pieces that the scenario does not have: ${missing.join(', ')}.`,
    'Values of the scenario are used as given: the runs do not include their uncertainty.',
    'The verdict applies to the output of days like these only.',
  )
}
