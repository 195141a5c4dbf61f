/** Turns what the schema library reports into findings in this project's words. */
import type { z } from 'zod'
import { kindKeys } from '../kinds/keys.js'
import type { Finding } from './finding.js'
import { isGuess } from './known.js'
import { mapFix } from './map-fix.js'
import { nearest } from './nearest.js'
import { shown } from './printable.js'
import type { ProblemCode } from './problems.js'
import { sizeOf } from './spellings.js'
import { hasUnit, unitSize } from './units.js'
import { formAt, keysAt, type Path } from './walk.js'

type Issue = z.core.$ZodIssue

/** The value at `path`, or undefined. */
export function valueAt(raw: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null
        ? (value as Record<string | number, unknown>)[key]
        : undefined,
    raw,
  )
}

const typeWords: Record<string, string> = {
  object: 'a map of keys',
  record: 'a map of names',
  array: 'a list',
  tuple: 'a list of two',
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
}

/** Of units, a letter makes another one: only a spelling of the same is suggested. */
function wordFix(word: string, words: readonly string[]): string {
  if (!words.every((each) => hasUnit('time', each))) return nearest(word, words)
  const size = sizeOf('time', word)
  const same = words.find((each) => size !== null && unitSize('time', each) === size)
  return same === undefined ? `allowed here: ${words.join(', ')}` : nearest(same, words)
}

/** What one issue says: its path, the value there, and how a finding on it is made. */
interface Told {
  path: Path
  value: unknown
  finding(code: ProblemCode, rule: string, fix: string, atKey?: boolean): Finding
  /** It is not there, and must be. */
  missing(fix: string, more?: string): Finding
}

function toldOf(issue: Issue, raw: unknown, base: Path): Told {
  const path = [...base, ...(issue.path as Path)]
  const value = valueAt(raw, path)
  const finding: Told['finding'] = (code, rule, fix, atKey = false) => ({
    code,
    path,
    found: value === undefined ? '' : shown(value),
    rule,
    fix,
    atKey,
  })
  return {
    path,
    value,
    finding,
    missing: (fix, more = '') =>
      finding('missing-key', `\`${shown(path.at(-1))}\` is missing and must be given${more}`, fix, true),
  }
}

/** All findings of one issue; a union's are those of the member that suits what was written. */
export function findingsOf(issue: Issue, schema: z.ZodType, raw: unknown, base: Path = []): Finding[] {
  const told = toldOf(issue, raw, base)
  if (issue.code === 'unrecognized_keys') return unknownKeys(issue, told, schema, raw)
  if (issue.code === 'invalid_union') return unionFindings(issue, told, schema, raw)
  return [findingOf(issue, told, () => keysAt(schema, raw, issue.path as Path))]
}

type IssueOf<Code extends Issue['code']> = Extract<Issue, { code: Code }>

const unknownKeys = (
  { keys }: IssueOf<'unrecognized_keys'>,
  { path }: Told,
  schema: z.ZodType,
  raw: unknown,
): Finding[] =>
  keys.map((key) => ({
    code: 'unknown-key',
    path: [...path, key],
    found: '',
    rule: `\`${shown(key)}\` is not a key of ${path.length ? `\`${shown(path.join('.'))}\`` : 'a scenario'}`,
    fix: /^\d{3}(?!\d)/.test(key)
      ? 'a comma ends a value in { }: write thousands without it, such as 4000'
      : nearest(key, keysAt(schema, raw, path) ?? []),
    atKey: true,
  }))

function unionFindings(
  { errors }: IssueOf<'invalid_union'>,
  { path, value, finding }: Told,
  schema: z.ZodType,
  raw: unknown,
): Finding[] {
  if (errors.length === 0) {
    const types = Object.keys(kindKeys)
    return value === undefined
      ? [finding('missing-key', '`type` is missing and must be given', `one of ${types.join(', ')}`, true)]
      : [finding('not-allowed', `one of ${types.join(', ')}`, nearest(shown(value), types))]
  }
  const isMap = typeof value === 'object' && value !== null
  const words = errors
    .flat()
    .flatMap((inner) => (inner.code === 'invalid_value' ? inner.values.map(String) : []))
  if (!isMap && words.length > 0)
    return [finding('not-allowed', `a number or ${words.join(', ')}`, nearest(shown(value), words))]
  const form = formAt(schema, raw, path)
  const usual = isMap && !Array.isArray(value) && !isGuess(value) ? errors.length - 1 : 0
  const member = errors[form ?? usual]!
  return member.flatMap((inner) => findingsOf(inner, schema, raw, path))
}

/** A value of another type than is needed; `keys`: those that may stand there. */
function typeFinding(
  expected: string,
  { path, value, finding, missing }: Told,
  keys: () => string[] | null,
): Finding {
  const wanted = typeWords[expected] ?? expected
  const isMap = expected === 'object' || expected === 'record'
  const fix = (usual: string) => (isMap ? mapFix(path, value, keys(), usual) : usual)
  if (value === undefined) return missing(fix(`add ${wanted}`))
  if (isGuess(value))
    return finding(
      'not-allowed',
      `a guess is not allowed here: it must be ${wanted}, and is taken as exact`,
      `write ${wanted} here`,
    )
  return finding('wrong-type', `must be ${wanted}`, fix(`write ${wanted} here`))
}

function findingOf(issue: Issue, told: Told, keys: () => string[] | null): Finding {
  const { value, finding, missing } = told
  switch (issue.code) {
    case 'invalid_type':
      return typeFinding(issue.expected, told, keys)
    case 'invalid_value': {
      const words = issue.values.map(String)
      const rule = `one of ${words.join(', ')}`
      return value === undefined ? missing(rule) : finding('not-allowed', rule, wordFix(shown(value), words))
    }
    case 'too_small':
    case 'too_big': {
      const bound = `${issue.code === 'too_small' ? `at least ${issue.minimum}` : `at most ${issue.maximum}`}${counted[issue.origin] ?? ''}`
      return finding('out-of-range', `must be ${bound}`, `use a value of ${bound}`)
    }
    case 'invalid_format':
      return finding('wrong-type', 'must have the form of the format', seeStarter)
    case 'invalid_key':
      return finding(
        'bad-name',
        'a name must begin with a letter and have only letters, digits, spaces, - and _, at most 40 in all',
        'choose another name',
        true,
      )
    case 'custom':
      return ownFinding(issue, told)
    default:
      return finding('wrong-type', issue.message, seeStarter)
  }
}

/** A rule of the format that is no rule of the schema library: it brings its code and its mend. */
function ownFinding({ message, params }: IssueOf<'custom'>, { value, finding, missing }: Told): Finding {
  const { code = 'conflict', fix = '' } = (params ?? {}) as { code?: ProblemCode; fix?: string }
  if (value === undefined && (code === 'not-a-quantity' || code === 'no-unit'))
    return missing(fix, `: ${message}`)
  return finding(code, message, fix, code === 'one-of' || code === 'missing-key')
}

/** What a bound counts, by what it bounds. */
const counted: Readonly<Record<string, string>> = { array: ' entries', string: ' characters' }

const seeStarter = 'see the starter scenario: `tapeshift new FILE`'
