/** `1 to 2 min`: a time that lies somewhere between two, each as likely as the other. */
import { parseQuantity, quantityPattern } from './quantity.js'
import { fault, type Read } from './reading.js'
import { dimensions } from './units.js'

const number = '(?:\\d+\\.?\\d*|\\.\\d+)'
const shape = new RegExp(
  `^\\s*(${number})(?![eE][+-]?\\d)\\s*([A-Za-z]*)\\s*(?:\\bto\\b|-|–)\\s*(${number})\\s*([A-Za-z]+)\\s*$`,
)

/** Whether a text is written as such a time, rightly or not. */
export const isBetween = (written: unknown): written is string =>
  typeof written === 'string' && written.length <= 200 && shape.test(written)

/** Both ends, s. The first takes the unit of the second where it has none. */
export function readBetween(written: string): Read<{ low: number; high: number }> {
  const [, first, unit, second, last] = shape.exec(written)!
  const ends = [parseQuantity(`${first} ${unit || last}`, 'time'), parseQuantity(`${second} ${last}`, 'time')]
  const wrong = ends.find((end) => !('value' in end))
  if (wrong && !('value' in wrong)) return fault(wrong.code, wrong.rule, wrong.fix)
  const [low, high] = ends.map((end) => ('value' in end ? end.value : Number.NaN)) as [number, number]
  if (low < high) return { value: { low, high } }
  return low === high
    ? fault('conflict', 'both ends are the same', `did you mean \`${second} ${last}\`?`)
    : fault(
        'conflict',
        'the smaller time must come first',
        `did you mean \`${second} ${last} to ${first} ${unit || last}\`?`,
      )
}

/** Regular expression source for editors. */
export function betweenPattern(): string {
  const units = Object.keys(dimensions.time.units).join('|')
  return `^\\s*${number}\\s*(${units})?\\s*(to|-|–)\\s*${quantityPattern('time').replace(/^\^\\s\*\[\+-\]\?/, '')}`
}
