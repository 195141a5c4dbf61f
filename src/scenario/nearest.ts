/** The word that was meant, among those that are known. */
import { closest, distance } from 'fastest-levenshtein'

/** The known word that was most likely meant, in a list of one; an empty list where none is near. */
export function near(word: string, known: readonly string[]): string[] {
  if (known.length === 0) return []
  const guess = closest(word, known)
  return distance(word, guess) <= Math.max(2, Math.ceil(word.length / 3)) ? [guess] : []
}

/** "did you mean" for a word among known ones; a plain list where none is near. */
export function nearest(word: string, known: readonly string[]): string {
  if (known.length === 0) return 'remove it'
  const [guess] = near(word, known)
  return guess === undefined ? `allowed here: ${known.join(', ')}` : `did you mean \`${guess}\`?`
}
