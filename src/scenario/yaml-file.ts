/** Reads a scenario file as the YAML map that it must be. */
import { type Document, type LineCounter, parseDocument } from 'yaml'
import { isMap } from './is-map.js'
import { offsetOf, placeAt } from './locate.js'
import { shown } from './printable.js'
import { problemWithoutPlace, refusal, ScenarioError } from './problems.js'
import type { Path } from './walk.js'

const mostText = 1_000_000

/** A scenario file: the document with its places, and what it holds. */
export interface ScenarioFile {
  document: Document
  raw: Record<string, unknown>
}

/** What a file is to be, as messages call it. */
export interface FileAsked {
  /** With its article. */
  name: string
  /** `the keys ...`, those at its top that it cannot do without. */
  keys: string
  /** The same: where none of them begins a line, it is some other file, of which nothing is repeated. */
  needs: readonly string[]
  /** Command that writes one to start from. */
  starter: string
}

const scenarioAsked: FileAsked = {
  name: 'a scenario',
  keys: 'the keys cases, arrivals, line and shift',
  needs: ['cases', 'arrivals', 'line', 'shift'],
  starter: 'tapeshift new FILE',
}

/** Reads `text`. Throws `ScenarioError` where it is no YAML, or no map. */
export function readYaml(
  text: string,
  file: string,
  lines: LineCounter,
  asked: FileAsked = scenarioAsked,
): ScenarioFile {
  if (text.length > mostText)
    throw refusal(
      file,
      'too-large',
      `${asked.name} must have at most a million characters`,
      'put recorded values into a CSV file beside it',
    )
  try {
    const document = documentOf(text, file, lines, asked)
    const raw: unknown = document.toJS({ maxAliasCount: 100 })
    if (!isMap(raw))
      throw refusal(
        file,
        'not-yaml',
        `${asked.name} must be a YAML map with ${asked.keys}`,
        `start from \`${asked.starter}\``,
        sortOf(raw),
      )
    const hidden = pathOfProto(raw)
    if (hidden)
      throw new ScenarioError([
        {
          ...problemWithoutPlace(file, 'bad-name', '`__proto__` is not a valid name', 'choose another name'),
          ...placeAt(text, lines, offsetOf(document, hidden, true)),
          path: hidden.join('.'),
        },
      ])
    return { document, raw: structuredClone(raw) }
  } catch (error) {
    if (error instanceof ScenarioError) throw error
    throw refusal(
      file,
      'too-large',
      `cannot be read as ${asked.name}: ${whyUnread(error)}`,
      'write out the values instead of nested references',
    )
  }
}

/**
 * Refuses a map that has none of the keys of a scenario: what else a file says may be a secret, and is not repeated key by key.
 * Throws `ScenarioError`.
 */
export function refuseForeign(raw: Record<string, unknown>, file: string): void {
  const { name, keys, needs, starter } = scenarioAsked
  const count = Object.keys(raw).length
  if (count === 0 || needs.some((key) => Object.hasOwn(raw, key))) return
  throw refusal(
    file,
    'not-yaml',
    `${name} must be a YAML map with ${keys}`,
    `start from \`${starter}\``,
    `a map of ${count === 1 ? 'one key, which is' : `${count} keys,`} none of them`,
  )
}

/** What sort of thing stands in a file that is no map, without repeating it. */
function sortOf(raw: unknown): string {
  if (Array.isArray(raw)) return 'a list'
  if (typeof raw === 'string') return 'a text'
  return raw === null || raw === undefined ? 'nothing' : `a ${typeof raw}`
}

/** Whether a text that cannot be read was meant as what is asked for. */
const isMeant = (text: string, { needs }: FileAsked): boolean =>
  new RegExp(`^\\s*(?:${needs.join('|')})\\s*:`, 'm').test(text)

/** The document; throws `ScenarioError` with the first faults of its YAML. */
function documentOf(text: string, file: string, lines: LineCounter, asked: FileAsked): Document {
  const document = parseDocument(text, {
    lineCounter: lines,
    version: '1.2',
    prettyErrors: false,
    logLevel: 'error',
  })
  const faults = [...document.errors, ...document.warnings]
  if (faults.length > 0) {
    const isOurs = isMeant(text, asked)
    throw new ScenarioError(
      // of some other file one is enough
      faults.slice(0, isOurs ? 20 : 1).map((fault) => ({
        ...problemWithoutPlace(
          file,
          'not-yaml',
          `not YAML 1.2: ${isOurs ? inOurWords(fault.message, asked.name) : `its lines are not shown, because the text does not look like ${asked.name}`}`,
          isOurs
            ? 'check the indentation, quotes and braces near the caret'
            : `start from \`${asked.starter}\``,
        ),
        ...placeAt(text, lines, fault.pos[0]),
        ...(isOurs ? {} : { window: '' }),
      })),
    )
  }
  return document
}

function whyUnread(error: unknown): string {
  if (error instanceof RangeError) return 'it nests too deeply'
  return error instanceof Error ? shown(error.message, 200) : 'it cannot be read'
}

/** What the YAML library says, where it speaks of itself. */
function inOurWords(message: string, name: string): string {
  if (message.includes('multiple documents')) return `${name} must be one document, without a second \`---\``
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
