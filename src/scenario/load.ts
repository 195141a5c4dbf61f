/** From YAML text to a validated scenario, with every finding at its place, the defaults named and the overrides applied. */
import { LineCounter } from 'yaml'
import { pathInFile } from './alike.js'
import { CaseFiles, namesFile } from './cases-file.js'
import { valueAt } from './issues.js'
import { offsetOf, placeAt } from './locate.js'
import { nearest } from './nearest.js'
import type { ReadColumn } from './observed.js'
import {
  type Change,
  type Changes,
  type Override,
  ofPieces,
  originOf,
  readSet,
  variantsOf,
  whatIfsOf,
  writtenSet,
} from './overrides.js'
import { shown } from './printable.js'
import { type Problem, refusal, ScenarioError } from './problems.js'
import { type ReadRows, Recordings } from './recorded.js'
import { type Resolved, resolve, type Sourced } from './resolve.js'
import type { Path } from './walk.js'
import { readYaml, refuseForeign } from './yaml-file.js'

/** A variant once it is read: the scenario with its changes, and what these are. */
export interface Variant extends Resolved {
  name: string
  note: string
  /** Values by dotted path, as they were written. */
  set: Record<string, unknown>
}

/** What a scenario file holds once it is read. */
export interface Loaded extends Resolved {
  /** The variants, those asked for by `whatIfs` after those of the file. */
  variants: Variant[]
  /** Where the value at `path` was given; null where nobody gave it and it is assumed. */
  placeOf: (path: Path) => GivenAt | null
  /**
   * The scenario, or a variant of it by name (null: none), with further changes, which come last. Throws `ScenarioError` where that is
   * no scenario.
   */
  vary: (variant: string | null, changes: readonly Change[]) => Resolved
}

/** Where a value was given: line and column from 1 in the file, or 0 where the option that `source` names brought it. */
export type GivenAt = Pick<Problem, 'source' | 'line' | 'column' | 'window'>

export interface LoadOptions {
  /** Shown in messages. */
  file?: string
  /** `PATH=VALUE` texts, applied in order, after the variant. */
  sets?: readonly string[]
  /** Values that other options stand for, applied last: `source` names the option in messages. */
  overrides?: readonly Change[]
  /** Name of the variant to apply. */
  variant?: string
  /** Variants that the file does not have: `NAME: PATH=VALUE; PATH=VALUE`, the name may be left out. */
  whatIfs?: readonly string[]
  /** Reads a column of a CSV file beside the scenario. */
  readColumn?: ReadColumn
  /** Reads a recorded log beside the scenario, row by row. */
  readRows?: ReadRows
}

const mostProblems = 100

/** Reads `text`. Throws `ScenarioError` with all findings when it is not a scenario that can be simulated. */
export function loadScenario(text: string, options: LoadOptions = {}): Loaded {
  const file = options.file ?? 'scenario'
  const lines = new LineCounter()
  const { document, raw } = readYaml(text, file, lines)
  refuseForeign(raw, file)
  const givenAt: GivenAtPath = (path, override, atKey = false) => {
    if (override && !override.at) return { source: override.source, line: 0, column: 0, window: '' }
    const [place, isKey] = override?.at
      ? [placeWithin(override, path), atKey && override.does === 'add']
      : [path, atKey]
    const offset = offsetOf(document, place, isKey)
    return { source: file, ...placeAt(text, lines, offset) }
  }
  const beside = {
    readColumn: options.readColumn,
    recordings: new Recordings(options.readRows),
    caseFiles: new CaseFiles(options.readRows),
  }
  const attempt = (overrides: readonly Override[], problems: Problem[]): Resolved | null => {
    const { made, findings } = resolve(raw, overrides, beside)
    addProblems(problems, findings, givenAt)
    return made
  }
  const { sets, variants, chosen, changesOf } = changesAsked(raw, file, options)
  const problems: Problem[] = []
  const chosenOnes = [...(chosen?.overrides ?? []), ...sets]
  const base = attempt(chosenOnes, problems)
  const read = variants.map((variant) => (variant === chosen ? base : attempt(changesOf(variant), problems)))
  if (!base || problems.length > 0) throw new ScenarioError(problems)
  return {
    ...base,
    variants: variants.map(({ name, note, overrides }, index) => ({
      ...read[index]!,
      name,
      note,
      set: writtenSet(overrides),
    })),
    placeOf(at) {
      const { alike } = base.scenario
      const inFile = alike ? pathInFile(at, alike) : at
      const ofSize = base.readAs.find(({ path: side }) => side.join('.') === inFile.join('.'))?.from
      const path = inFile[0] === 'cases' && namesFile(raw.cases) ? ['cases', 'file'] : (ofSize ?? inFile)
      const override = originOf(path, chosenOnes)
      return override || valueAt(raw, path) !== undefined ? givenAt(path, override) : null
    },
    vary(name, changes) {
      const varied = name === null ? chosen : variants.find((each) => each.name === name)
      const found: Problem[] = []
      const last = changes.map((change) => ({ ...change, at: null }))
      const resolved = attempt([...(varied ? changesOf(varied) : sets), ...last], found)
      if (resolved === null) throw new ScenarioError(found)
      return resolved
    },
  }
}

/** Where in the file an override gives what is at `path`: of a piece that is added, inside it. */
function placeWithin(override: Override, path: Path): Path {
  const { at, does } = override
  const isInside = does === 'add' && originOf(path, [override]) !== undefined
  return [...at!, ...(isInside ? path.slice(2) : [])]
}

type GivenAtPath = (path: Path, override: Override | undefined, atKey?: boolean) => GivenAt

/** The changes that the file and the options name: those for all designs, and the variants. Throws where the chosen one is none of them. */
function changesAsked(raw: Record<string, unknown>, file: string, options: LoadOptions) {
  const sets = [
    ...(options.sets ?? []).flatMap((set) => ofPieces(readSet(set))),
    ...(options.overrides ?? []).map((each) => ({ ...each, at: null })),
  ]
  const own = variantsOf(raw)
  const variants = [...own, ...whatIfsOf(options.whatIfs ?? [], own)]
  const chosen = variants.find((each) => each.name === options.variant)
  const names = variants.map(({ name }) => name)
  if (options.variant !== undefined && !chosen)
    throw refusal(
      file,
      'no-such-path',
      `there is no variant \`${shown(options.variant)}\``,
      nearest(options.variant, names),
    )
  // what is asked of the command line for one design comes after what is asked for all
  const changesOf = (variant: Changes): Override[] =>
    own.includes(variant) ? [...variant.overrides, ...sets] : [...sets, ...variant.overrides]
  return { sets, variants, chosen, changesOf }
}

/** Adds findings, each at its place, but for what is known already, and no more than are read. */
function addProblems(problems: Problem[], findings: readonly Sourced[], givenAt: GivenAtPath): void {
  for (const [{ atKey, path, ...rest }, override] of findings) {
    const problem = { ...rest, path: shown(path.join('.'), 200), ...givenAt(path, override, atKey) }
    // a change of the pieces is the cause of what the file alone has not
    const isCause = override?.does !== undefined && originOf(path, [override]) === undefined
    const isKnown = problems.some((known) => (isCause ? isAlike : isSame)(known, problem))
    if (problems.length < mostProblems && !isKnown) problems.push(problem)
  }
}

const isAlike = (a: Problem, b: Problem): boolean =>
  a.code === b.code && a.path === b.path && a.rule === b.rule

const isSame = (a: Problem, b: Problem): boolean =>
  isAlike(a, b) && a.line === b.line && a.column === b.column
