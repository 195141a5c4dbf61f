/** The nearest fix where a map of keys is needed and something else, or nothing, was written. */
import { sizePattern } from './case-size.js'
import { parseQuantity } from './quantity.js'
import type { Path } from './walk.js'

/** Keys that are named before the rest is left to the manual. */
const mostKeys = 8

const isCsv = (written: unknown): written is string =>
  typeof written === 'string' && /^[^{}[\]`]{1,80}\.csv$/i.test(written)

const columns = 'unit: mm, columns: {name: NAME, length: LENGTH, width: WIDTH, height: HEIGHT}'

/** What was written in short, in full; null where its meaning is not certain. */
function inFull([root, ...names]: Path, written: unknown): string | null {
  if (typeof written !== 'string' || written.length > 100) return null
  const asked = (form: string) => `did you mean \`${form}\`?`
  if (root === 'cases' && names.length === 0 && isCsv(written))
    return `cases from a file: \`{file: ${written}, ${columns}}\`, with the headers of its columns`
  if (root === 'cases' && names.length === 1 && new RegExp(sizePattern).test(written))
    return asked(`{size: ${written.trim()}}`)
  if (root === 'shift' && names.length === 0 && 'value' in parseQuantity(written, 'time'))
    return asked(`{length: ${written.trim()}}`)
  return null
}

/** `keys` are those that may stand there; null where any name may. `usual` is what is said of the form alone. */
export function mapFix(path: Path, written: unknown, keys: readonly string[] | null, usual: string): string {
  const full = inFull(path, written)
  if (full !== null) return full
  if (keys === null || keys.length === 0) return usual
  const more = keys.length > mostKeys ? ', ...' : ''
  return `${written === undefined ? 'add' : 'write'} its keys here: ${keys.slice(0, mostKeys).join(', ')}${more}`
}
