/** Examples in the README and the manual: their fences in order, and what a quotation is of an output. */
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('../..', import.meta.url))
const texts = path.join(root, 'src/manual/texts')

/** Files with examples, by their place in the project. */
export const files = [
  'README.md',
  ...readdirSync(texts)
    .sort()
    .map((name) => `src/manual/texts/${name}`),
]

/** A fence: its language, the words behind that, and its lines. */
export interface Fence {
  language: string
  marks: readonly string[]
  text: string
  /** Where its text begins in the file. */
  at: number
}

export const textOf = (file: string): string => readFileSync(path.join(root, file), 'utf8')

/** All fences of a text, in order. */
export const fencesOf = (text: string): Fence[] =>
  [...text.matchAll(/^```(\w+)([^\n]*)\n([\s\S]*?)^```$/gm)].map((match) => ({
    language: match[1]!,
    marks: match[2]!.trim().split(' ').filter(Boolean),
    text: match[3]!,
    at: match.index + match[0].indexOf('\n') + 1,
  }))

/** Commands of the program in a shell fence, as their arguments. */
export const commandsOf = ({ text }: Fence): string[][] =>
  text
    .split('\n')
    .filter((line) => line.startsWith('tapeshift '))
    .map((line) => [...line.matchAll(/"([^"]*)"|(\S+)/g)].map((match) => match[1] ?? match[2]!).slice(1))

/** The same command in this thread; of what is marked `quick` with few shifts. Files are written only where a later command reads them. */
export function asRun(argv: readonly string[], { marks }: Fence, isRead: boolean): string[] {
  const studies = ['run', 'compare', 'size', 'sweep', 'validate']
  if (!studies.includes(argv[0]!)) return [...argv]
  const few = marks.includes('quick') && argv[0] !== 'validate' ? ['--shifts', '3', '--draws', '10'] : []
  return [...argv, ...few, '--workers', '1', ...(isRead ? [] : ['--no-files'])]
}

/**
 * Part of an output by its first word: a row of a screen with the lines that are indented below it, or a paragraph, which ends at an
 * empty line or where another design begins. Null where no line begins so.
 */
export function partOf(output: string, word: string): string | null {
  const lines = output.replaceAll('\u2009', ' ').split('\n')
  const begin = lines.findIndex(
    (line) => line.startsWith(word) && /^(?:\s|:|$)/.test(line.slice(word.length)),
  )
  if (begin < 0) return null
  const isRow = /^\S+(?: \S+)? {2,}/.test(lines[begin]!)
  const rest = lines.slice(begin + 1)
  const end = rest.findIndex((line) => line === '' || (isRow ? /^\S/ : /^[a-z]+-[a-z]+ /).test(line))
  return lines
    .slice(begin, begin + 1 + (end < 0 ? rest.length : end))
    .map((line) => line.trimEnd())
    .join('\n')
}
