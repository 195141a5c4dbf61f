/** The design that was selected: in a sentence with its guarantee, and how each design fared. */
import type { BestResult, CompareResult } from '../study/compare-result.js'
import type { Table } from './content.js'
import { sizeText } from './difference.js'
import { type Display, grouped, percentText } from './format.js'
import { withVerdict } from './warnings.js'

/** An amount of a measure without plus-minus: `0.5 EUR`. */
const amountText = (amount: number, unit: string, display: Display): string =>
  sizeText({ mean: amount, low: amount, high: amount, unit }, display).replace(' ± 0', '')

const conditions = (among: BestResult['among']): string => among.map(({ require }) => require).join(' and ')

/** What was selected and how sure that is; empty where nothing was asked for. */
export function bestSentences(result: CompareResult): string[] {
  const { best, display, variants } = result
  if (best === null) return []
  const what = `${best.isLargerBetter ? 'highest' : 'lowest'} ${best.label.charAt(0).toLowerCase()}${best.label.slice(1)}`
  const among = best.among.length > 0 ? ` of the designs that keep ${conditions(best.among)}` : ''
  if (best.pick !== null) {
    const amount = amountText(best.within, best.unit, display)
    const note = variants[best.pick]?.note ? ` (${variants[best.pick]!.note})` : ''
    return [
      `Choose ${withVerdict(best.pick, result)}${note}: it has the ${what}${among}. With ${percentText(best.confidence)} confidence it is the best of them, or within ${amount} of the best.`,
    ]
  }
  const all = Object.values(best.designs)
  if (all.every(({ verdict }) => verdict === 'refused'))
    return [`No design can be chosen: none keeps ${conditions(best.among)}.`]
  const open = Object.entries(best.designs).filter(([, { verdict }]) => verdict === 'undecided')
  return [
    `No design is chosen: after ${grouped(best.most, 0)} shifts, the most that were allowed, it is still open for ${open.map(([name]) => name).join(', ')}. Allow more shifts, or a larger difference that does not matter.`,
  ]
}

/** What it took, and what is assumed. */
export function bestCertainty({ best, display }: CompareResult): string[] {
  if (best === null) return []
  const near = best.among.map(
    ({ require, near, unit }) => `${require} (give or take ${amountText(near, unit, display)})`,
  )
  const accepted =
    near.length > 0
      ? ` Half of the risk is that of the conditions: a design that keeps ${near.join(' and ')} by more than that is not refused, one that misses it by more is not accepted.`
      : ''
  return [
    `Chosen by fully sequential selection (Kim & Nelson 2001), which looks at the mean of the shifts' own figures and takes them to be about normal; it spent ${grouped(best.spent, 0)} shifts of all designs together.${accepted} Designs that were dropped early have few shifts: their figures here are as wide.`,
  ]
}

const verdicts = {
  picked: 'chosen',
  dropped: 'not the best',
  refused: 'does not keep what is required',
  undecided: 'still open',
} as const

/** A row a design. */
export function bestTable({ best }: CompareResult): Table {
  return {
    title: 'How the best was found',
    note: '',
    columns: ['design', 'verdict', 'shifts until it was clear'],
    words: ['verdict'],
    rows: Object.entries(best?.designs ?? {}).map(([name, { verdict, shifts }]) => [
      name,
      verdicts[verdict],
      grouped(shifts, 0),
    ]),
  }
}
