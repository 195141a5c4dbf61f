/** The numbers of a column, once the sign for its decimals is settled and told. */
import type { Delimiter } from './dialect.js'
import type { NumberColumn } from './numbers.js'
import type { Reading } from './reading.js'

/** Row by row, NaN where a row holds none. Cells between semicolons speak for decimal commas where nothing else does. */
export function numbersOf(
  numbers: NumberColumn,
  { file, column }: { file: string; column: string },
  delimiter: Delimiter,
  { record, ledger }: Pick<Reading, 'record' | 'ledger'>,
): readonly number[] {
  const { sign, isGuess, isMixed } = numbers.sign(delimiter === ';' ? 'comma' : 'point', record.decimal)
  if (isGuess || isMixed)
    ledger.tell('decimals', {
      file,
      group: column,
      what: [
        column,
        sign,
        isMixed ? ', though some rows have the other sign' : ', because the file does not show which',
      ],
    })
  return numbers.values(sign)
}
