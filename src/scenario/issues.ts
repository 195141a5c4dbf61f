/** Turns what the schema library reports into findings in this project's words. */
import type { z } from 'zod'
import { kindKeys } from '../kinds/keys.js'
import type { Finding } from './finding.js'
import { nearest } from './nearest.js'
import { shown } from './printable.js'
import type { ProblemCode } from './problems.js'
import { sizeOf } from './spellings.js'
import { hasUnit, unitSize } from './units.js'
import { keysAt, type Path } from './walk.js'

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
  return same === undefined ? `what may stand here: ${words.join(', ')}` : nearest(same, words)
}

/** All findings of one issue; a union's are those of the member that suits what was written. */
export function findingsOf(issue: Issue, schema: z.ZodType, raw: unknown, base: Path = []): Finding[] {
  const path = [...base, ...(issue.path as Path)]
  const value = valueAt(raw, path)
  const finding = (code: ProblemCode, rule: string, fix: string, atKey = false): Finding => ({
    code,
    path,
    found: value === undefined ? '' : shown(value),
    rule,
    fix,
    atKey,
  })
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => ({
        code: 'unknown-key',
        path: [...path, key],
        found: '',
        rule: `\`${shown(key)}\` is no key of ${path.length ? `\`${shown(path.join('.'))}\`` : 'a scenario'}`,
        fix: nearest(key, keysAt(schema, raw, path) ?? []),
        atKey: true,
      }))
    case 'invalid_union': {
      if (issue.errors.length === 0) {
        const types = Object.keys(kindKeys)
        const given = valueAt(raw, path)
        return given === undefined
          ? [finding('missing-key', '`type` must be given', `one of ${types.join(', ')}`, true)]
          : [finding('not-allowed', `one of ${types.join(', ')}`, nearest(shown(given), types))]
      }
      const isMap = typeof value === 'object' && value !== null
      const words = issue.errors
        .flat()
        .flatMap((inner) => (inner.code === 'invalid_value' ? inner.values.map(String) : []))
      if (!isMap && words.length > 0)
        return [finding('not-allowed', `a number or ${words.join(', ')}`, nearest(shown(value), words))]
      const member = isMap && !Array.isArray(value) ? issue.errors.at(-1)! : issue.errors[0]!
      return member.flatMap((inner) => findingsOf(inner, schema, raw, path))
    }
    case 'invalid_type':
      if (value === undefined)
        return [
          finding(
            'missing-key',
            `\`${shown(path.at(-1))}\` must be given`,
            `add ${typeWords[issue.expected] ?? issue.expected}`,
            true,
          ),
        ]
      return [
        finding(
          'wrong-type',
          `must be ${typeWords[issue.expected] ?? issue.expected}`,
          `write ${typeWords[issue.expected] ?? issue.expected} here`,
        ),
      ]
    case 'invalid_value': {
      const words = issue.values.map(String)
      if (value === undefined)
        return [
          finding(
            'missing-key',
            `\`${shown(path.at(-1))}\` must be given`,
            `one of ${words.join(', ')}`,
            true,
          ),
        ]
      return [finding('not-allowed', `one of ${words.join(', ')}`, wordFix(shown(value), words))]
    }
    case 'too_small':
    case 'too_big': {
      const bound = issue.code === 'too_small' ? `at least ${issue.minimum}` : `at most ${issue.maximum}`
      const what = issue.origin === 'array' ? ' entries' : issue.origin === 'string' ? ' characters' : ''
      return [finding('out-of-range', `must be ${bound}${what}`, `a value of ${bound}${what}`)]
    }
    case 'invalid_format':
      return [
        finding(
          'wrong-type',
          'must have the form that the format gives',
          'see the starter scenario: `tapeshift new FILE`',
        ),
      ]
    case 'invalid_key':
      return [
        finding(
          'bad-name',
          'a name begins with a letter and holds letters, digits, spaces, - and _, at most 40',
          'choose another name',
          true,
        ),
      ]
    case 'custom': {
      const { code = 'conflict', fix = '' } = (issue.params ?? {}) as { code?: ProblemCode; fix?: string }
      if (value === undefined && (code === 'not-a-quantity' || code === 'no-unit'))
        return [
          finding('missing-key', `\`${shown(path.at(-1))}\` must be given: ${issue.message}`, fix, true),
        ]
      return [finding(code, issue.message, fix, code === 'one-of' || code === 'missing-key')]
    }
    default:
      return [finding('wrong-type', issue.message, 'see the starter scenario: `tapeshift new FILE`')]
  }
}
