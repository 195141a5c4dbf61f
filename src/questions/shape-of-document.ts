/** Whether a document that was read back is whole: what it must look like, by the command that made it. */
import type * as z from 'zod'
import { shown } from '../scenario/printable.js'
import type { DocumentOf, ResultDocument } from './charts-of-document.js'
import { compareShape } from './compare/shape.js'
import { fitShape } from './fit/shape.js'
import { runShape } from './run/shape.js'
import { sizeShape } from './size/shape.js'
import { sweepShape } from './sweep/shape.js'
import { validateShape } from './validate/shape.js'

const shapes: { [Command in ResultDocument['command']]: z.ZodType<DocumentOf<Command>> } = {
  ...{ run: runShape, compare: compareShape, size: sizeShape, sweep: sweepShape },
  ...{ fit: fitShape, validate: validateShape },
}

/** What keeps a document of a command from being read: the place in it and the rule that it breaks; null where it is whole. */
export function faultIn(document: unknown, command: ResultDocument['command']): string | null {
  try {
    const { error } = shapes[command].safeParse(document)
    if (!error) return null
    const issue = deepest(error.issues[0]!)
    return `\`${placeText(issue.path)}\` must be ${ruleOf(issue)}`
  } catch (error) {
    // the stack ends before the nesting does
    if (error instanceof RangeError) return 'it nests too deeply'
    throw error
  }
}

type Issue = z.core.$ZodIssue

/** Of a choice of forms the fault of the first, at its place. */
function deepest(issue: Issue): Issue {
  if (issue.code !== 'invalid_union') return issue
  const first = issue.errors[0]?.[0]
  return first ? deepest({ ...first, path: [...issue.path, ...first.path] }) : issue
}

/** A place such as `held[3].mean`. */
const placeText = (path: readonly PropertyKey[]): string =>
  path
    .map((step) => (typeof step === 'number' ? `[${step}]` : `.${shown(String(step))}`))
    .join('')
    .replace(/^\./, '') || 'the whole'

const words: Readonly<Record<string, string>> = {
  object: 'an object',
  record: 'an object',
  array: 'a list',
  tuple: 'a list of two',
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
}

function ruleOf(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return words[issue.expected] ?? issue.expected
    case 'invalid_value':
      return `one of ${issue.values.map(String).join(', ')}`
    case 'too_small':
      return `at least ${issue.minimum}${counted[issue.origin] ?? ''}`
    case 'too_big':
      return `at most ${issue.maximum}${counted[issue.origin] ?? ''}`
    case 'custom':
      return issue.message
    default:
      return 'as this program writes it'
  }
}

/** What a bound counts, by what it bounds. */
const counted: Readonly<Record<string, string>> = { array: ' long' }
