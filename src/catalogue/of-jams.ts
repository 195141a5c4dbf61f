/** Measures of a kind of jam that has a name, one row each. */
import { type NamedRow, sort, sorts } from './row.js'

const rows = {
  stops: {
    ...sorts.stops,
    label: (of) => `Jams a shift, ${of}`,
    meaning: 'jams of this kind',
    words: 'jams',
  },
  stop: {
    ...sort('s', 'ratio', 'down'),
    label: (of) => `Mean time from stop to restart, jams, ${of}`,
    meaning: 'from the jam until the piece runs again, isolation of the machine included',
    words: 'from stop to restart, mean',
  },
  wait: {
    ...sort('s', 'ratio', 'down'),
    label: (of) => `Mean time waiting for crew, jams, ${of}`,
    meaning: 'the part of the stop until somebody arrives',
    words: 'waiting for crew, mean',
  },
  time: {
    ...sort('s', 'total', 'down'),
    label: (of) => `Downtime for jams a shift, ${of}`,
    meaning: 'time that the piece is down for jams of this kind, waiting for crew included',
    words: 'time a shift',
  },
  'cases-lost': {
    ...sorts.lostCases,
    label: (of) => `Cases spoilt in jams a shift, ${of}`,
    meaning: 'cases spoilt in jams of this kind',
    words: 'cases spoilt',
  },
  'in-breaks': {
    ...sorts.stops,
    label: (of) => `Jams that waited for the end of a break, a shift, ${of}`,
    meaning: 'the jams that waited for the end of a break, because nobody on duty could come',
    isLongStop: true,
  },
} satisfies Record<string, NamedRow>

export type JamKey = keyof typeof rows
export const ofJams: Readonly<Record<JamKey, NamedRow>> = rows

/** Where the result document has it: of the kind `jam` of the piece `name`. */
export const jamPath = (name: string, jam: string, key: JamKey) =>
  ['equipment', name, 'jams', jam, key] as const
