/** Text for a terminal: paragraphs broken at spaces. */
import { printable } from '../scenario/printable.js'

/** How text may be set: bold where the terminal shows it. */
export interface TextStyle {
  bold: (text: string) => string
  width: number
}

/**
 * Breaks a text at spaces so that no line is longer than `width`; a word longer than that stays whole. `first` stands before the
 * first line, `indent` before the others.
 */
export function paragraph(text: string, width: number, indent = '', first = ''): string {
  const lines: string[] = []
  let line = first
  let isBegun = false
  for (const word of printable(text).split(' ')) {
    if (isBegun && line.length + 1 + word.length > width) {
      lines.push(line)
      line = indent + word
    } else line = isBegun ? `${line} ${word}` : line + word
    isBegun = true
  }
  lines.push(line)
  return lines.join('\n')
}
