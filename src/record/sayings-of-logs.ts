/** What may be found in the shifts, the stops and the cases of a record. */
import { many, named, rows, type Saying, stops, time, verb } from './saying.js'

export const ofShifts = {
  'no-shifts': {
    did: 'refused',
    words: () => 'no usable shift is left',
    fix: () => 'see which rows were left out',
  },
  'doubled-shift': {
    did: 'left-out',
    words: (told) =>
      `${many(told.count, 'shift')} that ${verb(told, 'appears', 'appear')} a second time, left out`,
  },
  'shift-ends-before': {
    did: 'left-out',
    words: (told) =>
      `${many(told.count, 'shift')} that ${verb(told, 'does', 'do')} not end after the beginning, left out`,
  },
  'shift-within': {
    did: 'left-out',
    words: (told) => `${many(told.count, 'shift')} within another one, left out`,
    fix: () => 'give one row for each shift of the line',
  },
  'shifts-overlap': {
    did: 'changed',
    words: (told) =>
      `${many(told.count, 'shift')} that ${verb(told, 'begins', 'begin')} before the end of the one before: moved to begin at that end, ${time(told)} less`,
  },
  'long-shift': {
    did: 'noted',
    words: (told) => `${many(told.count, 'shift')} longer than 24 h`,
    fix: () => 'look at the dates',
  },
  'good-missing': {
    did: 'noted',
    words: (told) =>
      `${many(told.count, 'shift')} without a count of good cases: not used for chances per case`,
  },
  'days-between': {
    did: 'noted',
    words: ({ count, what }) =>
      `${many(count, 'day')} between the first and the last without a shift: ${what.join(', ')}`,
    fix: () => 'if the line ran then, the file is not complete',
  },
  'days-without-stops': {
    did: 'noted',
    words: ({ count, what }) =>
      `${many(count, 'day')} without any stop, although the other days have many: ${what.join(', ')}`,
    fix: () => 'if nobody logged then, remove these shifts: a day without logging makes stops look rarer',
  },
} as const satisfies Record<string, Saying>

export const ofStops = {
  doubled: {
    did: 'left-out',
    words: (told) => `${rows(told)} that ${verb(told, 'appears', 'appear')} a second time, left out`,
  },
  'ends-before': {
    did: 'left-out',
    words: (told) => `${stops(told)} that ${verb(told, 'ends', 'end')} before the beginning, left out`,
  },
  'mostly-backwards': {
    did: 'refused',
    words: (told) =>
      `${stops(told)} of ${told.what[0]} ${verb(told, 'ends', 'end')} before the beginning: that is more than 1 in 20`,
    fix: () =>
      'check that `begins` and `ends` name the right columns, and that `times` has day and month in the right order',
  },
  instant: {
    did: 'noted',
    words: (told) => `${stops(told)} of zero length: shorter than one step of the log's clock`,
  },
  'instant-left-out': {
    did: 'left-out',
    words: (told) =>
      `${stops(told)} of zero length, left out: the clock of the log is fine enough to show the shortest stop`,
  },
  'shorter-than-seen': {
    did: 'left-out',
    words: (told) => `${stops(told)} shorter than \`seen-from\`, left out; ${time(told)} count as stopped`,
    fix: () => 'a lower `seen-from`, if all of that length are logged',
  },
  'two-pieces': {
    did: 'left-out',
    words: (told) =>
      `${stops(told)} of two pieces in one row, left out; ${time(told)} count as stopped, for no piece: ${named(told)}`,
    fix: () => 'one row for each piece',
  },
  renamed: {
    did: 'changed',
    words: (told) => `${rows(told)} of a piece that has another name now: ${told.what.join(', ')}`,
  },
  overlap: {
    did: 'changed',
    words: (told) =>
      `${stops(told)} that ${verb(told, 'begins', 'begin')} before the end of the one before of the same piece: merged with it, ${time(told)} counted once`,
  },
  'overlap-other': {
    did: 'changed',
    words: (told) =>
      `${stops(told)} of another reason that ${verb(told, 'begins', 'begin')} before the end of the one before of the same piece: merged with it under its reason: ${named(told)}`,
  },
  moved: {
    did: 'changed',
    words: (told) =>
      `${stops(told)} whose length is finer than the clock of their beginning: moved to the end of the stop before, ${time(told)} later in total`,
  },
  'cut-off': {
    did: 'changed',
    words: (told) =>
      `${stops(told)} that ${verb(told, 'runs', 'run')} into a break or the end of a shift: cut off there and counted as "at least this long"; ${time(told)} after it are not counted as a stop`,
  },
  outside: {
    did: 'left-out',
    words: (told) => `${stops(told)} outside all shifts or within a break, ${time(told)}, left out`,
    fix: () => 'if the line ran then, add the shifts',
  },
  'begins-outside': {
    did: 'left-out',
    words: (told) =>
      `${stops(told)} that ${verb(told, 'begins', 'begin')} outside a shift or in a break and ${verb(told, 'ends', 'end')} in a shift: not a stop of that shift, but ${time(told)} count as stopped`,
  },
  'logged-breaks': {
    did: 'noted',
    words: (told) =>
      `${many(told.count, 'row')} that ${verb(told, 'is a break', 'are breaks')}, ${time(told)}: taken from the shifts`,
  },
  'unknown-reason': {
    did: 'noted',
    words: ({ count, what, ...told }) =>
      `\`${what[0]}\`: its meaning is not given; ${stops({ count, what, ...told })}, ${time({ count, what, ...told })}`,
    fix: ({ what }) => what[1]!,
  },
  'more-unknown': {
    did: 'noted',
    words: (told) =>
      `further reasons without a meaning: ${stops(told)}, ${time(told)}, among them ${named(told)}`,
    fix: () => 'if they are free text, name a column of codes as `reason`',
  },
  'never-occurs': {
    did: 'noted',
    words: (told) => `under \`means\`, but in no row: ${named(told)}`,
    fix: () => 'a misspelt reason counts as zero: check the spelling',
  },
} as const satisfies Record<string, Saying>

export const ofCases = {
  'cases-go-back': {
    did: 'changed',
    words: (told) => `${rows(told)} that ${verb(told, 'goes', 'go')} back in time: sorted`,
  },
  'doubled-cases': {
    did: 'left-out',
    words: (told) =>
      `${rows(told)} that ${verb(told, 'stands', 'stand')} there already, at exactly the same time, left out`,
  },
  'cases-at-once': {
    did: 'noted',
    words: (told) =>
      `${many(told.count, 'case')} of the same second and kind as the one before: counted as cases, because the clock shows only seconds`,
  },
  'cases-outside': {
    did: 'left-out',
    words: (told) => `${many(told.count, 'case')} outside all shifts, left out`,
  },
} as const satisfies Record<string, Saying>
