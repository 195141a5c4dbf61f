/** What nobody named in a scenario. */

import { type Display, inUnitsOf } from '../catalogue/printed-units.js'
import type { Cell } from '../report/cell.js'
import { words } from '../report/cell.js'
import { flowText } from './flow.js'
import type { Assumed } from './made.js'

/** Is it without a published source? */
export const isUnsourced = ({ basis }: Assumed): boolean => basis !== 'definition of the format'

/** Columns and rows of a table of them. */
export const assumedColumns = words('what', 'value', 'where the value comes from')
export const assumedRows = (assumed: readonly Assumed[], display: Display): Cell[][] =>
  assumed.map(({ path, value, basis }) => [{ path }, inUnitsOf(flowText(value), display), basis])
