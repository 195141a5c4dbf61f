/** What the report of a sweep says, whichever kind it is. */

import { startLimit } from '../../answers/limits.js'
import { simulatedEach, studyReport } from '../../answers/study-report.js'
import { costName } from '../../answers/usual-measures.js'
import { besideCost } from '../../answers/warnings.js'
import { words } from '../../report/cell.js'
import { counted, grouped, listed, percentText } from '../../report/format.js'
import type { Report, Table } from '../../report/report.js'
import { curveHeadline, curveTables } from './curve-report.js'
import type { SweepResult } from './document.js'
import { eachHeadline, eachTables } from './each-report.js'
import { gridHeadline, gridTables } from './grid-report.js'
import { planHeadline, planTables } from './plan-report.js'
import { sweepSummary } from './summary.js'

/** The report of a sweep. */
export function sweepReport(result: SweepResult): Report {
  const said = headline(result)
  return studyReport(result, {
    subtitle: `${whatIsSwept(result)} on the same random numbers, ${simulatedEach(result)} Plus-minus of a figure: ${percentText(result.made.confidence)} confidence that its long-run value lies within it.`,
    headline: said,
    certainty: certainty(result),
    tables: [...tables(result), leftOutTable(result)],
    limits: limits(result),
    summary: sweepSummary(result, said),
    assumed: 'Assumed of the scenario, because it does not say',
    lines: [],
    facts: {
      trials: `${counted(result.points.length, 'point')} beside the scenario as it stands.`,
      estimation:
        'All points see the same random numbers; differences are paired shift by shift, and those that are judged together have Bonferroni intervals, and are called shown where these leave 0 out.',
    },
  })
}

function whatIsSwept({ kind, factors, points, each }: SweepResult): string {
  const paths = factors.map(({ path }) => path)
  if (each) return `${counted(each.inputs.length, 'input')}, each moved alone,`
  if (kind === 'plan') return `${counted(points.length, 'design')} that vary ${listed(paths)} at once,`
  return `${counted(points.length, kind === 'grid' ? 'point' : 'value')} of ${listed(paths)}`
}

function headline(result: SweepResult): string[] {
  if (result.curve) return curveHeadline(result, result.curve)
  if (result.grid) return gridHeadline(result)
  const lines = result.each ? eachHeadline(result, result.each) : planHeadline(result, result.plan!)
  const isPriced = result.measures.some(({ name }) => name === costName)
  const beside = isPriced ? besideCost(result) : ''
  return beside === '' ? lines : [...lines, beside]
}

function tables(result: SweepResult): Table[] {
  if (result.curve) return curveTables(result, result.curve)
  if (result.grid) return gridTables(result)
  if (result.each) return eachTables(result, result.each)
  return planTables(result, result.plan!)
}

/** How many comparisons were judged together; 0 where there are none. */
function familyOf({ curve, each, plan }: SweepResult): number {
  const [first] = [
    ...Object.values(curve?.measures ?? {}).flatMap(({ steps }) => steps.map(({ difference }) => difference)),
    ...(each?.inputs ?? []).flatMap(({ differences }) =>
      Object.values(differences).flatMap(({ low, high }) => [low, high].filter((end) => end !== null)),
    ),
    ...Object.values(plan ?? {}).filter((one) => one !== null),
  ]
  return first?.family ?? 0
}

function certainty(result: SweepResult): string[] {
  const { made, kind } = result
  const sure = percentText(made.confidence)
  const size = grouped(familyOf(result), 0)
  const lines = []
  if (kind === 'curve' || kind === 'each')
    lines.push(
      `Differences are taken shift by shift: ${sure} confidence that all ${size} that are judged together lie within their plus-minus at once (Bonferroni). Shown is a difference whose plus-minus leaves 0 out. What is not shown may still be there: its plus-minus says how large at most.`,
    )
  if (kind === 'plan')
    lines.push(
      `${sure} confidence that all ${size} effects lie within their plus-minus at once (Bonferroni), as far as straight lines describe the line. Standardised: standard deviations of the figure for one of the factor.`,
    )
  if (kind === 'grid')
    lines.push(
      'Contours go by the figures alone, in straight lines between points: by the plus-minus of the points near it a contour may lie elsewhere. All points saw the same random numbers, so its form is surer than its place.',
    )
  if (kind === 'curve' && result.curve?.cost)
    lines.push(
      'Which point costs least is chosen after looking; so those not shown to cost more are judged as one of all pairs of points.',
    )
  lines.push(
    'Figures are plain means: what they differ by is the mean difference. tapeshift run narrows the plus-minus of a single design.',
  )
  return lines
}

/** Inputs that were not moved, and designs that could not be simulated, by the reason. */
function leftOutTable({ leftOut, kind }: SweepResult): Table {
  const reasons = new Map<string, string[]>()
  for (const { path, reason } of leftOut) reasons.set(reason, [...(reasons.get(reason) ?? []), path])
  return {
    title: kind === 'each' ? 'Left out' : 'Not simulated to the end',
    note: '',
    columns: words('why', 'what'),
    rows: [...reasons].map(([reason, paths]) => [reason, paths.join(', ')]),
  }
}

/** Fewer shifts of each design say little of how far they spread. */
const fewShifts = 10

function limits({ notes, kind, shift, each, made }: SweepResult): string[] {
  const all = [...notes]
  if (made.shifts < fewShifts)
    all.push(
      `Only ${grouped(made.shifts, 0)} shifts of each: what differs alike in so few is called shown with no plus-minus at all; ${fewShifts} or more are usual.`,
    )
  if (kind === 'curve')
    all.push(
      'Between two values tried the curve is taken as straight: a value there is interpolated, not tried.',
    )
  if (each)
    all.push(
      'One input moves at a time: what two of them do together is not seen. A range that is wider in practice than a tenth matters more than its bar: name the input with --vary and its own ends.',
    )
  if (kind === 'plan')
    all.push(
      'A straight line in each factor: curvature is not seen, nor what two factors do together; where little is explained, look at single factors as curves.',
    )
  all.push(
    startLimit(
      shift,
      'The line runs without end: what each design does after it came to its stride is counted.',
      'Each shift starts with an empty line.',
    ),
    'Jam, roll-change and breakdown figures are inputs: no published data on tape sealers is known. A sweep is as good as what was measured for them.',
  )
  return all
}
