/** From YAML text to a validated scenario, with every finding at its place, the defaults named and the overrides applied. */
import { type Document, LineCounter, parseDocument } from 'yaml'
import type { Finding } from './finding.js'
import { findingsOf, valueAt } from './issues.js'
import { offsetOf, placeAt } from './locate.js'
import { nearest } from './nearest.js'
import { type ReadColumn, readObserved } from './observed.js'
import {
  type Change,
  type Changes,
  type Override,
  originOf,
  readSet,
  variantsOf,
  whatIfsOf,
} from './overrides.js'
import { shown } from './printable.js'
import { type Problem, problemWithoutPlace, ScenarioError } from './problems.js'
import { type ReadRows, Recordings } from './recorded.js'
import { ruleFindings } from './rules.js'
import { type Scenario, scenarioSchema } from './schema.js'
import { type Assumption, fillDefaults, type Path, setAt } from './walk.js'

/** A scenario once it is read. */
export interface Resolved {
  scenario: Scenario
  /** The file's own tree with defaults written out and overrides applied: what a second run would read. */
  resolved: Record<string, unknown>
  /** Every value that nobody named, with the basis of its default. */
  assumed: Assumption[]
}

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

const mostText = 1_000_000
const mostProblems = 100

/** Reads `text`. Throws `ScenarioError` with all findings when it is not a scenario that can be simulated. */
export function loadScenario(text: string, options: LoadOptions = {}): Loaded {
  const file = options.file ?? 'scenario'
  const lines = new LineCounter()
  const { document, raw } = readYaml(text, file, lines)
  const givenAt = (path: Path, override: Override | undefined, atKey = false): GivenAt => {
    if (override && !override.at) return { source: override.source, line: 0, column: 0, window: '' }
    const offset = override?.at ? offsetOf(document, override.at, false) : offsetOf(document, path, atKey)
    return { source: file, ...placeAt(text, lines, offset) }
  }
  const locate = (finding: Finding, override: Override | undefined): Problem => {
    const { atKey, path, ...rest } = finding
    return { ...rest, path: shown(path.join('.'), 200), ...givenAt(path, override, atKey) }
  }

  const recordings = new Recordings(options.readRows)
  const problems: Problem[] = []
  const attempt = (overrides: readonly Override[], problems: Problem[]): Resolved | null => {
    const tree = structuredClone(raw)
    const findings: [Finding, Override | undefined][] = []
    let assumed = fillDefaults(scenarioSchema, tree)
    for (const override of overrides) {
      const fault = setAt(scenarioSchema, tree, override.path, override.value)
      if (fault)
        findings.push([
          {
            code: 'no-such-path',
            path: override.path.split('.'),
            found: '',
            rule: `\`${shown(fault.step)}\` does not exist in ${fault.within ? `\`${shown(fault.within)}\`` : 'a scenario'}`,
            fix: nearest(fault.step, fault.known),
            atKey: true,
          },
          override,
        ])
      assumed = assumed.filter(
        (each) => each.path !== override.path && !each.path.startsWith(`${override.path}.`),
      )
    }
    assumed.push(...fillDefaults(scenarioSchema, tree))
    const parsed = scenarioSchema.safeParse(tree)
    const own = parsed.success
      ? [
          ...readObserved(parsed.data, options.readColumn),
          ...recordings.fill(parsed.data),
          ...ruleFindings(parsed.data),
        ]
      : withoutEchoes(parsed.error.issues.flatMap((issue) => findingsOf(issue, scenarioSchema, tree)))
    for (const finding of own)
      findings.push([
        { ...finding, found: finding.found || foundIn(tree, finding) },
        originOf(finding.path, overrides),
      ])
    for (const [finding, override] of findings) {
      const problem = locate(finding, override)
      if (problems.length < mostProblems && !problems.some((known) => isSame(known, problem)))
        problems.push(problem)
    }
    return parsed.success && findings.length === 0 ? { scenario: parsed.data, resolved: tree, assumed } : null
  }

  const sets = [
    ...(options.sets ?? []).map((set) => readSet(set)),
    ...(options.overrides ?? []).map((each) => ({ ...each, at: null })),
  ]
  const own = variantsOf(raw)
  const variants = [...own, ...whatIfsOf(options.whatIfs ?? [], own)]
  const chosen = variants.find((each) => each.name === options.variant)
  if (options.variant !== undefined && !chosen)
    throw new ScenarioError([
      problemWithoutPlace(
        file,
        'no-such-path',
        `there is no variant \`${shown(options.variant)}\``,
        nearest(
          options.variant,
          variants.map((v) => v.name),
        ),
      ),
    ])
  const chosenOnes = [...(chosen?.overrides ?? []), ...sets]
  // what is asked of the command line for one design comes after what is asked for all
  const changesOf = (variant: Changes): Override[] =>
    own.includes(variant) ? [...variant.overrides, ...sets] : [...sets, ...variant.overrides]
  const base = attempt(chosenOnes, problems)
  const read = variants.map((variant) => (variant === chosen ? base : attempt(changesOf(variant), problems)))
  if (!base || problems.length > 0) throw new ScenarioError(problems)
  const placeOf = (path: Path): GivenAt | null => {
    const override = originOf(path, chosenOnes)
    return override || valueAt(raw, path) !== undefined ? givenAt(path, override) : null
  }
  return {
    ...base,
    variants: variants.map(({ name, note, overrides }, index) => ({
      ...read[index]!,
      name,
      note,
      set: Object.fromEntries(overrides.map(({ path, value }) => [path, value])),
    })),
    placeOf,
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

const isSame = (a: Problem, b: Problem): boolean =>
  a.code === b.code && a.path === b.path && a.rule === b.rule && a.line === b.line && a.column === b.column

function readYaml(
  text: string,
  file: string,
  lines: LineCounter,
): { document: Document; raw: Record<string, unknown> } {
  if (text.length > mostText)
    throw new ScenarioError([
      problemWithoutPlace(
        file,
        'too-large',
        'a scenario is at most a million characters',
        'put recorded values into a CSV file beside it',
      ),
    ])
  const notAMap = (found: string) =>
    new ScenarioError([
      problemWithoutPlace(
        file,
        'not-yaml',
        'a scenario is a YAML map with the keys cases, arrivals, line and shift',
        'start from `tapeshift new FILE`',
        found,
      ),
    ])
  try {
    const document = parseDocument(text, {
      lineCounter: lines,
      version: '1.2',
      prettyErrors: false,
      logLevel: 'error',
    })
    const faults = [...document.errors, ...document.warnings]
    if (faults.length > 0)
      throw new ScenarioError(
        faults.slice(0, 20).map((fault) => ({
          ...problemWithoutPlace(
            file,
            'not-yaml',
            `not YAML 1.2: ${inOurWords(fault.message)}`,
            'look at the indent, the quotes and the braces near the caret',
          ),
          ...placeAt(text, lines, fault.pos[0]),
        })),
      )
    const raw: unknown = document.toJS({ maxAliasCount: 100 })
    if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) throw notAMap(shown(raw))
    const hidden = pathOfProto(raw)
    if (hidden)
      throw new ScenarioError([
        {
          ...problemWithoutPlace(file, 'bad-name', '`__proto__` is no name', 'choose another name'),
          ...placeAt(text, lines, offsetOf(document, hidden, true)),
          path: hidden.join('.'),
        },
      ])
    return { document, raw: structuredClone(raw) as Record<string, unknown> }
  } catch (error) {
    if (error instanceof ScenarioError) throw error
    const why =
      error instanceof RangeError
        ? 'it nests too deeply'
        : error instanceof Error
          ? shown(error.message, 200)
          : 'it cannot be read'
    throw new ScenarioError([
      problemWithoutPlace(
        file,
        'too-large',
        `cannot be read as a scenario: ${why}`,
        'write the values out in place of nested references',
      ),
    ])
  }
}

/** What the YAML library says, where it speaks of itself. */
function inOurWords(message: string): string {
  if (message.includes('multiple documents')) return 'a scenario is one document, without a second `---`'
  if (message.includes('call stack')) return 'it nests too deeply'
  return shown(message, 200)
}

/** Where a key `__proto__` stands: the language would drop it without a word. */
function pathOfProto(value: unknown, path: Path = []): Path | null {
  if (typeof value !== 'object' || value === null) return null
  if (Object.hasOwn(value, '__proto__')) return [...path, '__proto__']
  for (const [key, inner] of Object.entries(value)) {
    const found = pathOfProto(inner, [...path, key])
    if (found) return found
  }
  return null
}
