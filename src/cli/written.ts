/** The files that commands write, each with what it holds: for the manual, and so that no input bears the name of one. */

interface WrittenFile {
  /** The commands that write it. */
  by: string
  meaning: string
  /** Not beside a result, or not by this name alone. */
  isElsewhere?: true
  /** Not of each study: one of a study before would stand beside figures of another line. */
  isOfSome?: true
}

const studies = 'run, compare, size, sweep, validate'

export const writtenFiles: Readonly<Record<string, WrittenFile>> = {
  'report.html': {
    by: `${studies}, fit, report`,
    meaning: 'the report as one page to mail: it opens anywhere, asks for nothing from outside, and prints',
  },
  'try.html': {
    by: 'run, compare, try',
    meaning:
      'a page in which the line can be changed and is simulated at once; it needs no network, and gives the figures of `tapeshift run`',
    isOfSome: true,
  },
  'result.json': {
    by: `${studies}, fit`,
    meaning: 'every figure with low, high, spread, unit and words, for programs; also printed with `--json`',
  },
  'scenario.yaml': {
    by: studies,
    meaning: 'the scenario as it was simulated: changes applied, defaults written out and marked',
  },
  'shifts.csv': {
    by: 'run, compare',
    meaning:
      'one row a shift, of `compare` a row a design and shift, unrounded; with draws of the inputs the number of the draw (0: as given)',
  },
  'draws.csv': {
    by: 'run, size',
    meaning: 'what was drawn of each input, one row a draw',
    isOfSome: true,
  },
  'designs.csv': { by: 'size, sweep', meaning: 'every design that was looked at, one row each' },
  'differences.csv': {
    by: 'compare, sweep',
    meaning: 'every measure of every design less the base, with its interval',
  },
  'days.csv': { by: 'validate', meaning: 'each day of the record against the range of its own runs' },
  'sheet.csv': { by: 'validate', meaning: 'shift reports, real and simulated, shuffled; with `--sheet`' },
  'sheet-key.csv': { by: 'validate', meaning: 'which of those are real' },
  'fitted.yaml': {
    by: 'fit',
    meaning: 'the fitted values by path, and the days that were held out',
  },
  'observed-PATH.csv': {
    by: 'fit',
    meaning: 'the times themselves where no law fits; the scenario draws on them',
    isElsewhere: true,
  },
  'charts/NAME.png': { by: `${studies}, fit`, meaning: 'the charts of the report', isElsewhere: true },
  'journal.ndjson': {
    by: studies,
    meaning: 'the finished shifts of an interrupted study, for `--resume`; gone once the study is whole',
  },
  'journal.lock': {
    by: studies,
    meaning: 'says that a study works in the folder; gone once it ends',
  },
  'scenario.schema.json': {
    by: 'new',
    meaning: 'the JSON Schema of the format, with which editors complete and check while you type',
    isElsewhere: true,
  },
  'manual.html': { by: 'manual', meaning: 'this manual as one page', isElsewhere: true },
}

const namesOf = (is: (file: WrittenFile) => boolean): string[] =>
  Object.keys(writtenFiles).filter((name) => is(writtenFiles[name]!))

/** Names that results use in their folder. */
export const ownFiles = namesOf(({ isElsewhere }) => !isElsewhere)

/** Names of those that some studies write and others do not. */
export const ofSomeStudies = namesOf(({ isOfSome }) => isOfSome === true)

/** Whether a command writes a file. */
export const isWrittenBy = (file: string, command: string): boolean =>
  writtenFiles[file]?.by.split(', ').includes(command) === true
