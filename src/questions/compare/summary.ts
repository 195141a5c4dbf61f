/** The first screen of a comparison. */

import { isSame, sizeText } from '../../answers/difference.js'
import type { DifferenceFigure } from '../../answers/difference-figure.js'
import { limitingText } from '../../answers/summary.js'
import { besideCost, isCostInPart, withVerdict } from '../../answers/warnings.js'
import { type MeasureKey, ofLine } from '../../catalogue/of-line.js'
import { counted, grouped, percentText, sentences } from '../../report/format.js'
import type { Summary } from '../../report/report.js'
import { acrossDrawsSentences } from './across-draws-table.js'
import type { CompareResult } from './document.js'
import { heldWords } from './words.js'

/** Measures in which a design may be better. */
export const wished: readonly MeasureKey[] = ['target-held', 'throughput', 'cost-per-1000']

/** The first screen of a comparison; `best` is what selection says, empty where none was asked for. */
export function compareSummary(result: CompareResult, best: readonly string[]): Summary {
  const { made, variants } = result
  const [base] = Object.entries(variants)
  const limiting = base ? limitingText(base[1], null) : ''
  return {
    question: 'Which of these designs is better than the base, and by how much?',
    answer: best.length > 0 ? best.join(' ') : answerOf(result),
    sureness: [
      `${percentText(made.confidence)} confidence that all differences lie within their plus-minus at the same time; the designs used the same random numbers in up to ${grouped(made.shifts, 0)} ${result.shift.campaign > 1 ? 'campaigns' : 'shifts'} each.`,
      ...acrossDrawsSentences(result),
    ],
    limiting: limiting === '' ? '' : `In the base: ${limiting}`,
    next: nextOfCompared(result),
  }
}

/** For each wish how many designs are shown to fulfil it, and which one most. */
function answerOf(result: CompareResult): string {
  const { differences, display, variants } = result
  const count = Object.keys(differences).length
  // what a cost leaves out may cost more than what it is less by
  const asked = wished.filter((measure) => measure !== 'cost-per-1000' || !isCostInPart(result))
  const parts = asked.flatMap((measure) => {
    const { better: way, wish } = ofLine[measure]
    const better = Object.entries(differences)
      .flatMap(([name, figures]): [string, DifferenceFigure][] => {
        const figure = figures[measure]
        const isBetter = figure?.isShown && (figure.mean ?? 0) > 0 === (way === 'up')
        return figure && isBetter ? [[name, figure]] : []
      })
      .sort((a, b) => Math.abs(b[1].mean!) - Math.abs(a[1].mean!))
    const [most] = better
    if (!most) return []
    const [name, figure] = most
    const size =
      measure === 'target-held'
        ? heldWords(variants[name], Object.values(variants)[0])
        : `by ${sizeText(figure, display)}`
    const who =
      count === 1
        ? withVerdict(name, result)
        : `${better.length === count ? `all ${count}` : `${better.length} of ${count}`} variants, ${withVerdict(name, result)} most`
    return [`Shown ${wish} than the base: ${who} (${size}).`]
  })
  const shown = parts.length > 0 ? parts.join(' ') : 'No design is shown to be better than the base.'
  return `${shown} ${besideCost(result)}`.trimEnd()
}

function nextOfCompared({ differences, compared, best, made }: CompareResult): string[] {
  const open = Object.values(differences).flatMap((figures) =>
    compared.filter(
      (measure) =>
        figures[measure]?.isShown === false &&
        (figures[measure].few !== undefined || !isSame(figures[measure])),
    ),
  ).length
  return sentences(
    open > 0 &&
      `${counted(open, 'difference')} ${open === 1 ? 'is' : 'are'} not shown. If one matters, say how large it must be (--matters) and simulate more than ${grouped(made.shifts, 0)} shifts.`,
    best === null &&
      Object.keys(differences).length > 1 &&
      'The effect of two changes together is not the sum of both: put all that you would buy into one variant, or let --best choose.',
  )
}
