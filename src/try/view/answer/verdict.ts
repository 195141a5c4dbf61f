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

/** Words that name a command or an option are of no use in the page, where a change answers at once. */
export const inPage = (line: string): string =>
  line
    .replace(/ \((help: [\w-]+|--plain)\)(?=\.?$)/, '')
    .replace(/ tapeshift compare says what that is worth\.$/, ' Change it here to see what that is worth.')
    .replace(
      ': tapeshift size says whether a cheaper line does that too.',
      '. Try whether a cheaper line does that too.',
    )

/** The part of a screen under a word; null where it says nothing of that. */
export function saidOf(screen: Screen, head: string): Said | null {
  const [said] = screen.parts.flatMap((part) => ('head' in part && part.head === head ? [part] : []))
  return said ? { ...said, lines: said.lines.map(inPage) } : null
}
