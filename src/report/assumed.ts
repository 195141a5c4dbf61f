/** What nobody named in a scenario, as rows of a table. */
import type { RunResult } from '../study/result.js'
import { flowText } from './flow.js'

/** Path, value and basis of each. */
export const assumedRows = (assumed: RunResult['assumed']): string[][] =>
  assumed.map(({ path, value, basis }) => [path, flowText(value), basis])
