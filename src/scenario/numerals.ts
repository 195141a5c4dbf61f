/** Numbers as people write them: decimal comma, thousands parted by spaces, commas or points. */

/** The numbers that a text may begin with, in the notation of the format, and what follows. */
interface Numeral {
  /** One, where its meaning is certain; two, where a comma may part decimals or thousands; none, where no rule fits. */
  readings: string[]
  rest: string
}

const numeral =
  /^\s*([+-]?)((?:\d{1,3}(?:[ \u00a0\u202f]\d{3})+(?!\d)|\d+)?(?:[.,]\d+)*\.?)([eE][+-]?\d+)?\s*(.*?)\s*$/s

/**
 * Reads the number at the beginning of `text`; null where there is none. A space before each three digits parts thousands,
 * as the SI Brochure (9th edition, 5.4.4) has it; what stands more than once parts thousands too. A single comma before exactly
 * three digits may be either.
 */
export function numeralOf(text: string): Numeral | null {
  const [, sign, body = '', power = '', rest = ''] = numeral.exec(text) ?? []
  if (!/\d/.test(body)) return null
  const written = (digits: string) => `${sign === '-' ? '-' : ''}${digits}${power}`
  const readings = meanings(body.replace(/[ \u00a0\u202f]/g, ''), /[ \u00a0\u202f]/.test(body))
  return { readings: readings.map(written), rest }
}

/** `spaced`: thousands are parted already. */
function meanings(body: string, spaced: boolean): string[] {
  const marks = body.replace(/\d/g, '')
  const groups = body.split(/[.,]/)
  const inThrees = (parts: readonly string[]) =>
    /^\d{1,3}$/.test(parts[0]!) && parts.slice(1).every((part) => part.length === 3)
  if (marks === '' || marks === '.') return [body]
  if (marks === ',') {
    const decimal = `${groups[0] === '' ? '0' : groups[0]}.${groups[1]}`
    const isEither = !spaced && /^[1-9]\d{0,2}$/.test(groups[0]!) && groups[1]!.length === 3
    return isEither ? [decimal, groups.join('')] : [decimal]
  }
  const [first, last] = [marks[0]!, marks.at(-1)!]
  const before = groups.slice(0, -1)
  if (spaced || new Set(marks.slice(0, -1)).size > 1 || !inThrees(before)) return []
  if (first === last) return groups.at(-1)!.length === 3 ? [groups.join('')] : []
  return [`${before.join('')}.${groups.at(-1)}`]
}
