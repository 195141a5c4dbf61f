/** A scenario from the tree of its file and the overrides: defaults filled in, every rule asked. */

import { pathInFile, placesOf } from './alike.js'
import { type CaseFiles, namesFile, withoutCasesOfFile } from './cases-file.js'
import { counted, evidenceFindings, evidenceOf } from './evidence.js'
import type { Finding } from './finding.js'
import { isMap } from './is-map.js'
import { findingsOf, valueAt } from './issues.js'
import type { Evidence } from './known.js'
import { nearest } from './nearest.js'
import { type ReadColumn, readObserved } from './observed.js'
import { type Override, originOf } from './overrides.js'
import { addPiece, type PieceFault, removePieces } from './pieces.js'
import {
  betweensIn,
  percentFindings,
  type ReadAs,
  spellPerShift,
  spellSizes,
  spellTape,
} from './plain-words.js'
import { shown } from './printable.js'
import type { Recordings } from './recorded.js'
import { ruleFindings } from './rules.js'
import { type Scenario, scenarioSchema } from './schema.js'
import { writtenOut } from './side-by-side.js'
import { type Assumption, fillDefaults, type Path, type PathFault, setAt } from './walk.js'
import { isWithin } from './within.js'

/** A scenario once it is read. */
export interface Resolved {
  scenario: Scenario
  /** The file's own tree with defaults written out and overrides applied: what a second run would read. */
  resolved: Record<string, unknown>
  /** Every value that nobody named, with the basis of its default. */
  assumed: Assumption[]
  /** What values rest on, where the file says it; all others are taken as exact. */
  evidence: Evidence[]
  /** Values that were written in other words than those of the format. */
  readAs: ReadAs[]
}

/** A finding, and the override that brought what it is about. */
export type Sourced = [Finding, Override | undefined]

/** Reads columns and logs beside the scenario. */
export interface Beside {
  readColumn: ReadColumn | undefined
  recordings: Recordings
  caseFiles: CaseFiles
}

/** The scenario, or all findings why it is none. */
export function resolve(
  raw: Record<string, unknown>,
  overrides: readonly Override[],
  { readColumn, recordings, caseFiles }: Beside,
): { made: Resolved | null; findings: Sourced[] } {
  const tree = structuredClone(raw)
  const sizes = spellSizes(tree, false)
  const before = withoutCasesOfFile(tree, () => fillDefaults(scenarioSchema, tree))
  const findings = change(tree, overrides)
  giveDiverts(tree)
  const changedSizes = spellSizes(tree, true)
  const tapes = spellTape(tree)
  // cases of a file are no part of the tree: it names the file
  const read = namesFile(tree.cases) ? caseFiles.read(tree.cases) : null
  const { parsed, said, unsaid, perShift, odd } = withoutCasesOfFile(tree, () => {
    const unsaid = [...stillAssumed(before, overrides), ...fillDefaults(scenarioSchema, tree)]
    const perShift = spellPerShift(tree, (path) => unsaid.some((each) => each.path === path))
    const odd = percentFindings(tree)
    const result = scenarioSchema.safeParse(tree)
    return { parsed: result, said: result.success ? evidenceOf(tree) : [], unsaid, perShift, odd }
  })
  const assumed = [...unsaid.filter(({ path }) => !perShift.given.includes(path)), ...(read?.assumed ?? [])]
  const readAs = [...changedSizes.readAs, ...sizes.readAs, ...tapes, ...perShift.readAs]
  if (parsed.success && read) parsed.data.cases = read.cases
  const broken = parsed.success
    ? [
        ...evidenceFindings(said),
        ...readObserved(parsed.data, readColumn),
        ...recordings.fill(parsed.data),
        // of cases that could not be read there is nothing to ask
        ...(read && read.findings.length > 0 ? [] : ruleFindings(parsed.data)),
      ]
    : withoutEchoes(parsed.error.issues.flatMap((issue) => findingsOf(issue, scenarioSchema, tree)))
  const ofWords = [...sizes.findings, ...changedSizes.findings, ...odd]
  for (const finding of [...ofWords, ...(read?.findings ?? []), ...broken]) {
    const told = asWritten({ ...finding, found: finding.found || foundIn(tree, finding) }, readAs)
    findings.push([told, causeOf(told.path, overrides)])
  }
  const isSound = parsed.success && findings.length === 0
  if (!isSound) return { made: null, findings }
  const scenario = writtenOut(parsed.data)
  const apart = scenario === parsed.data ? [] : ruleFindings(scenario)
  if (apart.length > 0) return { made: null, findings: asInFile(apart, scenario, overrides) }
  const evidence = counted(said, parsed.data).map((each) => placed(each, scenario))
  const told = [...readAs, ...betweensIn(tree)]
  return { made: { scenario, resolved: tree, assumed, evidence, readAs: told }, findings }
}

