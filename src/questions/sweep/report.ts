/** What the report of a sweep says, whichever kind it is. */

import { firstOf } from '../../answers/first-screen.js'
import { drawsText } from '../../answers/inputs-words.js'
import { simulatedEach, startLimit, studyReport } from '../../answers/study-report.js'
import { besideCost } from '../../answers/warnings.js'
import { words } from '../../report/cell.js'
import { counted, grouped, listed, percentText, sentences } from '../../report/format.js'
import type { Report, Table } from '../../report/report.js'
import { curveHeadline, curveTables } from './curve-report.js'
import { costName, type SweepKind, type SweepResult } from './document.js'
import { eachHeadline, eachTables, planHeadline, planTables } from './effects-report.js'
import { gridHeadline, gridTables } from './grid-report.js'

/** The report of a sweep. */
export function sweepReport(result: SweepResult): Report {
  const { sure, tables } = kinds[result.kind]
  return studyReport(result, {
    subtitle: `${whatIsSwept(result)} on the same random numbers, ${simulatedEach(result)} Plus-minus of a figure: ${percentText(result.made.confidence)} confidence that the long-run value lies within it.`,
    headline: headline(result),
    certainty: [
      ...sentences(
        drawnLine(result),
        sure(percentText(result.made.confidence), grouped(familyOf(result), 0)),
        result.curve?.cost &&
          'The cheapest point is chosen after looking at all. So the test for "costs more" allows for all pairs of points.',
      ),
      'Figures are plain means, so their differences are the mean differences. tapeshift run gives a smaller plus-minus for a single design.',
    ],
    tables: [...tables(result), leftOutTable(result)],
    limits: limits(result),
    isDrawn: result.drawn !== undefined,
    question: 'How much of it is enough?',
    assumed: 'Assumed of the scenario, because it does not say',
    lines: [],
    facts: {
      trials: `${counted(result.points.length, 'point')} beside the scenario as it stands.`,
      estimation:
        'All points use the same random numbers, and differences are paired shift by shift. Differences that are judged together have Bonferroni intervals. They are called shown if the interval excludes 0.',
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
  sure: (confidence: string, family: string) => string
  limit?: string
}

/** What the plus-minus holds where inputs were drawn. */
const drawnLine = ({ drawn, kind }: SweepResult) =>
  drawn &&
  `Plus-minus includes random variation of the simulation and uncertainty of the inputs: ${drawsText(drawn)}, the same for all. ${kind === 'each' ? 'An input that is varied is not drawn, neither at its ends nor in the scenario that it is compared with.' : 'The varied values themselves are not drawn.'}`

const differences: Kind['sure'] = (confidence, family) =>
  `Differences are taken shift by shift: ${confidence} confidence that all ${family} differences lie within their plus-minus at the same time (Bonferroni). A difference is shown if its plus-minus excludes 0. A difference that is not shown may still exist; its plus-minus says how large it can be.`

const kinds: Record<SweepKind, Kind> = {
  curve: {
    headline: curveHeadline,
    tables: curveTables,
    sure: differences,
    limit: 'Between two values tried, figures are interpolated along a straight line.',
  },
  grid: {
    headline: gridHeadline,
    tables: gridTables,
    sure: () =>
      'Contours use the figures alone, with straight lines between points. Within the plus-minus of the points near it, a contour may lie elsewhere. All points use the same random numbers, so the shape of a contour is more certain than its place.',
  },
  each: {
    headline: eachHeadline,
    tables: eachTables,
    sure: differences,
    limit:
      'One input is varied at a time, so the combined effect of two inputs is not seen. If the real range of an input is wider than 10 %, its effect is larger than its bar: give its range with --vary.',
  },
  plan: {
    headline: planHeadline,
    tables: planTables,
    sure: (confidence, family) =>
      `${confidence} confidence that all ${family} effects lie within their plus-minus at the same time (Bonferroni), as far as a linear model describes the line. Standardised: change of the figure, in its standard deviations, per standard deviation of the factor.`,
    limit:
      'The model is linear in each factor: it shows no curvature and no combined effects. If it explains little, look at single factors as curves.',
  },
}

function headline(result: SweepResult): string[] {
  const lines = kinds[result.kind].headline(result)
  if (result.curve || result.grid) return lines
  const isPriced = result.measures.some(({ name }) => name === costName)
  return [...lines, ...sentences(isPriced && besideCost(result))]
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
      `Only ${grouped(made.shifts, 0)} shifts each: a difference that is equal in all of them is called shown without a plus-minus. ${fewShifts} shifts or more are usual.`,
    kinds[kind].limit,
    startLimit(shift),
    'Jam, roll-change and breakdown figures are inputs: no published data on tape sealers is known. A sweep is only as good as your measurements of them.',
  )
}

/** What to do next. */
export const nextOfSweep = ({ factors, each }: SweepResult): string[] => [
  `Put your chosen value into the scenario (${firstOf((each?.inputs ?? factors).map(({ path }) => path))}), and simulate it with tapeshift run, with more shifts than here.`,
]
