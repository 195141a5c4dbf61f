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
  | 'kg/case'
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
