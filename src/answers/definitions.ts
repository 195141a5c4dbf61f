/** What each measure that a report shows means, one by one, beside its name in the result document. */

import { entryAt } from '../catalogue/measures.js'
import { stateKeys, stateLabel } from '../catalogue/states.js'
import { type Cell, words } from '../report/cell.js'
import type { Table } from '../report/report.js'
import { figuresAt } from './figure-at.js'
import type { LineResult } from './line-result.js'

/** Every measure of the results once, with its words, its place in the document and its meaning, and the states that occur. */
export function definitionsTable(results: readonly LineResult[]): Table {
  const told = results
    .flatMap((result) => figuresAt(result))
    .map(([path, figure]) => ({ ...entryAt(path), ...figure, isState: path[2] === 'states' }))
  const measures = new Map<string, Cell[]>()
  for (const { place, label, meaning, isState } of told)
    if (!isState && !measures.has(place)) measures.set(place, [label, { path: place }, meaning])
  const ofStates = stateKeys.flatMap((key): Cell[][] => {
    const found = told.find(({ place, isState, mean }) => isState && mean && place.endsWith(`.${key}`))
    return found ? [[`State: ${stateLabel(key)}`, { path: found.place }, found.meaning]] : []
  })
  return {
    title: 'What each measure means',
    note: 'Intervals: means over shifts have Student t intervals, from 30 shifts on corrected for skewness. Counts of fewer than 30 events have exact limits. Shares of shifts have Wilson intervals (exact limits near none and all). Totals divided by totals use the ratio estimator. Each measure is named for the first piece that has it; the second column is its place in result.json.',
    columns: words('measure', 'place in result.json', 'meaning'),
    rows: [...measures.values(), ...ofStates],
  }
}
