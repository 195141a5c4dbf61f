/** What the report of a run says, the same for the terminal and the page: its headline, its limits, its pictures. */

import { drawsText, isOfInputs } from '../../answers/inputs-words.js'
import { startLimit, studyReport } from '../../answers/study-report.js'
import { butCannotWork, cannotWork, costWords } from '../../answers/warnings.js'
import { wholeOf } from '../../catalogue/figure.js'
import type { Display } from '../../catalogue/printed-units.js'
import { briefly } from '../../catalogue/unit-name.js'
import { has } from '../../kinds/traits.js'
import type { Layout } from '../../pictures/layout.js'
import { momentOf } from '../../pictures/moment.js'
import { planSvg } from '../../pictures/plan.js'
import { timeSpaceSvg } from '../../pictures/time-space.js'
import {
  durationText,
  figureText,
  grouped,
  percentText,
  rateText,
  sentences,
  shareOfShifts,
} from '../../report/format.js'
import type { Report } from '../../report/report.js'
import type { Stretch } from '../../shifts/stretch.js'
import { certaintyLines, requirementLines } from './certainty.js'
import type { RunResult } from './document.js'
import { isReplayed, unplayed } from './on-page.js'
import { onAverage, shortfall } from './summary.js'
import { runTables } from './tables.js'

/** What was simulated: shifts, or campaigns of several in a row. */
function observations(count: number, { length, campaign }: RunResult['shift']): string {
  if (campaign === 1) return `${count} shifts of ${durationText(length)}`
  return `${count} campaigns of ${campaign} shifts of ${durationText(length)} in a row`
}

/** The report of a run. */
export function runReport(result: RunResult): Report {
  const { made, shift } = result
  const report = studyReport(result, {
    subtitle: `${observations(made.shifts, shift)} simulated, seed "${made.seed}". Plus-minus: ${percentText(made.confidence)} confidence that the long-run figure lies within it${result.drawn ? ', with the uncertainty of the inputs' : ''}.`,
    headline: headline(result),
    certainty: certaintyLines(result),
    tables: runTables(result),
    limits: limits(result),
    isDrawn: result.drawn !== undefined,
    question:
      result.target === null ? 'What is the output of this line?' : 'Does this line reach its target?',
    assumed: 'Assumed, because the scenario does not say',
    lines: [result],
    facts: {
      trials: 'One line, as in the scenario.',
      estimation: `Means have Student t intervals, shares of shifts Wilson intervals, ratios the ratio estimator${result.measures.throughput?.shrink === undefined ? '' : '; control variates on the arrivals narrow them'}.${result.drawn ? ` Uncertainty of the inputs: ${drawsText(result.drawn)}, on the same random numbers; two-way layout of draws and shifts, degrees of freedom by Welch and Satterthwaite.` : ''}`,
      ...{ warmUp: result.warmUp, hasHand: result.byHand !== null, hasDesigns: false },
    },
  })
  return {
    ...report,
    ...(result.layout && result.stretch
      ? { moment: drawnMoment(result.layout, result.stretch, result.display) }
      : {}),
    ...(result.layout
      ? {
          plan: planSvg(result.layout, {
            limiting: result.byHand?.bottleneck || undefined,
            display: result.display,
          }),
        }
      : {}),
  }
}

/** What a page has room for on a telephone of 390 px, px. */
const telephone = 358

const drawnMoment = (layout: Layout, stretch: Stretch, display: Display) => ({
  ...(isReplayed(stretch) ? {} : { unplayed: unplayed(layout) }),
  wide: timeSpaceSvg(layout, momentOf(stretch), { display }),
  narrow: timeSpaceSvg(layout, momentOf(stretch, 'narrow'), {
    ...{ display, width: telephone, id: 'time-space-narrow' },
  }),
})

function headline(result: RunResult): string[] {
  const { measures, display } = result
  return sentences(
    `Throughput: ${figureText(measures.throughput, display)} of working time, ${figureText(measures.output, display)} a shift.${poorShift(result)}`,
    targetLine(result),
    `A case is in the line for ${figureText(measures['time-in-system'], display)} on average; 95 of 100 cases for less than ${figureText(measures['time-in-system-p95'], display)}.`,
    measures.tape &&
      `It uses ${figureText(measures.tape, display)} of tape a shift (${figureText(measures['tape-mass'], display)}); ${figureText(measures['tape-per-case'], display)} is on each case.`,
    (measures.unsealed?.mean ?? 0) > 0 &&
      `${figureText(measures.unsealed, display)} a shift leave the line unsealed and unnoticed.`,
    measures['cost-per-1000'] &&
      `1000 good cases cost ${figureText(briefly(measures['cost-per-1000']), display)}${costWords('', result)}.`,
    ...requirementLines(result),
  )
}

function targetLine(result: RunResult): string {
  const { target, measures } = result
  const held = measures['target-held']
  if (target === null || !held)
    return 'No target is given, so there is no verdict: add `target:` to the scenario.'
  const share = `target of ${rateText(target)} in ${shareOfShifts(held)} of the shifts`
  return cannotWork(result)
    ? `It would reach its ${share}${verdictOfImpossible(result)}.`
    : `It reaches its ${share}. ${verdict(result)}`
}

/** What may be promised of a single shift; nothing where the shifts are too few to say. */
function poorShift({ measures, display }: RunResult): string {
  const figure = measures['output-p10']
  if (!figure || wholeOf(figure).low === null || wholeOf(figure).high === null) return ''
  return ` 9 of 10 shifts reach ${figureText(figure, display)}.`
}

/** The verdict on the target in words: what the mean says and how sure it is. */
function verdict(result: RunResult): string {
  const said = {
    holds: () => 'On average it reaches the target.',
    'falls short': () =>
      `On average it falls short by ${figureText(shortfall(result.measures.throughput!, result.target!), result.display)}.`,
    open: () =>
      isOfInputs(result.measures.throughput)
        ? 'Not shown whether it reaches the target on average: too little is known of the inputs.'
        : 'These shifts do not show whether it reaches the target on average: simulate more.',
  }
  const found = onAverage(result)
  return found ? said[found]() : ''
}

/** The same of a line that cannot work: both in one sentence. */
function verdictOfImpossible(result: RunResult): string {
  const would = { holds: 'reach the target', 'falls short': 'miss it', open: null }
  const found = onAverage(result)
  const mean = found && would[found] ? ` and on average it would ${would[found]}` : ''
  return `${mean}${butCannotWork(result)}`
}

const limits = (result: RunResult): string[] =>
  sentences(
    ...result.notes,
    startLimit(
      result.shift,
      'The line runs without end: only its steady state is counted, not the warm-up.',
      'Each shift starts with an empty line. The first cases come out late, so the rate is a little below the steady one.',
    ),
    Object.values(result.equipment).some((piece) => has(piece, 'tapes')) &&
      'Jam, roll-change and breakdown figures are inputs: no published data on tape sealers is known. A result is only as good as your measurements of them.',
    result.outputs.length < 10 &&
      `Only ${grouped(result.outputs.length, 0)} shifts: the intervals are rough; 10 shifts or more are usual.`,
  )
