/** The question that a scenario file opens with. */

/** The first of the comments above the first key that asks something. */
export function questionOf(text: string): string | null {
  for (const line of text.split(/\r?\n/)) {
    if (line.trim() === '') continue
    if (!line.startsWith('#')) return null
    const asked = /^#+\s*(?:question:\s*)?(.*\?)\s*$/i.exec(line)
    if (asked) return asked[1]!
  }
  return null
}
