/** What a row of the catalogue says of a measure: everything about it but its value. */

/** Units that a measure may have, SI. `money` is that of 1000 cases. */
export type Unit =
  | 's'
  | 'm'
  | 'kg'
  | 'cases'
  | 'cases/s'
  | 'share'
  | 'count'
  | 'm/case'
  | 'money'
  | 'money/yr'
  | 'rolls'

/** A measure. `Label`: its words in results, a function where they hold a name. */
export interface Row<Label> {
  label: Label
  unit: Unit
  /**
   * How shifts are put together. `mean`: each gives a value, the study averages them. `total`: the same for what adds up over
   * the shifts of a campaign, and is divided by their number, as far as they are counted; `count`: a total of whole events.
   * `share`: each gives 0 or 1. `ratio`: totals over totals. `quantile`: what a share of the shifts reaches.
   */
  kind: 'mean' | 'total' | 'count' | 'share' | 'ratio' | 'quantile'
  /** Which way it should go: towards more, towards less, or neither by itself. */
  better: 'up' | 'down' | 'neither'
  meaning: string
  /** Its words where the piece is named beside them. */
  words?: string
  /** Of a mean: what several pieces have together is the sum of theirs. */
  addsUp?: true
  /** A rare long stop of any piece moves it by much. */
  isUpset?: true
  /** It counts stops that are rare and long: breakdowns, and those that wait out a break. */
  isLongStop?: true
  /** Of a ratio: both count cases, some of all, so that it rests on those of the rarer sort. */
  isPart?: true
  /** Of a ratio: over the events of the whole study and one more. A ranking shift by shift leaves that one out. */
  isOverOneMore?: true
  /** Of a ratio: its upper part is the time in which the events of the lower one come, so that its plus-minus is that of their rate. */
  isTimeOfEvents?: true
}

/** A measure of something that has a name. `where`: the place in words, of measures that tell what is held there. */
export type NamedRow = Row<(name: string, where: string) => string>

type Sort = Pick<Row<string>, 'unit' | 'kind' | 'better'>

/** What a row says of the sort of its measure. */
export const sort = (unit: Sort['unit'], kind: Sort['kind'], better: Sort['better']): Sort => ({
  unit,
  kind,
  better,
})

/** Sorts of measures of which there are several. */
export const sorts = {
  /** Cases that should be few, a shift; and such that are as they are. */
  lostCases: sort('cases', 'count', 'down'),
  countedCases: sort('cases', 'count', 'neither'),
  /** Cases in a place. */
  heldCases: sort('cases', 'mean', 'neither'),
  /** Stops and what else has to be done, a shift. */
  stops: sort('count', 'count', 'down'),
  /** Time that a case takes. */
  delay: sort('s', 'mean', 'down'),
  /** Share of time in which something stands or is full. */
  idleShare: sort('share', 'mean', 'down'),
  /** Share of time in which somebody or something is at work. */
  busyShare: sort('share', 'mean', 'neither'),
  tape: sort('m', 'total', 'down'),
  tapePerCase: sort('m/case', 'ratio', 'down'),
  /** Money for 1000 cases. */
  cost: sort('money', 'ratio', 'down'),
  /** Time elements of ISO 22400-2 and their ratios. */
  element: sort('s', 'total', 'neither'),
  index: sort('share', 'ratio', 'up'),
  /** Mean times of its failures. */
  failureTime: sort('s', 'ratio', 'up'),
}
