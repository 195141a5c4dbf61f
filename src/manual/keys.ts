/** The reference of keys: those of a scenario, by the room they stand in, and those of a record. */
import { kindKeys } from '../kinds/keys.js'
import { recordFileSchema } from '../record/format.js'
import { casesFile } from '../scenario/cases-file.js'
import { timeDistribution } from '../scenario/distribution.js'
import { scenarioSchema } from '../scenario/schema.js'
import { isWithin } from '../scenario/within.js'
import type { Entry, Group, Reference } from './entry.js'
import { type Key, keysOf, lawsOf } from './schema-keys.js'

/** Rooms of a scenario with their titles, in the order of the manual. */
const rooms: Readonly<Record<string, string>> = {
  cases: 'Cases',
  arrivals: 'Arrivals',
  tape: 'Tape',
  closure: 'Closure',
  site: 'Site',
  crew: 'Crew',
  shift: 'Shift',
  money: 'Money',
  study: 'Study',
  size: 'Choices and promises',
  variants: 'Variants',
}

const entryOf = ({ meaning, form, isNeeded, usual, basis, path }: Key, of?: string): Entry => ({
  name: path,
  ...(of === undefined ? {} : { of }),
  says: [
    meaning,
    form,
    ...(isNeeded ? ['Must be given'] : []),
    ...(usual === undefined ? [] : [`Default: \`${usual}\`${basis === undefined ? '' : `, ${basis}`}`]),
  ],
})

/** Keys of pieces: those of several kinds once, and those of each kind alone. */
function pieceGroups(): Group[] {
  const kinds = Object.entries(kindKeys)
  const byText = new Map<string, { key: Key; of: string[] }>()
  for (const [kind, schema] of kinds)
    for (const key of keysOf(schema, ['line', 'PIECE'])) {
      if (key.path === 'line.PIECE.type') continue
      const text = JSON.stringify(key)
      const found = byText.get(text) ?? { key, of: [] }
      found.of.push(kind)
      byText.set(text, found)
    }
  const all = [...byText.values()]
  const shared = all.filter(({ of }) => of.length > 1)
  return [
    {
      title: 'Pieces of the line: keys of several kinds',
      entries: shared.map(({ key, of }) =>
        entryOf(key, of.length === kinds.length ? undefined : of.join(', ')),
      ),
    },
    ...kinds.map(([kind, schema]) => ({
      title: `type: ${kind}`,
      note: `${schema.shape.type.description ?? ''}.`,
      entries: all.filter(({ of }) => of.length === 1 && of[0] === kind).map(({ key }) => entryOf(key, kind)),
    })),
  ]
}

/** Keys of a scenario. */
export function scenarioKeys(): Reference {
  const all = keysOf(scenarioSchema).filter(({ path }) => !path.startsWith('line.'))
  const inRoom = (room: string) => all.filter(({ path }) => isWithin(path, room)).map((key) => entryOf(key))
  const top = all.filter(({ path }) => !Object.hasOwn(rooms, path.split('.')[0]!))
  const groups = Object.entries(rooms).map(([room, title]): Group => ({ title, entries: inRoom(room) }))
  return {
    name: 'keys',
    title: 'Keys of a scenario',
    intro:
      'Every key with its meaning, what may stand there, and its default with the basis of that default. Words in capitals stand for names that you give; N is the number of an entry in a list, from 0.',
    groups: [
      { title: 'The file', entries: top.map((key) => entryOf(key)) },
      ...groups.slice(0, 2),
      {
        title: 'Cases from a file',
        note: 'These stand under `cases` instead of the cases.',
        entries: keysOf(casesFile, ['cases']).map((key) => entryOf(key, 'cases from a file')),
      },
      ...pieceGroups(),
      ...groups.slice(2),
      {
        title: 'Times that vary',
        note: 'Wherever a time may vary, LAW is one of these; `tapeshift help scenario-file` has examples.',
        entries: lawsOf(timeDistribution('a time'), ['LAW']).map((key) => entryOf(key)),
      },
    ],
  }
}

/** Keys of a record. */
export const recordKeys = (): Reference => ({
  name: 'record-keys',
  title: 'Keys of a record',
  intro:
    'The file that `tapeshift fit` and `tapeshift validate` read: it names the CSV files of a plant and says what their words mean.',
  groups: [{ title: 'record', entries: keysOf(recordFileSchema).map((key) => entryOf(key)) }],
})
