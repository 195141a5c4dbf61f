/** What every answer tells of its study: what made it, the shift it is of, how well it knows what was asked, what was assumed. */
import type { FigurePath } from '../catalogue/measures.js'
import type { Display } from '../catalogue/printed-units.js'
import type { ReadScenario } from '../scenario/read.js'
import type { Scenario } from '../scenario/schema.js'
import { runtime, version } from '../version.js'
import type { About } from './about.js'
import { type Flags, repeatOf } from './repeat.js'
import type { Judgement } from './requirement.js'
import type { Assumed, RestsOn } from './rests-on.js'
import { headed, type Warned, type Warning } from './warning.js'

/** What made the document: with this it can be made again. */
export interface Made {
  version: string
  node: string
  seed: string
  scenario: { title: string; sha256: string }
  shifts: number
  confidence: number
  /** Without control variates. */
  plain: boolean
  repeat: string
}

/** How well the study was to know its figures, and whether it does. */
export interface PrecisionReached {
  /** Largest relative error asked for. */
  asked: number
  of: { measure: string; label: string; reached: number | null; isMet: boolean }[]
  /** Shifts after which it would have stopped in any case. */
  most: number
  isMet: boolean
}

/** What the user required of the result, and what it says of that. */
export interface RequirementJudged {
  require: string
  judgement: Judgement
  /** The measure it is about; null where it is about the precision. */
  measure: string | null
}

/** What was worked out by hand, without simulating, for the figures of the run to be set beside. SI. */
export interface ByHand {
  /** `how` says how `value` comes about. */
  rows: { measure: FigurePath; label: string; value: number | null; unit: string; how: string }[]
  /** Part of the cases that come which each source brings. */
  shareOfArrivals: Record<string, number>
  /** The piece with least to spare; null where no piece needs time. */
  bottleneck: string | null
  /** Part of what comes that this piece lets in: 1 where the line keeps up. */
  shareAdmitted: number
  /** Output that stops and buffers leave, cases/s and cases a shift, and the share by which it is usually off at most. Not in older documents. */
  expected?: { throughput: number; perShift: number; within: number } | null
}

/** The shift as a document tells it, s. */
export interface ShiftTold {
  length: number
  runOut: number
  breaks: { at: number; for: number }[]
  campaign: number
  start: Scenario['shift']['start']
}

/** What the document of every study holds, beside what its question says. */
export interface StudyDocument<Command extends string = string> extends Warned {
  format: 'tapeshift-result/1'
  command: Command
  made: Made
  display: Display
  shift: ShiftTold
  about?: About
  assumed: readonly Assumed[]
  /** What values rest on, and a sentence on those that are taken as exact. Not in older documents. */
  evidence?: readonly RestsOn[]
  exact?: string
  notes: string[]
  /** The file of the rows behind the figures. */
  shifts: string
}

/** The begin of such a document, in its order; `named`: its command, and what else it is named by. */
export const beginOf = <const Named extends { command: string }>(
  named: Named,
  { display, shift }: Scenario,
  { made, warnings }: { made: Made; warnings?: readonly Warning[] | undefined },
) => ({
  format: 'tapeshift-result/1' as const,
  ...named,
  made,
  ...headed(warnings),
  display,
  shift: {
    ...{ length: shift.length, runOut: shift['run-out'], breaks: shift.breaks },
    ...{ campaign: shift.campaign, start: shift.start },
  },
})

/** What a question gives back: its document, and the rows behind the figures. */
export interface Answer<Document extends Warned> {
  document: Document
  /** CSV texts by the name of their file; made when they are asked for. */
  rows: () => ReadonlyMap<string, string>
  /** What was required of the figures is shown. */
  isMet: boolean
  /** What the answer is about cannot work as described. */
  cannotWork: boolean
}

/** What made a document. `flags` make it again, with seed and confidence, which stand before `last`. */
export const madeOf = (
  { scenario, sha256, asked }: ReadScenario,
  { command, shifts, plain }: Pick<Made, 'shifts' | 'plain'> & { command: string },
  flags: Flags,
  last: Flags = {},
): Made => ({
  version,
  node: runtime,
  seed: scenario.study.seed,
  scenario: { title: scenario.title, sha256 },
  shifts,
  confidence: scenario.study.confidence,
  plain,
  repeat: repeatOf(command, asked, {
    ...flags,
    ...{ seed: scenario.study.seed, confidence: asked.confidence, engine: asked.engine, ...last },
  }),
})
