/** The reference of measures and states, from the catalogue. */
import { ofEffectiveness, ofHeads, ofPieces, pieceRow, sentKey } from '../catalogue/of-equipment.js'
import { ofJams } from '../catalogue/of-jams.js'
import { ofLine } from '../catalogue/of-line.js'
import { ofArrivals, ofCrew } from '../catalogue/of-people.js'
import type { NamedRow, Row, Unit } from '../catalogue/row.js'
import { stateKeys, stateLabel, states } from '../catalogue/states.js'
import type { Entry, Reference } from './entry.js'

const units: Readonly<Record<Unit, string>> = {
  s: 'time',
  m: 'length of tape',
  kg: 'mass',
  cases: 'cases',
  'cases/s': 'rate',
  share: 'share',
  count: 'count',
  'm/case': 'tape a case',
  money: 'money for 1000 good cases',
  'money/yr': 'money a year',
  rolls: 'rolls',
}

const kinds: Readonly<Record<Row<string>['kind'], string>> = {
  mean: 'mean over shifts',
  total: 'a shift',
  count: 'a shift',
  share: 'over all shifts',
  ratio: 'total over total',
  quantile: 'over all shifts',
}

type Told = Pick<NamedRow, 'unit' | 'kind' | 'meaning'> & { label: string }

const entryOf = (name: string, { label, meaning, unit, kind }: Told): Entry => ({
  name,
  says: [isIn(label, meaning) ? '' : label, meaning, `${units[unit]}, ${kinds[kind]}`],
})

/** The meaning may say again what the label says. */
const isIn = (label: string, meaning: string) => meaning.toLowerCase().startsWith(label.toLowerCase())

/** Rows of things that have names, called `NAME` in their labels. */
const named = (place: string, rows: Readonly<Record<string, NamedRow>>, of = 'NAME'): Entry[] =>
  Object.entries(rows).map(([key, row]) =>
    entryOf(`${place}.${key}`, { ...row, label: row.label(of, `in ${of}`) }),
  )

/** All measures. */
export const measuresReference = (): Reference => ({
  name: 'measures',
  title: 'Measures',
  intro:
    'Every figure of a result: label, meaning, what it is measured in and how shifts are put together. `result.json` has times in seconds, lengths in metres and rates in cases a second; reports print the units that people use.',
  groups: [
    {
      title: 'The line',
      note: 'In `--measure`, `--require` and promises these are named by the key alone; in `result.json` they stand under `measures`.',
      entries: Object.entries(ofLine).map(([key, row]) => entryOf(key, row)),
    },
    { title: 'Arrivals', entries: named('arrivals.NAME', ofArrivals) },
    {
      title: 'Pieces of the line',
      note: 'In `result.json` there stands `measures` between the name and the key.',
      entries: [
        ...named('equipment.NAME', ofPieces),
        ...named('equipment.NAME', { [sentKey('TARGET')]: pieceRow(sentKey('TARGET')) }),
      ],
    },
    {
      title: 'Jams that have names',
      entries: named('equipment.NAME.jams.KIND', ofJams, 'KIND'),
    },
    { title: 'Heads of a sealer', entries: named('equipment.NAME.heads.HEAD', ofHeads, 'HEAD') },
    {
      title: 'Sealers in the words of ISO 22400-2',
      note: 'None is cut off at 1.',
      entries: named('equipment.NAME.effectiveness', ofEffectiveness),
    },
    { title: 'Crew', entries: named('crew.NAME', ofCrew) },
  ],
})

/** All states of a piece. */
export const statesReference = (): Reference => ({
  name: 'states',
  title: 'States',
  intro:
    'A piece is in exactly one of these at a time; the shares of the shift stand under `equipment.NAME.states` and add up to 1.',
  groups: [
    {
      title: 'States of a piece',
      entries: stateKeys.map((key) => ({
        name: `equipment.NAME.states.${key}`,
        says: [`${stateLabel(key)}: ${states[key].meaning}`],
      })),
    },
  ],
})
