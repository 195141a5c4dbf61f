/** A scenario as a question takes it: read, with the values that were asked for, and known by its hashes. */
import { hashOfText } from './hash.js'
import { type Loaded, type LoadOptions, loadScenario, type Variant } from './load.js'
import { questionOf } from './question.js'
import type { Resolved } from './resolve.js'

/** Which scenario, and what is to be otherwise in it: in the words of the format. */
export interface ScenarioAsked {
  /** How messages and the line that repeats the study call the file. */
  name?: string | undefined
  /** `PATH=VALUE`, in their order. */
  set?: readonly string[] | undefined
  /** Name of a variant that stands for the scenario. */
  variant?: string | undefined
  /** Any text; the same seed gives the same shifts. */
  seed?: string | undefined
  shifts?: number | undefined
  /** Of the intervals, such as `90 %`. */
  confidence?: string | undefined
  /** Who simulates: `ahead` or `events`. */
  engine?: string | undefined
  /** Further variants, `NAME: PATH=VALUE; PATH=VALUE`. */
  whatIf?: readonly string[] | undefined
}

/** What a scenario draws on beside its text. */
export interface Beside extends Pick<LoadOptions, 'readColumn' | 'readRows'> {
  /** Name and hash of each file that was read. */
  hashes?: () => readonly (readonly [name: string, sha256: string])[]
}

export interface ReadScenario extends Loaded {
  variants: (Variant & { shiftsSha256: string })[]
  /** How it was asked for. */
  asked: ScenarioAsked & { name: string }
  sha256: string
  /**
   * The same of what its shifts depend on: without `study`, for more of them or another confidence change none, and
   * without other variants. Their seed is in `scenario.study.seed`.
   */
  shiftsSha256: string
  /** `sha256` of the scenario with another tree. */
  hashOf: (resolved: Resolved['resolved']) => string
  /** `shiftsSha256` of the scenario with other values. */
  shiftsHash: (resolved: Resolved) => string
  /** What the first comments of the file ask; null where they ask nothing. */
  question: string | null
  /** The same text with other values asked for beside those of before; what is undefined stays. Throws `ScenarioError`. */
  with: (asked: ScenarioAsked) => ReadScenario
}

/** Reads and validates. Throws `ScenarioError`. */
export function readScenario(text: string, asked: ScenarioAsked = {}, beside: Beside = {}): ReadScenario {
  const { name = 'scenario', set = [], variant, whatIf = [] } = asked
  const overrides = [
    { path: 'study.shifts', value: asked.shifts, source: '--shifts' },
    { path: 'study.seed', value: asked.seed, source: '--seed' },
    { path: 'study.confidence', value: asked.confidence, source: '--confidence' },
    { path: 'study.engine', value: asked.engine, source: '--engine' },
  ].filter(({ value }) => value !== undefined)
  const loaded = loadScenario(text, {
    ...beside,
    file: name === '-' ? 'standard input' : name,
    sets: set,
    overrides,
    ...(variant === undefined ? {} : { variant }),
    whatIfs: whatIf,
  })
  const hashWith = (resolved: Record<string, unknown>) => scenarioHash(resolved, beside.hashes?.() ?? [])
  const shiftsHash = ({ resolved }: Resolved) => hashWith({ ...resolved, study: null, variants: null })
  return {
    ...loaded,
    variants: loaded.variants.map((each) => ({ ...each, shiftsSha256: shiftsHash(each) })),
    asked: { ...asked, name },
    sha256: hashWith(loaded.resolved),
    shiftsSha256: shiftsHash(loaded),
    hashOf: hashWith,
    shiftsHash,
    question: questionOf(text),
    with: (more) =>
      readScenario(
        text,
        {
          ...asked,
          ...Object.fromEntries(Object.entries(more).filter(([, value]) => value !== undefined)),
          set: [...set, ...(more.set ?? [])],
          whatIf: [...whatIf, ...(more.whatIf ?? [])],
        },
        beside,
      ),
  }
}

/** Hash of a scenario as resolved and of what the files hold that it draws on. */
function scenarioHash(
  resolved: Record<string, unknown>,
  files: readonly (readonly [name: string, sha256: string])[],
): string {
  const sorted = [...files].sort(([a], [b]) => (a < b ? -1 : 1))
  return hashOfText(JSON.stringify(resolved) + sorted.map((file) => JSON.stringify(file)).join(''))
}
