/** The labels of a plan: flags above the pieces, at heights at which none covers another. */
import { guessedWidth } from '../report/marks/letters.js'
import { escaped } from '../report/markup.js'
import { ink, n, paper, quiet } from './plan-ink.js'

/** Sizes of letters in the plan, in its units, and the height of a line of them. */
export const letters = { name: 13, small: 11, line: 14 }

/** One label: its first line is bold. `at` is where its leader stands. */
export interface Label {
  at: number
  lines: string[]
}

interface PlacedLabel extends Label {
  /** Left edge and width of its letters. */
  from: number
  width: number
  /** 0 is next to the pieces. */
  level: number
}

const between = 6
/** From a leader to the letters beside it. */
const indent = 4

/**
 * Labels stand like flags, each to the right of its leader: from the right each is as low as it can be without touching
 * what stands there, so that no leader crosses a label further right. Only where the edge pushes a label back to the left may a leader pass behind it.
 */
export function placeLabels(labels: readonly Label[], edge: number): PlacedLabel[] {
  const placed: PlacedLabel[] = []
  for (const label of [...labels].sort((a, b) => b.at - a.at)) {
    const width = Math.max(
      ...label.lines.map((line, index) =>
        guessedWidth(line, index === 0 ? letters.name * 1.06 : letters.small),
      ),
    )
    const from = Math.max(0, Math.min(label.at + indent, edge - width))
    // what its letters touch, and leaders that would run through them
    const near = placed.filter(
      (other) =>
        (other.from < from + width + between && other.from + other.width + between > from) ||
        (other.at > from - between && other.at < from + width + between),
    )
    const level = Math.max(-1, ...near.map((other) => other.level)) + 1
    placed.push({ ...label, from, width, level })
  }
  return placed.reverse()
}

/** Height of all levels together. */
export function heightOf(placed: readonly PlacedLabel[]): number {
  return levelsOf(placed).reduce((sum, height) => sum + height, 0)
}

/** Height of each level, by its label with most lines. */
function levelsOf(placed: readonly PlacedLabel[]): number[] {
  const levels: number[] = []
  for (const { level, lines } of placed)
    levels[level] = Math.max(levels[level] ?? 0, lines.length * letters.line + 5)
  return levels
}

/** Draws labels over `base`, the height at which level 0 ends; leaders go down to `foot`. */
export function drawLabels(
  placed: readonly PlacedLabel[],
  base: number,
  foot: (at: Label) => number,
): string {
  const levels = levelsOf(placed)
  const bottomOf = (level: number) =>
    base - levels.slice(0, level).reduce((sum, height) => sum + height, 0) - 5
  const leaders = placed.map((label) => {
    const bottom = bottomOf(label.level)
    const isBeside = label.at < label.from
    const top = isBeside ? bottom - (label.lines.length - 1) * letters.line - letters.small : bottom + 3
    return `<path fill="none" stroke="${quiet}" stroke-width="0.8" d="M${n(label.at)} ${n(top)}V${n(foot(label))}"/>`
  })
  const texts = placed.map((label) => {
    const bottom = bottomOf(label.level)
    return label.lines
      .map((line, index) => {
        const y = bottom - (label.lines.length - 1 - index) * letters.line
        const letter =
          index === 0
            ? `font-size="${letters.name}" font-weight="bold" fill="${ink}"`
            : `font-size="${letters.small}" fill="${quiet}"`
        // on a strip of paper, so that no leader runs through the letters
        return `<text ${letter} stroke="${paper}" stroke-width="4" stroke-linejoin="round" paint-order="stroke" x="${n(label.from)}" y="${n(y)}">${escaped(line)}</text>`
      })
      .join('')
  })
  return [...leaders, ...texts].join('\n')
}
