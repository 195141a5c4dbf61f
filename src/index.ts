/**
 * The public face: all that is promised to programs that use tapeshift, by semantic versioning. It runs in Node and in a browser; the
 * command line itself asks its questions here.
 *
 *     import { compare, loadScenario } from 'tapeshift'
 *
 *     const line = loadScenario(text)
 *     const answer = await compare(line, { variants: ['three-inch'], shifts: 200 })
 *     answer.difference('three-inch', 'throughput') // { mean, low, high, unit, isShown, ... }
 *
 * `fitRecord` takes a plant's record in place of a scenario, and `validateScenario` one beside it: `readRecord` reads it, and is given the
 * rows of its files.
 *
 * A question is a function of a scenario, of what is asked and of who simulates. All of them throw `Fault` where what was asked for, or
 * the scenario, must change; its message says what was found, the rule and the nearest mend. Figures are in SI units, cases a second and
 * the currency of the scenario; without an interval `low` and `high` are null, and where nothing is known `mean` is too.
 */

import type { DifferenceFigure } from './answers/difference-figure.js'
import { figureAt } from './answers/figure-at.js'
import type { Answer } from './answers/made.js'
import type { Figure } from './catalogue/figure.js'
import type { MeasureName } from './catalogue/measures.js'
import { type PageContents, reportPage } from './page/html.js'
import type { ResultDocument } from './questions/charts-of-document.js'
import type { CheckResult } from './questions/check/document.js'
import { check as checkScenario } from './questions/check/study.js'
import type { CompareOptions } from './questions/compare/asked.js'
import type { CompareResult } from './questions/compare/document.js'
import { compare as compareDesigns } from './questions/compare/study.js'
import { onPage, reportOf } from './questions/report-of-document.js'
import type { RunOptions } from './questions/run/asked.js'
import type { RunResult } from './questions/run/document.js'
import { run as runStudy } from './questions/run/study.js'
import type { SizeOptions } from './questions/size/asked.js'
import type { SizeResult } from './questions/size/document.js'
import { size as sizeLine } from './questions/size/study.js'
import type { SweepOptions } from './questions/sweep/asked.js'
import type { SweepResult } from './questions/sweep/document.js'
import { sweep as sweepLine } from './questions/sweep/study.js'
import { type TraceOptions, trace as traceShift } from './questions/trace/study.js'
import type { ValidateOptions } from './questions/validate/asked.js'
import type { ValidateResult } from './questions/validate/document.js'
import { type ValidateAnswer, validate as validateRecord } from './questions/validate/study.js'
import type { ReadRecord } from './record/read-record.js'
import type { ReadScenario, ScenarioAsked } from './scenario/read.js'
import type { Context } from './shifts/simulation.js'

export type { DifferenceFigure } from './answers/difference-figure.js'
export type { Answer } from './answers/made.js'
export type { Figure } from './catalogue/figure.js'
export type { MeasureName } from './catalogue/measures.js'
export type { MeasureKey } from './catalogue/of-line.js'
export type { ResultDocument } from './questions/charts-of-document.js'
export type { FitOptions } from './questions/fit/asked.js'
export type { FitResult } from './questions/fit/document.js'
export { type FitAnswer, fitRecord } from './questions/fit/study.js'
export type { LogTaker, ReadLog } from './record/dialect.js'
export { readRecord } from './record/read.js'
export type { ReadRecord } from './record/read-record.js'
export { Fault, type FaultCode } from './scenario/fault.js'
export type { Problem } from './scenario/problems.js'
export { ScenarioError } from './scenario/problems.js'
export {
  type Beside,
  type ReadScenario,
  readScenario as loadScenario,
  type ScenarioAsked,
} from './scenario/read.js'
export { starterScenario } from './scenario/starter.js'
export type { Executor } from './shifts/executor.js'
export { inProcess } from './shifts/in-process.js'
export type { Context, Extent, Keeper, Progress } from './shifts/simulation.js'
export { version } from './version.js'
export type {
  CheckResult,
  CompareOptions,
  CompareResult,
  RunOptions,
  RunResult,
  SizeOptions,
  SizeResult,
  SweepOptions,
  SweepResult,
  TraceOptions,
  ValidateAnswer,
  ValidateOptions,
  ValidateResult,
}

