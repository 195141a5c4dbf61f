/** The change from one text of a scenario to another in words that the command line takes, and the command that repeats an answer. */
import { repeatOf } from '../answers/repeat.js'
import type { Override } from '../scenario/overrides.js'
import { unlessNoScenario } from '../scenario/problems.js'
import { readScenario } from '../scenario/read.js'
import { changesBetween } from './changes.js'
import { lineOf, treeOf } from './draft/yaml-text.js'
import { besideOf } from './study/beside.js'
import type { Home } from './study/messages.js'

/** The change in the words of the command line, as far as it can be said in them: else the file is to be saved. */
export interface Said {
  /** Values of `--set`, in their order; null where these would not do with the variants of the file. */
  sets: string[] | null
  /** A variant in YAML, to stand under `variants`. */
  variant: string
}

/** What differs between two texts that can be read; `home`: what the first of them is called, and what lies beside it. */
export function saidChange(before: string, after: string, home: Home, name = 'changed'): Said | null {
  const [from, to] = [treeOf(before), treeOf(after)]
  const changes = from && to && changesBetween(from, to)
  if (!changes) return null
  const sets = changes.map(setText)
  return { sets: isRead(before, sets, home) ? sets : null, variant: variantText(name, changes) }
}

/** Options hold for the variants of a file too, which may then contradict them. */
function isRead(text: string, set: readonly string[], { name, files }: Home): boolean {
  return 'made' in unlessNoScenario(() => readScenario(text, { name, set }, besideOf(files)))
}

/** `PATH=VALUE`; of pieces `add.NAME=PIECE` and `remove=NAME`. */
function setText({ path, value, does }: Override): string {
  if (does === 'add') return `add.${path.slice('line.'.length)}=${lineOf(value)}`
  return does === 'remove' ? `remove=${lineOf(value)}` : `${path}=${lineOf(value)}`
}

function variantText(name: string, changes: readonly Override[]): string {
  const of = (does: Override['does']) => changes.filter((each) => each.does === does)
  const entry = ({ path, value }: Override, cut = '') =>
    `      ${lineOf(path.slice(cut.length))}: ${lineOf(value)}`
  const part = (key: string, lines: readonly string[]) => (lines.length > 0 ? [`    ${key}:`, ...lines] : [])
  const removed = of('remove').map(({ value }) => value)
  return [
    'variants:',
    `  ${lineOf(name)}:`,
    ...part(
      'add',
      of('add').map((each) => entry(each, 'line.')),
    ),
    ...part(
      'set',
      of(undefined).map((each) => entry(each)),
    ),
    ...(removed.length > 0 ? [`    remove: ${lineOf(removed)}`] : []),
    '',
  ].join('\n')
}

/** What an answer says of how it was asked: it was drawn where its inputs have evidence, or they were held as given. */
interface Answered {
  made: { seed: string; shifts: number }
  evidence?: readonly unknown[]
  drawn?: unknown
}

/** The command that gives the same figures: of the file as it came, called `name`, with the change, or of the changed file once it is saved under its name. */
export function repeating(
  name: string,
  { made: { seed, shifts }, evidence = [], drawn }: Answered,
  set: readonly string[],
): string {
  const inputs = evidence.length > 0 && drawn === undefined ? 'fixed' : undefined
  return repeatOf('run', { name, set }, { shifts, seed, inputs })
}
