/** The figures of the line as a whole, each with its plus-minus: what is not told by another table. */

import { isCostKey } from '../../catalogue/costs.js'
import { entriesOf } from '../../catalogue/figure.js'
import { figures, words } from '../../report/cell.js'
import { printFigure } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import type { RunResult } from './document.js'

/** A row a figure, as the document has them; the elements of the cost have a table of their own. */
export function measuresTable({ measures, display }: RunResult): Table {
  return {
    section: 'figures',
    title: 'Figures of the line',
    columns: [...words('figure'), ...figures('value', 'plus-minus'), ...words('unit')],
    rows: entriesOf(measures)
      .filter(([key]) => !isCostKey(key))
      .map(([, figure]) => {
        const { value, interval, unit } = printFigure(figure, display)
        return [figure.label, value, interval, unit]
      }),
  }
}
