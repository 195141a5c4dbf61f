/** The losses in words: a table from what each machine could put out, step by step, to what the line puts out. */

import type { Figure } from '../catalogue/figure.js'
import type { Display } from '../catalogue/printed-units.js'
import { figures, wordsFor } from '../catalogue/printed-units.js'
import { type Cell, figures as ofFigures, words } from '../report/cell.js'
import { grouped, type Parts, partsOf, printFigure, sentences } from '../report/format.js'
import type { Table } from '../report/report.js'
import type { Losses, LossStep, MachineLosses } from './losses.js'
import type { ShiftTold } from './made.js'

/** What stands in the first column where a row is of no single machine. */
const wholeLine = 'the line'

/** What the table is made of. */
interface Told {
  losses?: Losses | null
  display: Display
  shift: ShiftTold
  drawn?: unknown
}

/** The steps of every machine and of the line; without rows where the document has none. */
export function lossesTable(result: Told): Table {
  const { losses, display } = result
  const cases = (figure: Figure) => bareParts(figure, display)
  const rows: Cell[][] = (losses?.machines ?? []).flatMap((each) => [
    [...[each.machine, 'capacity'], ...[each.limit ? cases(each.limit) : grouped(each.could, 0), share(1)]],
    ...each.losses.map((step) => [each.machine, stepText(step), cases(step.cases), share(step.share)]),
    [each.machine, 'cases passed on', cases(each.leaves), share((each.leaves.mean ?? 0) / each.could)],
  ])
  if (losses) {
    const last = losses.machines.filter(({ isFollowed }) => !isFollowed)
    const could = last.reduce((sum, each) => sum + each.could, 0)
    rows.push(
      ...losses.line.map((step) => [wholeLine, `less: ${step.label}`, cases(step.cases), share(step.share)]),
      [wholeLine, 'good cases', cases(losses.output), share((losses.output.mean ?? 0) / could)],
    )
  }
  return {
    title: 'Where output is lost, cases a shift',
    note: losses ? lossesNote(result) : '',
    columns: [...words('machine', 'what'), ...ofFigures('cases', 'of capacity')],
    rows,
  }
}

/** Time in which there is nothing to seal costs no case. */
const stepText = ({ key, label }: LossStep): string => `${key === 'waiting' ? 'no loss' : 'less'}: ${label}`

/** A figure without its unit, which stands above it. */
export const bareParts = (figure: Figure, display: Display): Parts =>
  partsOf({ ...printFigure(figure, display), unit: '' })

/** A share in per cent with one decimal, or with one figure where that would hide it. */
export const share = (of: number): string =>
  `${of !== 0 && Math.abs(of) < 0.0005 ? figures(of * 100, 1) : grouped(of * 100, 1)} %`

/** What the limits are, and where the breaks are. */
function lossesNote(result: Told): string {
  const { losses, display, shift } = result
  const machines = losses!.machines
  const rate = (each: MachineLosses) => `${each.machine} ${wordsFor(display).rate(each.rate)} (${each.how})`
  const inBreaks = shift.breaks.reduce((sum, pause) => sum + pause.for, 0) / (shift.length + shift.runOut)
  const followed = machines.filter(({ isFollowed }) => isFollowed).map(({ machine }) => machine)
  return sentences(
    `Capacity: the machine runs at its limit all shift (${machines.map(rate).join('; ')}). Each state costs the cases that the machine would make in that time at its limit.`,
    inBreaks > 0 &&
      machines.some((each) => each.losses.every(({ key }) => key !== 'on-break')) &&
      `Breaks are ${figures(inBreaks * 100)} % of the shift. A machine that runs during breaks is starved.`,
    followed.length > 0 &&
      `Cases from ${followed.join(', ')} go to another machine later and are counted there.`,
    Boolean(result.drawn) &&
      'Plus-minus: random variation of the simulation and uncertainty of the inputs. Limits and shares use the inputs as given.',
  ).join(' ')
}
