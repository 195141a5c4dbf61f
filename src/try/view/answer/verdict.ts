/** What the figures say of the target, in the words of the page. */
import type { RunResult } from '../../../questions/run/document.js'
import { runScreen } from '../../../questions/run/first-screen.js'
import type { Said, Screen } from '../../../report/screen.js'

/** The first screen of a run: what is not shown may still come to be, with more shifts or another design. */
export function screenOf(result: RunResult): Screen {
  const screen = runScreen(result)
  const { word, tone } = screen.verdict
  const isOpen = word === 'NOT SHOWN' && tone === 'warning'
  return isOpen ? { ...screen, verdict: { ...screen.verdict, word: 'NOT YET SHOWN' } } : screen
}

/** The part of a screen under a word; null where it says nothing of that. */
export const saidOf = (screen: Screen, head: string): Said | null =>
  screen.parts.flatMap((part) => ('head' in part && part.head === head ? [part] : []))[0] ?? null
