/** Text broken into lines and shortened to the room that there is. */
import { guessedWidth, lettersThatFit } from './letters.js'

/**
 * `text` in lines of at most `mostOf` letters, broken at spaces, else after `-`, `_` or `,`, else where the
 * line is full. Nothing of the text is lost but the spaces at the breaks. Where letters differ in width `mostOf` is a function of
 * what is left.
 */
export function wrapped(text: string, mostOf: number | ((rest: string) => number)): string[] {
  const lines: string[] = []
  let rest = text
  for (;;) {
    const most = typeof mostOf === 'number' ? mostOf : mostOf(rest)
    if (rest.length <= most) return [...lines, rest]
    const head = rest.slice(0, most + 1)
    const space = head.lastIndexOf(' ')
    const joint = head.slice(0, most).search(/[-_,][^-_,]*$/) + 1
    const cut = space > most / 3 ? space : joint > most / 3 ? joint : most
    lines.push(rest.slice(0, cut))
    rest = rest.slice(cut).trimStart()
  }
}

/** `text` in lines of so many letters of usual width. */
export const linesOf = (text: string, most: number): string[] =>
  wrapped(text, (rest) => lettersThatFit(rest, most))

/** `text` in lines that are no wider than `most` by the usual width of letters of this size, broken at spaces alone. */
export function wordLines(text: string, size: number, most: number): string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`
    if (lines.length > 0 && guessedWidth(longer, size) <= most) lines[lines.length - 1] = longer
    else lines.push(word)
  }
  return lines
}

/** `text` without its middle where it has more than `most` letters: names that are alike often differ at their ends. */
export function shortened(text: string, most: number): string {
  const letters = [...text]
  if (letters.length <= most) return text
  const head = Math.ceil((most - 1) / 2)
  return `${letters.slice(0, head).join('')}…${letters.slice(letters.length - (most - 1 - head)).join('')}`
}

/** `text` without as much of its middle as it takes to be fit. */
export function fitted(text: string, isFit: (text: string) => boolean): string {
  for (let most = [...text].length; ; most--) {
    const short = shortened(text, most)
    if (most <= 1 || isFit(short)) return short
  }
}

/** Most letters of a line beside a row. */
const rowLetters = 26

/** A name beside its row in two lines at most, without its middle where it is longer. */
export const rowLabel = (name: string): string[] =>
  linesOf(
    fitted(name, (short) => linesOf(short, rowLetters).length <= 2),
    rowLetters,
  )

/** A dotted path beside its row in two lines at most, broken at a dot where that fits. */
export function pathLabel(path: string): string[] {
  if (path.length <= rowLetters) return [path]
  const dot = path.lastIndexOf('.', rowLetters - 1) + 1
  return dot > 0 && path.length - dot <= rowLetters ? [path.slice(0, dot), path.slice(dot)] : rowLabel(path)
}