/** What of the scenario may be otherwise for one question: shifts, seed, confidence, and values by `PATH=VALUE`. */
export type Otherwise = Pick<ScenarioAsked, 'shifts' | 'seed' | 'confidence' | 'engine' | 'set'>

/** The scenario as a question asks it; read again only where something is to be otherwise. */
function otherwise(
  scenario: ReadScenario,
  { shifts, seed, confidence, engine, set, whatIf }: Otherwise & Pick<ScenarioAsked, 'whatIf'>,
): ReadScenario {
  const asked = { shifts, seed, confidence, engine, set, whatIf }
  return Object.values(asked).every((each) => each === undefined) ? scenario : scenario.with(asked)
}

/** The answer of a run. */
export interface RunAnswer extends Answer<RunResult> {
  /** A figure by the name of its measure; undefined where this line has none such. */
  figure(measure: MeasureName): Figure | undefined
}

/** How much does the line put out, what holds it up, what does it cost, and does it hold its target? */
export async function run(
  scenario: ReadScenario,
  options: RunOptions & Otherwise = {},
  context: Context = {},
): Promise<RunAnswer> {
  const answer = await runStudy(otherwise(scenario, options), options, context)
  return { ...answer, figure: (measure) => figureAt(answer.document, measure) }
}

/** The answer of a comparison. The scenario as it stands is the design `base`. */
export interface CompareAnswer extends Answer<CompareResult> {
  /** A figure of a design; undefined where there is none such. */
  figure(design: string, measure: MeasureName): Figure | undefined
  /** A design less the base, shift by shift; undefined where that was not compared. */
  difference(design: string, measure: MeasureName): DifferenceFigure | undefined
}

/** Which design does better, by how much, how sure is that, and what is it worth? All see the same random numbers. */
export async function compare(
  scenario: ReadScenario,
  options: CompareOptions & Otherwise & Pick<ScenarioAsked, 'whatIf'> = {},
  context: Context = {},
): Promise<CompareAnswer> {
  const answer = await compareDesigns(otherwise(scenario, options), options, context)
  const { variants, differences } = answer.document
  return {
    ...answer,
    figure: (design, measure) => variants[design] && figureAt(variants[design], measure),
    difference: (design, measure) => differences[design]?.[measure],
  }
}

/** Which design is the cheapest that keeps its promises? */
export const size = (
  scenario: ReadScenario,
  options: SizeOptions & Omit<Otherwise, 'shifts'> = {},
  context: Context = {},
): Promise<Answer<SizeResult>> => sizeLine(otherwise(scenario, options), options, context)

/** How much is enough, and what matters? */
export const sweep = (
  scenario: ReadScenario,
  options: SweepOptions & Otherwise = {},
  context: Context = {},
): Promise<Answer<SweepResult>> => sweepLine(otherwise(scenario, options), options, context)

/** Can it be built and run at all? Nothing is simulated. */
export const check = (scenario: ReadScenario, options: Pick<Otherwise, 'set'> = {}): CheckResult =>
  checkScenario(otherwise(scenario, options))

/** What happened in one shift, event by event: text in parts, as the shift goes on. */
export const trace = (
  scenario: ReadScenario,
  options: TraceOptions & Pick<Otherwise, 'set' | 'seed'>,
): AsyncGenerator<{ text: string; until: number }> => traceShift(otherwise(scenario, options), options)

/** Is the model the plant? Days of a record that no fit has used, each simulated many times. */
export const validateScenario = (
  scenario: ReadScenario,
  record: ReadRecord,
  options: ValidateOptions & Omit<Otherwise, 'shifts'> = {},
  context: Context = {},
): Promise<ValidateAnswer> => validateRecord(otherwise(scenario, options), record, options, context)

/** The page of a document: one file that needs nothing else. Charts are in it as `pictures`, or drawn by the program `script`. */
export const toPage = (
  document: ResultDocument,
  {
    pictures = [],
    script,
  }: Pick<PageContents, 'script'> & { pictures?: Parameters<typeof reportPage>[1] } = {},
): string =>
  reportPage(reportOf(document), pictures, {
    document: onPage(document),
    ...(script === undefined ? {} : { script }),
  })

/** The rows behind an answer as CSV texts, unrounded, by the name of their file. */
export const toCsv = (answer: Pick<Answer<ResultDocument>, 'rows'>): ReadonlyMap<string, string> =>
  answer.rows()
