/** What a scenario says that it was validated by, and whether that still covers it: the hash of what its shifts depend on goes with the words. */

/** Letters of the hash that are written down. */
const letters = 12
const written = / \[shifts ([0-9a-f]{12})\]$/

/** The words as a scenario has them, with what they cover. */
export const coveringWords = (words: string, shiftsSha256: string): string =>
  `${words} [shifts ${shiftsSha256.slice(0, letters)}]`

/** The words of a scenario as a report prints them; what anybody wrote by hand stands as it is. */
export function validatedBy(words: string | undefined, shiftsSha256: string): string | null {
  if (words === undefined) return null
  const covers = written.exec(words)?.[1]
  if (covers === undefined) return words
  const said = words.replace(written, '')
  return covers === shiftsSha256.slice(0, letters)
    ? said
    : `${said}. The scenario has changed since then, so this no longer applies`
}
