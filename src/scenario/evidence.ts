/** What each value of a scenario rests on: gathered from the tree of its file, beside the numbers. */
import type { z } from 'zod'
import type { Finding } from './finding.js'
import { valueAt } from './issues.js'
import { type Evidence, evident, steps } from './known.js'
import type { Observed } from './law.js'
import { child, type Path, within } from './walk.js'

/** Where a walk stands: in the tree of the file, and in the validated scenario. */
interface Place {
  path: Path
  at: Path
}

/** The evidence of all values in `raw`, which keeps the rules of `schema`; in the order of the tree. */
export function evidenceOf(schema: z.ZodType, raw: unknown, place: Place = { path: [], at: [] }): Evidence[] {
  const told = evident.get(schema)?.evidence(raw)
  const own: Evidence[] = told
    ? [
        {
          path: place.path.join('.'),
          at: [...place.at, ...told.within],
          of: told.of,
          known: told.known,
          fixed: told.fixed,
        },
      ]
    : []
  const held = within(schema, raw)
  if (held) return [...own, ...evidenceOf(held, raw, place)]
  if (typeof raw !== 'object' || raw === null) return own
  const entries = Array.isArray(raw)
    ? raw.map((value, index) => [index, value] as const)
    : Object.entries(raw)
  return [
    ...own,
    ...entries.flatMap(([key, value]) => {
      const next = child(schema, key)
      if (!next || value === undefined) return []
      const step = steps.get(schema)?.of(String(key)) ?? [key]
      return evidenceOf(next, value, { path: [...place.path, key], at: [...place.at, ...step] })
    }),
  ]
}

/** The same with the number of observations that each file brought. */
export const counted = (evidence: readonly Evidence[], scenario: object): Evidence[] =>
  evidence.map((each) =>
    each.known.form === 'observed'
      ? {
          ...each,
          known: { ...each.known, observations: (valueAt(scenario, each.at) as Observed).values.length },
        }
      : each,
  )

/** What may not be said together: that a law is fitted, and that its parameters are guessed too. */
export const evidenceFindings = (evidence: readonly Evidence[]): Finding[] =>
  evidence.flatMap(({ path, known }) =>
    known.form !== 'fitted'
      ? []
      : evidence
          .filter((other) => other.path.startsWith(`${path}.`))
          .map((other) => ({
            code: 'conflict' as const,
            path: other.path.split('.'),
            found: '',
            rule: `\`${path}\` says that it was fitted to observations (\`from\`): what its parameters rest on is said already`,
            fix: 'leave out the guess, or `from`',
            atKey: false,
          })),
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
