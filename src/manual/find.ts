/** Finds entries of the reference by what people call them. */
import { near } from '../scenario/nearest.js'
import type { Entry } from './entry.js'
import type { Manual } from './topics.js'

/** Entries that were found, with the topic that they stand in. */
export interface Found {
  topic: string
  entries: readonly Entry[]
}

/** A step that stands for any name, or for the number of an entry. */
const isOpen = (step: string) => /^[A-Z]+$/.test(step) && step.length > 3

/** What a place of a result has between name and key, and people leave out. */
const steps = (name: string): string[] =>
  name
    .split(' ')[0]!
    .split('.')
    .filter((step, index, all) => !(step === 'measures' && all.length > 1 && index !== all.length - 1))

const isStep = (open: string, given: string): boolean => {
  if (open === given || isOpen(open)) return given !== ''
  if (open === 'N') return /^\d+$/.test(given)
  // a name may be a part of a step, such as `to-TARGET`
  const [, begin] = /^(.*-)[A-Z]{3,}$/.exec(open) ?? []
  return begin !== undefined && given.startsWith(begin)
}

/** Whether `given` is the name, a path that fits it, or the steps that it ends in. */
function fits(name: string, given: readonly string[]): boolean {
  const own = steps(name)
  const last = own.slice(-given.length)
  const isSame = (step: string, at: number) => isStep(step, given[at]!)
  // a name that is open everywhere would fit anything
  return (
    last.length === given.length &&
    last.every(isSame) &&
    last.some((step, at) => !isOpen(step) && isSame(step, at))
  )
}

/** Names of equipment that are those of its kinds narrow what is found to that kind. */
function narrowed(entries: readonly Entry[], given: readonly string[]): readonly Entry[] {
  const own = entries.filter(({ of }) => of?.split(', ').some((kind) => given.includes(kind)))
  return own.length > 0 ? own : entries
}

/** Entries that `word` names, by topic; with a path, those below it too. None where nothing is called so. */
export function entriesOf({ references }: Manual, word: string): Found[] {
  const given = steps(word)
  return references.flatMap((reference): Found[] => {
    const entries = reference.groups.flatMap((group) => group.entries)
    const exact = entries.filter(({ name }) => fits(name, given))
    if (exact.length === 0) return []
    const own = narrowed(exact, given)
    const below = entries.filter((each) =>
      own.some(({ name, of }) => each.of === of && each.name.startsWith(`${name}.`)),
    )
    return [
      {
        topic: reference.name,
        entries: entries.filter((each) => own.includes(each) || below.includes(each)),
      },
    ]
  })
}

/** The word that was most likely meant; undefined where none is near. */
export function meantBy(
  { topics, references }: Manual,
  word: string,
  commands: readonly string[],
): string | undefined {
  const names = references.flatMap(({ groups }) =>
    groups.flatMap(({ entries }) => entries.flatMap(({ name }) => [name, steps(name).at(-1)!])),
  )
  return near(word, [...topics.map(({ name }) => name), ...commands, ...names])[0]
}
