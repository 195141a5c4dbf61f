/** The days that are to be simulated, each with the scenarios of its shifts, and the reports that are made of some of them. */
import type { ReadRecord } from '../../record/read-record.js'
import { misuse } from '../../scenario/fault.js'
import type { ReadScenario } from '../../scenario/read.js'
import type { ValidateAsked } from './asked.js'
import type { LeftOut, PlantDays } from './days.js'
import { Driving } from './driven.js'
import type { OwnStops } from './own-stops.js'
import { type Drawn, drawnSheets } from './sheet.js'
import type { DayToRun } from './simulated.js'

/** One that the scenario cannot have is left out. `own`: with the stops of the plant. Throws `Fault` `asked` where none is left, and where there are fewer than reports. */
export function daysToRun(
  { loaded, read, asked }: { loaded: ReadScenario; read: ReadRecord; asked: ValidateAsked },
  chosen: PlantDays,
  own: OwnStops | null,
): { days: DayToRun[]; leftOut: LeftOut[]; drawn: Drawn[] } {
  const driving = new Driving(loaded, read.record, own)
  const leftOut = [...chosen.leftOut]
  const days: DayToRun[] = []
  for (const day of chosen.days) {
    const made = day.shifts.map((number) => driving.of(number))
    const driven = made.flatMap((each) => ('scenario' in each ? [each] : []))
    const fault = made.find((each) => 'problem' in each)
    if (fault) leftOut.push({ day: day.day, why: `${fault.problem.path}: ${fault.problem.rule}` })
    else days.push({ ...day, driven, picked: null })
  }
  const [first] = leftOut
  if (days.length === 0)
    throw misuse(
      `no day of the record can be compared with the model${first ? `; ${first.day}: ${first.why}` : ''}`,
    )
  if (asked.sheet > days.length)
    throw misuse(`--sheet ${asked.sheet}: each report is of another day, and only ${days.length} count`)
  const drawn = drawnSheets(asked.sheet, days.length, asked.runs, loaded.scenario.study.seed)
  for (const { day, run } of drawn) days[day]!.picked = run
  return { days, leftOut, drawn }
}
