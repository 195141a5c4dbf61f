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
  /** A rare long stop of any piece moves it by much. */
  isUpset?: true
  /** It counts stops that are rare and long: breakdowns, and those that wait out a break. */
  isLongStop?: true
  /** Of a ratio: both count cases, some of all, so that it rests on those of the rarer sort. */
  isPart?: true
}

/** A measure of something that has a name. `where`: the place in words, of measures that tell what is held there. */
export type NamedRow = Row<(name: string, where: string) => string>

type Sort = Pick<Row<string>, 'unit' | 'kind' | 'better'>

/** Sorts of measures of which there are several. */
export const sorts = {
  /** Cases that should be few, a shift; and such that are as they are. */
  lostCases: { unit: 'cases', kind: 'count', better: 'down' },
  countedCases: { unit: 'cases', kind: 'count', better: 'neither' },
  /** Cases in a place. */
  heldCases: { unit: 'cases', kind: 'mean', better: 'neither' },
  /** Stops and what else has to be done, a shift. */
  stops: { unit: 'count', kind: 'count', better: 'down' },
  /** Time that a case takes. */
  delay: { unit: 's', kind: 'mean', better: 'down' },
  /** Share of time in which something stands or is full. */
  idleShare: { unit: 'share', kind: 'mean', better: 'down' },
  /** Share of time in which somebody or something is at work. */
  busyShare: { unit: 'share', kind: 'mean', better: 'neither' },
  tape: { unit: 'm', kind: 'total', better: 'down' },
  tapePerCase: { unit: 'm/case', kind: 'ratio', better: 'down' },
  /** Money for 1000 cases. */
  cost: { unit: 'money', kind: 'ratio', better: 'down' },
  /** Time elements of ISO 22400-2 and their ratios. */
  element: { unit: 's', kind: 'total', better: 'neither' },
  index: { unit: 'share', kind: 'ratio', better: 'up' },
} as const satisfies Record<string, Sort>
