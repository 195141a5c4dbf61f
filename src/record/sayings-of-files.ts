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
    words: () => 'the file has a header line and no rows',
    fix: () => 'export a time in which the line ran',
  },
  'no-stops': {
    did: 'noted',
    words: () =>
      'the file has a header line and no rows: nothing was logged as stopped, and every count is 0',
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
      `the column ${named(told)} stands there more than once: which one is meant cannot be known`,
    fix: () => 'give the columns different names',
  },
  'doubled-names': {
    did: 'noted',
    words: (told) => `the columns ${named(told)} stand there more than once; none of them is read`,
  },
  'too-many-rows': {
    did: 'refused',
    words: ({ what }) => `the file has more than ${what[0]} rows`,
    fix: () => 'take a shorter time: some months say as much of the inputs',
  },
  'too-many-names': {
    did: 'refused',
    words: ({ what }) =>
      `the column \`${what[0]}\` holds more than ${what[1]} different texts: it names nothing that comes again`,
    fix: () => 'name the column of the codes instead',
  },
  'long-name': {
    did: 'changed',
    words: (told) => `${rows(told)} with a name of more than 200 characters, cut off there`,
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
    fix: () => 'put texts that hold the sign between the cells into quotes',
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
    words: (told) => `${rows(told)} with a time that \`times\` does not fit, left out: ${named(told)}`,
    fix: () => 'write them alike',
  },
  'other-pattern': {
    did: 'noted',
    words: ({ what }) => `times that do not fit would fit another pattern: ${what.join('; ')}`,
    fix: () =>
      'a pattern is not guessed: write the rows alike, or name this pattern in `times` if it is the right one for all',
  },
  'mostly-unfit': {
    did: 'refused',
    words: (told) =>
      `${rows(told)} of ${told.what[0]} ${verb(told, 'holds', 'hold')} no time that can be read: that is more than 1 in 20`,
    fix: () => 'mend `times`, or the file',
  },
  'no-such-date': {
    did: 'left-out',
    words: (told) => `${rows(told)} with a day or an hour that does not exist, left out: ${named(told)}`,
  },
  'no-such-time': {
    did: 'left-out',
    words: (told) => `${rows(told)} with a time that the clock leaves out when summer time begins, left out`,
    fix: () => 'if the clock of the log does not follow summer time, leave `zone` out',
  },
  twice: {
    did: 'noted',
    words: (told) =>
      `${rows(told)} with a time that exists twice when summer time ends: the earlier one is taken unless the rows would then go back (${told.what.join(', ')})`,
  },
  'no-zone': {
    did: 'noted',
    words: () => 'no `zone`: times stand as they are, and a change of the clock is not known',
    fix: () => 'add `zone: Europe/Berlin` or what it is where the clock hangs',
  },
  'grain-found': { did: 'noted', words: ({ what }) => `${what[0]}` },
  'finer-than-said': {
    did: 'noted',
    words: ({ what }) => `\`rounded-to\` says ${what[0]}, but the times are finer than that`,
    fix: () => 'leave `rounded-to` out if they are not rounded',
  },
  'all-seen': {
    did: 'noted',
    words: () => 'no `seen-from`: it is taken that every stop is in the log, however short',
    fix: () => 'if short stops are not logged, say from what length on they are, such as `seen-from: 30 s`',
  },
  decimals: {
    did: 'noted',
    words: ({ what }) => `numbers of ${what[0]} are read with a decimal ${what[1]}${what[2] ?? ''}`,
  },
  'no-number': {
    did: 'changed',
    words: (told) => `${rows(told)} whose count of good cases is no number: taken as not counted`,
  },
  'no-length': { did: 'left-out', words: (told) => `${rows(told)} whose length is no number, left out` },
} as const satisfies Record<string, Saying>
