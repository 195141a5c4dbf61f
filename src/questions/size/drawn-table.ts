/** What each input adds to what is not known of the promises, the rate and the cost of the design that a sizing ends with. */
import { type FigureInputs, inputSharesTable } from '../../answers/rests-on.js'
import type { Table } from '../../report/report.js'
import type { SizeResult } from './document.js'
import { endOf } from './words.js'

/** Without rows where inputs were not drawn, or nothing can be told apart. */
export const addedTable = (result: SizeResult): Table =>
  inputSharesTable(toldOf(result), result.evidence ?? [])

function toldOf(result: SizeResult): FigureInputs[] {
  const { drawn } = result
  const end = endOf(result)?.afresh
  if (!drawn || !end) return []
  const measures = end.measures as Partial<Record<string, { inputs?: { share: number } }>>
  return [
    ...drawn.promises.map((told, index) => ({ told, inputs: end.promises[index]?.inputs })),
    ...drawn.contributions.map((told) => ({ told, inputs: measures[told.measure]?.inputs })),
  ].flatMap(({ told, inputs }) =>
    told && inputs && told.shares.some(({ share }) => share > 0) ? [{ told, ofWhole: inputs.share }] : [],
  )
}
