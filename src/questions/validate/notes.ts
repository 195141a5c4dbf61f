/** What a validation does not say, and how it was done: printed with its figures. */

import { figures } from '../../catalogue/printed-units.js'
import { stopPathOf } from '../../record/meanings.js'
import type { CleanRecord } from '../../record/record.js'
import { counted, durationText, percentText, sentences } from '../../report/format.js'
import type { ReadScenario } from '../../scenario/read.js'
import { covered, type Driver } from './asked.js'
import type { OwnStopsResult, ValidateResult } from './document.js'
import type { CountedStops } from './own-stops.js'

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
  const told = ({ stops, seconds }: CountedStops) =>
    `${figures(stops)} stops and ${figures(seconds / 60)} minutes a day`
  return sentences(
    `${drivenBy === 'both' ? 'With its own stops' : 'Of the plant'}: ${told(put)} came as they were logged, on the piece that the record names, at their times and as long as they were, in place of the laws of these stops. Nobody of the crew is called to them: their length holds the wait for somebody.`,
    left.stops > 0 && `${told(left)} are not put in: the record does not say where in the line they were.`,
    open > 0 &&
      `The clock of the log steps by ${durationText(roundedTo)}: of the minutes of a day it leaves about ${figures(open / 60, 2)} open, one standard deviation. The runs do not hold that, so more days lie outside than should; in the mean over the days it evens out.`,
    seenFrom > 0 &&
      `Shorter ones than ${durationText(seenFrom)} are not in the log, so the model has none of them: it may be faster for that.`,
  ).join(' ')
}

/** Runs that have no luck left. */
function alike(days: ValidateResult['days']): string | false {
  const count = days.filter(({ model }) => model.low === model.high).length
  return (
    count > 0 &&
    `On ${counted(count, 'day')} ${percentText(covered)} of the runs put out just as much: with arrivals and stops of the plant hardly anything is left to chance, so a day lies outside as soon as it differs at all. The mean over the days, which decides, is not touched by that.`
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
      `Only ${counted(days.length, 'day')}: the intervals are wide, and what days of another season are like is not known.`,
    days.length < enoughDays &&
      'Where bad days are rare, few days may hold none of them: then a wrong yes is likelier than is said (8 % in place of 5 %, of 200 simulated records of 12 days each).',
    replayed > 0 &&
      `On ${counted(replayed, 'day')} the cases came as they were recorded, each at its time and of its kind.`,
    replayed < days.length &&
      `On ${counted(days.length - replayed, 'day')} what came was not recorded, or not all of it: there cases come by the law of the scenario, which is on trial too. The day's own good cases are not fed to the model: a line with room to spare would give them back whatever is wrong with it.`,
    ownStops && ownStopsText(ownStops, drivenBy, record),
    drivenBy === 'stops' && alike(days),
    'Each day has the length of its shift from the record, and every shift begins with an empty line.',
    record.shifts.every(({ breaks }) => breaks.length === 0) &&
      'The record shows no breaks: those of the scenario are taken.',
    record.seenFrom > 0 &&
      drivenBy !== 'stops' &&
      `Stops shorter than ${durationText(record.seenFrom)} are not in the log; those of the model are left out alike, and read by the same clock.`,
    missing.length > 0 && `The record names pieces that the scenario does not have: ${missing.join(', ')}.`,
    'Values of the scenario are taken as they stand: what is not known of them is not in the runs.',
    'A verdict holds for the output of days like these, not for what no such day has shown.',
  )
}