/** A finding on a value that is read as another one is of what was written. */
function asWritten(finding: Finding, readAs: readonly ReadAs[]): Finding {
  const read = readAs.find(({ path }) => path.join('.') === finding.path.join('.'))
  return read ? { ...finding, path: read.from, found: read.written } : finding
}

/** Makes the changes in the tree, in place: pieces come first and go last. Returns those that lead nowhere. */
function change(tree: Record<string, unknown>, overrides: readonly Override[]): Sourced[] {
  const done = (what: Override['does']) => overrides.filter(({ does }) => does === what)
  const added = done('add').flatMap((override) => addPiece(tree, override) ?? [])
  const set = done(undefined).flatMap((override): Sourced[] => {
    const fault = setAt(scenarioSchema, tree, override.path, override.value)
    return fault ? [[noSuchPath(override.path, fault), override]] : []
  })
  // what is asked of a piece for all designs may so be asked of those that do not have it
  const removed = removePieces(tree, done('remove'))
  const told = ({ finding, override }: PieceFault): Sourced => {
    const isWhole = finding.path.length === override.path.split('.').length
    return [{ found: '', atKey: isWhole, ...finding }, override]
  }
  return [...added.map(told), ...set, ...removed.map(told)]
}

/** What was assumed, but for what is changed. */
const stillAssumed = (assumed: readonly Assumption[], overrides: readonly Override[]): Assumption[] =>
  assumed.filter(({ path }) => !overrides.some((each) => isWithin(path, each.path)))

/** Where pieces stand side by side their divert has its defaults like all else. */
function giveDiverts({ line }: Record<string, unknown>): void {
  if (!isMap(line)) return
  for (const piece of Object.values(line))
    if (isMap(piece) && Number(piece['side-by-side']) > 1) piece.divert ??= {}
}

/** Findings on pieces that were written out, each once and by its path in the file. */
function asInFile(
  findings: readonly Finding[],
  { alike }: Scenario,
  overrides: readonly Override[],
): Sourced[] {
  return findings.map((finding) => {
    const path = alike ? pathInFile(finding.path, alike) : finding.path
    return [{ ...finding, path }, causeOf(path, overrides)]
  })
}

/** What a value rests on, where it stands in the line as it is built. */
function placed(evidence: Evidence, { alike }: Scenario): Evidence {
  const [at, ...again] = alike ? placesOf(evidence.at, alike) : [evidence.at]
  return again.length > 0 ? { ...evidence, at: at!, again } : { ...evidence, at: at! }
}

/** The override that brought the value at `path`, else the last one that changed which pieces there are. */
const causeOf = (path: Path, overrides: readonly Override[]): Override | undefined =>
  originOf(path, overrides) ?? overrides.findLast(({ does }) => does !== undefined)

/** An override that leads nowhere. */
const noSuchPath = (path: string, { step, within, known }: PathFault): Finding => ({
  code: 'no-such-path',
  path: path.split('.'),
  found: '',
  rule: `\`${shown(step)}\` does not exist in ${within ? `\`${shown(within)}\`` : 'a scenario'}`,
  fix: nearest(step, known),
  atKey: true,
})

function foundIn(tree: unknown, finding: Finding): string {
  const value = valueAt(tree, finding.path)
  return value === undefined || finding.atKey ? '' : shown(value)
}

/** A misspelt key also breaks "exactly one of": the misspelling is the finding, the other its echo. */
const withoutEchoes = (findings: readonly Finding[]): Finding[] =>
  findings.filter((each) => {
    const inside = `${each.path.join('.')}.`
    return (
      each.code !== 'one-of' ||
      !findings.some((other) => other.code === 'unknown-key' && other.path.join('.').startsWith(inside))
    )
  })
