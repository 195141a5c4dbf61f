/** What the report of a sweep says, whichever kind it is. */

import { drawsText } from '../../answers/inputs-words.js'
import { simulatedEach, startLimit, studyReport } from '../../answers/study-report.js'
import { besideCost } from '../../answers/warnings.js'
import { words } from '../../report/cell.js'
import { counted, grouped, listed, percentText, sentences } from '../../report/format.js'
import type { Report, Summary, Table } from '../../report/report.js'
import { curveHeadline, curveTables } from './curve-report.js'
import { costName, type SweepKind, type SweepResult } from './document.js'
import { eachHeadline, eachTables } from './each-report.js'
import { gridHeadline, gridTables } from './grid-report.js'
import { planHeadline, planTables } from './plan-report.js'

/** The report of a sweep. */
export function sweepReport(result: SweepResult): Report {
  const said = headline(result)
  return studyReport(result, {
    subtitle: `${whatIsSwept(result)} on the same random numbers, ${simulatedEach(result)} Plus-minus of a figure: ${percentText(result.made.confidence)} confidence that its long-run value lies within it.`,
    headline: said,
    certainty: [
      ...[
        kinds[result.kind].sure(percentText(result.made.confidence), grouped(familyOf(result), 0), result),
      ].flat(),
      'Figures are plain means: what they differ by is the mean difference. tapeshift run narrows the plus-minus of a single design.',
    ],
    tables: [...kinds[result.kind].tables(result), leftOutTable(result)],
    limits: limits(result),
    isDrawn: result.drawn !== undefined,
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

/** What a kind of sweep says of its own: `sure` how sure its differences are, `limit` what it cannot see. */
interface Kind {
  headline: (result: SweepResult) => string[]
  tables: (result: SweepResult) => Table[]
  sure: (confidence: string, family: string, result: SweepResult) => string | string[]
  limit: string[]
}

/** What the plus-minus holds where inputs were drawn. */
const drawnLine = ({ drawn }: SweepResult, held: string) =>
  drawn &&
  `Plus-minus holds luck of the simulation and what is not known of the inputs: ${drawsText(drawn)}, the same for all. ${held}`

const differences = (confidence: string, family: string): string =>
  `Differences are taken shift by shift: ${confidence} confidence that all ${family} that are judged together lie within their plus-minus at once (Bonferroni). Shown is a difference whose plus-minus leaves 0 out. What is not shown may still be there: its plus-minus says how large at most.`

const asVaried = 'What is varied is taken as it is varied.'

const kinds: Record<SweepKind, Kind> = {
  curve: {
    headline: curveHeadline,
    tables: curveTables,
    sure: (confidence, family, result) =>
      sentences(
        drawnLine(result, asVaried),
        differences(confidence, family),
        result.curve!.cost &&
          'Which point costs least is chosen after looking; so those not shown to cost more are judged as one of all pairs of points.',
      ),
    limit: [
      'Between two values tried the curve is taken as straight: a value there is interpolated, not tried.',
    ],
  },
  grid: {
    headline: gridHeadline,
    tables: gridTables,
    sure: (_confidence, _family, result) =>
      sentences(
        drawnLine(result, asVaried),
        'Contours go by the figures alone, in straight lines between points: by the plus-minus of the points near it a contour may lie elsewhere. All points saw the same random numbers, so its form is surer than its place.',
      ),
    limit: [],
  },
  each: {
    headline: eachHeadline,
    tables: eachTables,
    sure: (confidence, family, result) =>
      sentences(
        drawnLine(
          result,
          'An input that moves is taken as it is moved, and held where it is in what that is held against.',
        ),
        differences(confidence, family),
      ),
    limit: [
      'One input moves at a time: what two of them do together is not seen. A range that is wider in practice than a tenth matters more than its bar: name the input with --vary and its own ends.',
    ],
  },
  plan: {
    headline: planHeadline,
    tables: planTables,
    sure: (confidence, family, result) =>
      sentences(
        drawnLine(result, asVaried),
        `${confidence} confidence that all ${family} effects lie within their plus-minus at once (Bonferroni), as far as straight lines describe the line. Standardised: standard deviations of the figure for one of the factor.`,
      ),
    limit: [
      'A straight line in each factor: curvature is not seen, nor what two factors do together; where little is explained, look at single factors as curves.',
    ],
  },
}

function headline(result: SweepResult): string[] {
  const lines = kinds[result.kind].headline(result)
  if (result.curve || result.grid) return lines
  const isPriced = result.measures.some(({ name }) => name === costName)
  const beside = isPriced ? besideCost(result) : ''
  return beside === '' ? lines : [...lines, beside]
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

/** Inputs that were not moved, and designs that could not be simulated, by the reason. */
function leftOutTable({ leftOut, kind }: SweepResult): Table {
  const reasons = new Map<string, string[]>()
  for (const { path, reason } of leftOut) reasons.set(reason, [...(reasons.get(reason) ?? []), path])
  return {
    title: kind === 'each' ? 'Left out' : 'Not simulated to the end',
    columns: words('why', 'what'),
    rows: [...reasons].map(([reason, paths]) => [reason, paths.join(', ')]),
  }
}

/** Fewer shifts of each design say little of how far they spread. */
const fewShifts = 10

function limits({ notes, kind, shift, made }: SweepResult): string[] {
  return sentences(
    ...notes,
    made.shifts < fewShifts &&
      `Only ${grouped(made.shifts, 0)} shifts of each: what differs alike in so few is called shown with no plus-minus at all; ${fewShifts} or more are usual.`,
    ...kinds[kind].limit,
    startLimit(shift),
    'Jam, roll-change and breakdown figures are inputs: no published data on tape sealers is known. A sweep is as good as what was measured for them.',
  )
}

/** The first screen of a sweep; `headline` is what its report says first. */
export const sweepSummary = ({ made, drawn }: SweepResult, headline: readonly string[]): Summary => ({
  question: 'How much of it is enough?',
  answer: headline[0]!,
  sureness: [
    `${percentText(made.confidence)} confidence: what is called shown holds for all differences that are judged together${drawn ? ', with what is not known of the inputs' : ''}.`,
  ],
  limiting: '',
  next: [
    'Put the value that you choose into the scenario and simulate it with tapeshift run, for more shifts than here.',
  ],
})
