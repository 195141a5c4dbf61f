/** Everything that may be found in a record: what is said of it, what is done about it, and the nearest mend. */
import {
  changed,
  leftOut,
  many,
  named,
  noted,
  refused,
  rows,
  type Saying,
  stops,
  time,
  verb,
} from './saying.js'

export const sayings = {
  // columns and rows of any file
  unreadable: refused(
    ({ what }) => `${what[0]}`,
    'check the name and the file; it lies in the folder of the record',
  ),
  empty: refused('the file is empty', 'export it again, with its header line'),
  'no-rows': refused('the file has a header line but no rows', 'export a time in which the line ran'),
  'no-stops': noted(
    'the file has a header line but no rows: no stop was logged, so every count is 0',
    'if that is not so, export it again',
  ),
  'no-column': refused(
    ({ what }) => `there is no column \`${what[0]}\``,
    ({ what }) => what[1]!,
  ),
  'doubled-column': refused(
    (told) => `the column ${named(told)} appears more than once, and it is not known which one is meant`,
    'give the columns different names',
  ),
  'doubled-names': noted((told) => `the columns ${named(told)} appear more than once; none of them is read`),
  'too-many-rows': refused(
    ({ what }) => `the file has more than ${what[0]} rows`,
    'use a shorter period: some months are enough for the inputs',
  ),
  'too-many-names': refused(
    ({ what }) => `the column \`${what[0]}\` holds more than ${what[1]} different texts: they do not repeat`,
    'use a column of codes instead',
  ),
  'long-name': changed((told) => `${rows(told)} with a name of more than 200 characters, cut off at 200`),
  written: noted(({ what }) => `the file is read as ${what.join(', ')}`),
  'short-row': leftOut(
    (told) =>
      `${rows(told)} ${verb(told, 'has', 'have')} too few cells and ${verb(told, 'is', 'are')} left out`,
    'look for line breaks within a text',
  ),
  'long-row': leftOut(
    (told) =>
      `${rows(told)} ${verb(told, 'has', 'have')} more cells than the header and ${verb(told, 'is', 'are')} left out`,
    'put texts that contain the cell separator into quotes',
  ),
  // times and numbers of any file
  'empty-time': leftOut(
    (told) => `${rows(told)} without a time, left out: a stop that has not ended, or was not written down`,
  ),
  'unfit-time': leftOut(
    (told) => `${rows(told)} with a time that does not fit \`times\`, left out: ${named(told)}`,
    'write them all in the same way',
  ),
  'other-pattern': noted(
    ({ what }) => `times that do not fit would fit another pattern: ${what.join('; ')}`,
    'the pattern is not guessed: write all rows in the same way, or give this pattern in `times` if it is right for all',
  ),
  'mostly-unfit': refused(
    (told) =>
      `${rows(told)} of ${told.what[0]} ${verb(told, 'holds', 'hold')} no readable time: this is more than 1 in 20`,
    'correct `times` or the file',
  ),
  'no-such-date': leftOut(
    (told) => `${rows(told)} with a day or an hour that does not exist, left out: ${named(told)}`,
  ),
  'no-such-time': leftOut(
    (told) => `${rows(told)} with a time that does not exist because summer time begins, left out`,
    'if the clock of the log does not follow summer time, leave `zone` out',
  ),
  twice: noted(
    (told) =>
      `${rows(told)} with a time that exists twice because summer time ends: the earlier one is used, unless the rows would then go back (${told.what.join(', ')})`,
  ),
  'no-zone': noted(
    'no `zone`: times are used as written, and changes of the clock are not known',
    'add the time zone of the clock, such as `zone: Europe/Berlin`',
  ),
  'grain-found': noted(({ what }) => `${what[0]}`),
  'finer-than-said': noted(
    ({ what }) => `\`rounded-to\` says ${what[0]}, but the times are finer than that`,
    'leave `rounded-to` out if they are not rounded',
  ),
  'all-seen': noted(
    'no `seen-from`: every stop is assumed to be in the log, even the shortest',
    'if short stops are not logged, give the shortest logged length, such as `seen-from: 30 s`',
  ),
  decimals: noted(({ what }) => `numbers of ${what[0]} are read with a decimal ${what[1]}${what[2] ?? ''}`),
  'no-number': changed(
    (told) => `${rows(told)} whose count of good cases is not a number: used as not counted`,
  ),
  'no-length': leftOut((told) => `${rows(told)} whose length is not a number, left out`),
  // shifts
  'no-shifts': refused('no usable shift is left', 'see which rows were left out'),
  'doubled-shift': leftOut(
    (told) => `${many(told.count, 'shift')} that ${verb(told, 'appears', 'appear')} a second time, left out`,
  ),
  'shift-ends-before': leftOut(
    (told) =>
      `${many(told.count, 'shift')} that ${verb(told, 'does', 'do')} not end after the beginning, left out`,
  ),
  'shift-within': leftOut(
    (told) => `${many(told.count, 'shift')} within another one, left out`,
    'give one row for each shift of the line',
  ),
  'shifts-overlap': changed(
    (told) =>
      `${many(told.count, 'shift')} that ${verb(told, 'begins', 'begin')} before the end of the one before: moved to begin at that end, ${time(told)} less`,
  ),
  'long-shift': noted((told) => `${many(told.count, 'shift')} longer than 24 h`, 'look at the dates'),
  'good-missing': noted(
    (told) => `${many(told.count, 'shift')} without a count of good cases: not used for chances per case`,
  ),
  'days-between': noted(
    ({ count, what }) =>
      `${many(count, 'day')} between the first and the last without a shift: ${what.join(', ')}`,
    'if the line ran then, the file is not complete',
  ),
  'days-without-stops': noted(
    ({ count, what }) =>
      `${many(count, 'day')} without any stop, although the other days have many: ${what.join(', ')}`,
    'if nobody logged then, remove these shifts: a day without logging makes stops look rarer',
  ),
  // stops
  doubled: leftOut((told) => `${rows(told)} that ${verb(told, 'appears', 'appear')} a second time, left out`),
  'ends-before': leftOut(
    (told) => `${stops(told)} that ${verb(told, 'ends', 'end')} before the beginning, left out`,
  ),
  'mostly-backwards': refused(
    (told) =>
      `${stops(told)} of ${told.what[0]} ${verb(told, 'ends', 'end')} before the beginning: that is more than 1 in 20`,
    'check that `begins` and `ends` name the right columns, and that `times` has day and month in the right order',
  ),
  instant: noted((told) => `${stops(told)} of zero length: shorter than one step of the log's clock`),
  'instant-left-out': leftOut(
    (told) =>
      `${stops(told)} of zero length, left out: the clock of the log is fine enough to show the shortest stop`,
  ),
  'shorter-than-seen': leftOut(
    (told) => `${stops(told)} shorter than \`seen-from\`, left out; ${time(told)} count as stopped`,
    'a lower `seen-from`, if all of that length are logged',
  ),
  'two-pieces': leftOut(
    (told) =>
      `${stops(told)} of two pieces in one row, left out; ${time(told)} count as stopped, for no piece: ${named(told)}`,
    'one row for each piece',
  ),
  renamed: changed((told) => `${rows(told)} of a piece that has another name now: ${told.what.join(', ')}`),
  overlap: changed(
    (told) =>
      `${stops(told)} that ${verb(told, 'begins', 'begin')} before the end of the one before of the same piece: merged with it, ${time(told)} counted once`,
  ),
  'overlap-other': changed(
    (told) =>
      `${stops(told)} of another reason that ${verb(told, 'begins', 'begin')} before the end of the one before of the same piece: merged with it under its reason: ${named(told)}`,
  ),
  moved: changed(
    (told) =>
      `${stops(told)} whose length is finer than the clock of their beginning: moved to the end of the stop before, ${time(told)} later in total`,
  ),
  'cut-off': changed(
    (told) =>
      `${stops(told)} that ${verb(told, 'runs', 'run')} into a break or the end of a shift: cut off there and counted as "at least this long"; ${time(told)} after it are not counted as a stop`,
  ),
  outside: leftOut(
    (told) => `${stops(told)} outside all shifts or within a break, ${time(told)}, left out`,
    'if the line ran then, add the shifts',
  ),
  'begins-outside': leftOut(
    (told) =>
      `${stops(told)} that ${verb(told, 'begins', 'begin')} outside a shift or in a break and ${verb(told, 'ends', 'end')} in a shift: not a stop of that shift, but ${time(told)} count as stopped`,
  ),
  'logged-breaks': noted(
    (told) =>
      `${many(told.count, 'row')} that ${verb(told, 'is a break', 'are breaks')}, ${time(told)}: taken from the shifts`,
  ),
  'unknown-reason': noted(
    ({ count, what, ...told }) =>
      `\`${what[0]}\`: its meaning is not given; ${stops({ count, what, ...told })}, ${time({ count, what, ...told })}`,
    ({ what }) => what[1]!,
  ),
  'more-unknown': noted(
    (told) => `further reasons without a meaning: ${stops(told)}, ${time(told)}, among them ${named(told)}`,
    'if they are free text, name a column of codes as `reason`',
  ),
  'never-occurs': noted(
    (told) => `under \`means\`, but in no row: ${named(told)}`,
    'a misspelt reason counts as zero: check the spelling',
  ),
  // cases
  'cases-go-back': changed((told) => `${rows(told)} that ${verb(told, 'goes', 'go')} back in time: sorted`),
  'doubled-cases': leftOut(
    (told) =>
      `${rows(told)} that ${verb(told, 'stands', 'stand')} there already, at exactly the same time, left out`,
  ),
  'cases-at-once': noted(
    (told) =>
      `${many(told.count, 'case')} of the same second and kind as the one before: counted as cases, because the clock shows only seconds`,
  ),
  'cases-outside': leftOut((told) => `${many(told.count, 'case')} outside all shifts, left out`),
} satisfies Record<string, Saying>

export type Code = keyof typeof sayings
