/** What nobody named in a scenario, as rows of a table. */
import type { RunResult } from '../study/result.js'

/** Path, value and basis of each. */
export const assumedRows = (assumed: RunResult['assumed']): string[][] =>
  assumed.map(({ path, value, basis }) => [
    path,
    typeof value === 'string' ? value : JSON.stringify(value),
    basis,
  ])
