/** What a validation does not say, and how it was done: printed with its figures. */

import { stopPathOf } from '../../record/meanings.js'
import type { CleanRecord } from '../../record/record.js'
import { counted, durationText, sentences } from '../../report/format.js'
import type { ReadScenario } from '../../scenario/read.js'
import type { SimulatedDay } from './simulated.js'

/** Fewer days than this show little. */
const fewDays = 10
/** From so many on the mean of days that are skewed is nearly normal. */
const enoughDays = 30

export function notesOf(
  { scenario }: Pick<ReadScenario, 'scenario'>,
  record: CleanRecord,
  days: readonly SimulatedDay[],
): string[] {
  const replayed = days.filter(({ drivenBy }) => drivenBy === 'cases').length
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
    'Each day has the length of its shift from the record, and every shift begins with an empty line.',
    record.shifts.every(({ breaks }) => breaks.length === 0) &&
      'The record shows no breaks: those of the scenario are taken.',
    record.seenFrom > 0 &&
      `Stops shorter than ${durationText(record.seenFrom)} are not in the log; those of the model are left out alike, and read by the same clock.`,
    missing.length > 0 && `The record names pieces that the scenario does not have: ${missing.join(', ')}.`,
    'Values of the scenario are taken as they stand: what is not known of them is not in the runs.',
    'A verdict holds for the output of days like these, not for what no such day has shown.',
  )
}
