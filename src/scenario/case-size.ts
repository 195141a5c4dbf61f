/** `380 x 280 x 240 mm`: the three outside sides of a case in one value. */
import { exampleApart } from './meant.js'
import { parseQuantity } from './quantity.js'
import { fault, type Read } from './reading.js'

/** Inches may have a fraction: `15 3/4`. */
const number = '(\\d+[ -]\\d{1,3}/\\d{1,3}|\\d+\\.?\\d*|\\.\\d+)'
const unit = '\\s*([A-Za-z"]*)\\s*'
const by = '[xX×*]'

/** Regular expression source, for editors too. */
export const sizePattern = `^\\s*${number}${unit}${by}\\s*${number}${unit}${by}\\s*${number}\\s*([A-Za-z"]+)\\s*$`

/** The sides as the format writes them: length, width and height. A side without a unit has that of the last. */
export function readSize(written: unknown): Read<[length: string, width: string, height: string]> {
  const match =
    typeof written === 'string' && written.length <= 200 ? new RegExp(sizePattern).exec(written) : null
  if (!match)
    return fault(
      'not-a-quantity',
      '`size` must be length x width x height, and a unit',
      `write it like \`${exampleApart('380 x 280 x 240 mm', String(written).slice(0, 200))}\``,
    )
  const [, length, ofLength, width, ofWidth, height, ofHeight] = match
  const sides = [
    `${length} ${ofLength || ofHeight}`,
    `${width} ${ofWidth || ofHeight}`,
    `${height} ${ofHeight}`,
  ]
  for (const side of sides) {
    const parsed = parseQuantity(side, 'length')
    if (!('value' in parsed)) return fault(parsed.code, parsed.rule, parsed.fix)
  }
  return { value: sides as [string, string, string] }
}
