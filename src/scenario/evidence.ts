/** What each value of a scenario rests on: gathered from the tree of its file, beside the numbers. */
import type { z } from 'zod'
import { namesFile } from './cases-file.js'
import { type Finding, findingAt } from './finding.js'
import { valueAt } from './issues.js'
import { type Evidence, evident, type Rests, steps } from './known.js'
import type { Observed } from './law.js'
import { scenarioSchema } from './schema.js'
import type { Assumption } from './walk.js'
import { child, type Path, within } from './walk.js'

/** Where a walk stands: in the tree of the file, and in the validated scenario. */
interface Place {
  path: Path
  at: Path
}

/** A value, or a law, that may say what it rests on; null: it does not. */
interface Value extends Place {
  written: unknown
  rests: Rests | null
}

/** All such values in `raw`, which keeps the rules of `schema`; in the order of the tree, laws before their parameters. */
function valuesIn(schema: z.ZodType, raw: unknown, { path, at }: Place = { path: [], at: [] }): Value[] {
  // a value is read from any text, and a law is a map: no other schema tells
  const { type } = schema.def
  const reader = type === 'pipe' || type === 'object' ? evident.get(schema) : undefined
  const own: Value[] = reader ? [{ path, at, written: raw, rests: reader.evidence(raw) }] : []
  const held = within(schema, raw)
  if (held) return [...own, ...valuesIn(held, raw, { path, at })]
  if (typeof raw !== 'object' || raw === null) return own
  const leading = steps.get(schema)
  const entries = Array.isArray(raw) ? [...raw.entries()] : Object.entries(raw)
  return [
    ...own,
    ...entries.flatMap(([key, value]: [string | number, unknown]) => {
      const next = child(schema, key)
      if (!next || value === undefined) return []
      const step = leading?.of(String(key)) ?? [key]
      return valuesIn(next, value, { path: [...path, key], at: [...at, ...step] })
    }),
  ]
}

/** What the values in the tree of a scenario that keeps its rules rest on. */
export const evidenceOf = (raw: unknown): Evidence[] =>
  valuesIn(scenarioSchema, raw).flatMap(({ path, at, written, rests }) =>
    rests
      ? [
          {
            path: path.join('.'),
            at: [...at, ...rests.within],
            ...{ of: rests.of, known: rests.known, fixed: rests.fixed, written },
          },
        ]
      : [],
  )

/** Paths of what the scenario gives and says nothing more of: taken as exact. Laws as a whole; chances and laws first. */
export function exactValues({
  resolved,
  assumed,
  evidence,
}: {
  resolved: Record<string, unknown>
  assumed: readonly Assumption[]
  evidence: readonly Evidence[]
}): string[] {
  const said = new Set([...assumed, ...evidence].map(({ path }) => path))
  const around = new Set([...said].flatMap(pathsAround))
  const isTold = (path: string) =>
    said.has(path) || around.has(path) || pathsAround(path).some((other) => said.has(other))
  const laws = new Set<string>()
  const exact: { path: string; isFirst: boolean }[] = []
  for (const { path: steps, written } of valuesIn(
    scenarioSchema,
    namesFile(resolved.cases) ? { ...resolved, cases: {} } : resolved,
  )) {
    const path = steps.join('.')
    const isLaw = typeof written === 'object'
    const isParameter = pathsAround(path).some((other) => laws.has(other))
    if (isLaw && !isParameter) laws.add(path)
    if (isParameter || isTold(path) || notOfTheLine.test(path)) continue
    exact.push({ path, isFirst: isLaw || path.endsWith('.chance') })
  }
  return exact.sort((one, other) => Number(other.isFirst) - Number(one.isFirst)).map(({ path }) => path)
}

/** Paths of all that holds what stands at `path`: of `a.b.c` these are `a` and `a.b`. */
const pathsAround = (path: string): string[] =>
  [...path.matchAll(/\./g)].map(({ index }) => path.slice(0, index))

/** How a study is made, and what money is worth by agreement. */
const notOfTheLine = /^study\b/

/** The same with the number of observations that each file brought, and of their days. */
export const counted = (evidence: readonly Evidence[], scenario: object): Evidence[] =>
  evidence.map((each) => {
    if (each.known.form !== 'observed') return each
    const { values, byDay } = valueAt(scenario, each.at) as Observed
    const days = byDay ? { days: byDay.count } : {}
    return { ...each, known: { ...each.known, observations: values.length, ...days } }
  })

/** What may not be said together: that a law is fitted, and that its parameters are guessed too. */
export const evidenceFindings = (evidence: readonly Evidence[]): Finding[] =>
  evidence.flatMap(({ path, known }) =>
    known.form !== 'fitted'
      ? []
      : evidence
          .filter((other) => other.path.startsWith(`${path}.`))
          .map((other) =>
            findingAt(
              other.path.split('.'),
              'conflict',
              `\`${path}\` was fitted to observations (\`from\`), so its parameters have their evidence already`,
              'remove the guess, or `from`',
            ),
          ),
  )

/** A tree of a file with every value as if it were exact: what is counted, fitted or guessed stands for itself alone. */
export function heldFixed({
  resolved,
  evidence,
}: {
  resolved: Record<string, unknown>
  evidence: readonly Evidence[]
}): Record<string, unknown> {
  if (evidence.length === 0) return resolved
  const fixedAt = new Map(evidence.map(({ path, fixed }) => [path, fixed]))
  const copy = (node: unknown, path: string): unknown => {
    const fixed = fixedAt.has(path) ? fixedAt.get(path) : node
    if (typeof fixed !== 'object' || fixed === null) return fixed
    const below = (value: unknown, key: string | number) =>
      copy(value, path === '' ? String(key) : `${path}.${key}`)
    return Array.isArray(fixed)
      ? fixed.map(below)
      : Object.fromEntries(Object.entries(fixed).map(([key, value]) => [key, below(value, key)]))
  }
  return copy(resolved, '') as Record<string, unknown>
}
