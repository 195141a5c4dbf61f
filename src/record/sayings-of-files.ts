/** What may be found in any file of a record: its columns, its rows, its times. */
import { named, rows, type Saying, verb } from './saying.js'

export const ofFiles = {
  unreadable: {
    did: 'refused',
    words: ({ what }) => `${what[0]}`,
    fix: () => 'check the name and the file; it lies in the folder of the record',
  },
  empty: {
    did: 'refused',
    words: () => 'the file is empty',
    fix: () => 'export it again, with its header line',
  },
  'no-rows': {
    did: 'refused',
    words: () => 'the file has a header line but no rows',
    fix: () => 'export a time in which the line ran',
  },
  'no-stops': {
    did: 'noted',
    words: () => 'the file has a header line but no rows: no stop was logged, so every count is 0',
    fix: () => 'if that is not so, export it again',
  },
  'no-column': {
    did: 'refused',
    words: ({ what }) => `there is no column \`${what[0]}\``,
    fix: ({ what }) => what[1]!,
  },
  'doubled-column': {
    did: 'refused',
    words: (told) =>
      `the column ${named(told)} appears more than once, and it is not known which one is meant`,
    fix: () => 'give the columns different names',
  },
  'doubled-names': {
    did: 'noted',
    words: (told) => `the columns ${named(told)} appear more than once; none of them is read`,
  },
  'too-many-rows': {
    did: 'refused',
    words: ({ what }) => `the file has more than ${what[0]} rows`,
    fix: () => 'use a shorter period: some months are enough for the inputs',
  },
  'too-many-names': {
    did: 'refused',
    words: ({ what }) =>
      `the column \`${what[0]}\` holds more than ${what[1]} different texts: they do not repeat`,
    fix: () => 'use a column of codes instead',
  },
  'long-name': {
    did: 'changed',
    words: (told) => `${rows(told)} with a name of more than 200 characters, cut off at 200`,
  },
  written: { did: 'noted', words: ({ what }) => `the file is read as ${what.join(', ')}` },
  'short-row': {
    did: 'left-out',
    words: (told) =>
      `${rows(told)} ${verb(told, 'has', 'have')} too few cells and ${verb(told, 'is', 'are')} left out`,
    fix: () => 'look for line breaks within a text',
  },
  'long-row': {
    did: 'left-out',
    words: (told) =>
      `${rows(told)} ${verb(told, 'has', 'have')} more cells than the header and ${verb(told, 'is', 'are')} left out`,
    fix: () => 'put texts that contain the cell separator into quotes',
  },
} as const satisfies Record<string, Saying>

export const ofTimes = {
  'empty-time': {
    did: 'left-out',
    words: (told) =>
      `${rows(told)} without a time, left out: a stop that has not ended, or was not written down`,
  },
  'unfit-time': {
    did: 'left-out',
    words: (told) => `${rows(told)} with a time that does not fit \`times\`, left out: ${named(told)}`,
    fix: () => 'write them all in the same way',
  },
  'other-pattern': {
    did: 'noted',
    words: ({ what }) => `times that do not fit would fit another pattern: ${what.join('; ')}`,
    fix: () =>
      'the pattern is not guessed: write all rows in the same way, or give this pattern in `times` if it is right for all',
  },
  'mostly-unfit': {
    did: 'refused',
    words: (told) =>
      `${rows(told)} of ${told.what[0]} ${verb(told, 'holds', 'hold')} no readable time: this is more than 1 in 20`,
    fix: () => 'correct `times` or the file',
  },
  'no-such-date': {
    did: 'left-out',
    words: (told) => `${rows(told)} with a day or an hour that does not exist, left out: ${named(told)}`,
  },
  'no-such-time': {
    did: 'left-out',
    words: (told) => `${rows(told)} with a time that does not exist because summer time begins, left out`,
    fix: () => 'if the clock of the log does not follow summer time, leave `zone` out',
  },
  twice: {
    did: 'noted',
    words: (told) =>
      `${rows(told)} with a time that exists twice because summer time ends: the earlier one is used, unless the rows would then go back (${told.what.join(', ')})`,
  },
  'no-zone': {
    did: 'noted',
    words: () => 'no `zone`: times are used as written, and changes of the clock are not known',
    fix: () => 'add the time zone of the clock, such as `zone: Europe/Berlin`',
  },
  'grain-found': { did: 'noted', words: ({ what }) => `${what[0]}` },
  'finer-than-said': {
    did: 'noted',
    words: ({ what }) => `\`rounded-to\` says ${what[0]}, but the times are finer than that`,
    fix: () => 'leave `rounded-to` out if they are not rounded',
  },
  'all-seen': {
    did: 'noted',
    words: () => 'no `seen-from`: every stop is assumed to be in the log, even the shortest',
    fix: () => 'if short stops are not logged, give the shortest logged length, such as `seen-from: 30 s`',
  },
  decimals: {
    did: 'noted',
    words: ({ what }) => `numbers of ${what[0]} are read with a decimal ${what[1]}${what[2] ?? ''}`,
  },
  'no-number': {
    did: 'changed',
    words: (told) => `${rows(told)} whose count of good cases is not a number: used as not counted`,
  },
  'no-length': { did: 'left-out', words: (told) => `${rows(told)} whose length is not a number, left out` },
} as const satisfies Record<string, Saying>
