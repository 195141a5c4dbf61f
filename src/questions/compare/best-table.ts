/** The design that was selected: in a sentence with its guarantee, and how each design fared. */

import { sizeText } from '../../answers/difference.js'
import { figureAt } from '../../answers/figure-at.js'
import { withVerdict } from '../../answers/warnings.js'
import type { Display } from '../../catalogue/printed-units.js'
import { figures, words } from '../../report/cell.js'
import { counted, figureText, grouped, listed, percentText } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import { fewest } from '../../statistics/evidence.js'
import { shareOfDraws } from './across-draws-table.js'
import type { Outcome } from './best.js'
import type { BestResult, CompareResult } from './document.js'

/** An amount of a measure without plus-minus: `0.5 EUR`. */
const amountText = (amount: number, unit: string, display: Display): string =>
  sizeText({ mean: amount, low: amount, high: amount, unit }, display)

const conditions = (among: BestResult['among']): string => among.map(({ require }) => require).join(' and ')

/** What was selected and how sure that is; empty where nothing was asked for. */
export function bestSentences(result: CompareResult): string[] {
  const { best, display, variants } = result
  if (best === null) return []
  const what = `${best.isLargerBetter ? 'highest' : 'lowest'} ${best.label.charAt(0).toLowerCase()}${best.label.slice(1)}`
  const among = best.among.length > 0 ? ` of the designs that meet ${conditions(best.among)}` : ''
  if (best.pick !== null) {
    const amount = amountText(best.within, best.unit, display)
    const open = Object.entries(best.designs).filter(([, { verdict }]) => verdict === 'undecided')
    const leftOut =
      open.length > 0
        ? ` Left out, because it is not known whether they meet this: ${open.map(([name]) => name).join(', ')}.`
        : ''
    const note = variants[best.pick]?.note ? ` (${variants[best.pick]!.note})` : ''
    return [
      `Choose ${withVerdict(best.pick, result)}${note}: it has the ${what}${among}. With ${percentText(best.confidence)} confidence${best.across ? ', inputs as given,' : ''} it is the best of them, or within ${amount} of the best.${leftOut}`,
      ...acrossSentences(result),
    ]
  }
  const all = Object.values(best.designs)
  if (all.every(({ verdict }) => verdict === 'refused'))
    return [`No design can be chosen: none meets ${conditions(best.among)}.`]
  return [`No design is chosen: ${stillOpen(best).join(' ')}`, ...acrossSentences(result)]
}

/** Designs that are named beside each other. */
const mostNamed = 3

/** What becomes of the choice where the inputs are others, and the figures that it goes by with both kinds; nothing where inputs are held fixed. */
function acrossSentences(result: CompareResult): string[] {
  const best = result.best!
  const { across, pick, confidence, unit } = best
  if (!across || across.draws === 0) return []
  const { display, variants } = result
  const share = (name: string) => shareOfDraws(across.best[name] ?? 0, across.draws, confidence)
  const over = `In ${counted(across.draws, 'draw')} of the uncertain inputs`
  const near = `the best or within ${amountText(best.within, unit, display)} of the best`
  const others = Object.entries(across.best)
    .filter(([name, some]) => name !== pick && some > 0)
    .sort((a, b) => b[1] - a[1])
    .slice(0, mostNamed)
    .map(([name]) => `${name} in ${share(name)}`)
  if (pick === null) return others.length > 0 ? [`${over} ${near}: ${listed(others)}.`] : []
  const farthest =
    across.behind !== null && across.behind > best.within
      ? `, and ${amountText(across.behind, unit, display)} worse at most`
      : ''
  const rivals = others.length > 0 ? `; ${listed(others)}` : ''
  const told = [best.measure, ...across.among.map(({ measure }) => measure)].flatMap((measure) => {
    const figure = figureAt(variants[pick]!, measure)
    return figure ? `${figure.label}: ${figureText(figure, display)}` : []
  })
  return [
    `${over} ${pick} is ${near} in ${share(pick)}${farthest}${rivals}.`,
    `${pick} with the uncertainty of the inputs: ${[...new Set(told)].join('; ')}.`,
  ]
}

/** Why designs are not decided, and what to do. */
function stillOpen(best: BestResult): string[] {
  const open = Object.entries(best.designs).filter(([, { verdict }]) => verdict === 'undecided')
  // of two that are alike one says it for both
  const reasons = [...new Set(open.flatMap(([name, outcome]) => whyOpen(name, outcome)))]
  if (open.every(([, { shifts }]) => shifts < best.most))
    return [...reasons, 'Such a rare difference cannot matter: choose either.']
  return [
    `after ${grouped(best.most, 0)} shifts, the maximum, it is not decided for ${open.map(([name]) => name).join(', ')}.`,
    ...reasons,
    'Allow more shifts, or a larger difference that does not matter.',
  ]
}

/** The reason in a sentence; none where the shifts just spread too far for their number. */
function whyOpen(name: string, { why, shifts }: Outcome<string>): string[] {
  if (why === undefined || why.reason === 'spread') return []
  const of = `${why.shifts === 0 ? 'none' : grouped(why.shifts, 0)} of ${grouped(shifts, 0)} shifts`
  if (why.reason === 'unseen') return [`${name} had ${why.stop} in ${of}: too few to judge their effect.`]
  return [`${[name, why.other].sort().join(' and ')} differed in ${of}: too few to tell.`]
}

/** What it took, and what is assumed. */
export function bestCertainty({ best, display }: CompareResult): string[] {
  if (best === null) return []
  const near = best.among.map(
    ({ require, near, unit }) => `${require} (± ${amountText(near, unit, display)})`,
  )
  const accepted =
    near.length > 0
      ? ` Half of the risk is for the conditions: a design that meets ${near.join(' and ')} by more than this is not rejected, and one that misses it by more is not accepted.`
      : ''
  return [
    `Chosen by fully sequential selection (Kim & Nelson 2006) on means, and on ratios of totals; it took ${grouped(best.spent, 0)} shifts of all designs together. Before designs are compared, each kind of jam, tape break and breakdown of the scenario must have occurred in ${fewest} shifts of each, or be too rare to matter. Differences that are too rare to estimate their spread are not used.${accepted} Designs that were dropped early have few shifts, so their plus-minus is wide.${best.across ? ' Whether a design meets the conditions was also judged with inputs as given.' : ''}`,
  ]
}

const verdicts = {
  picked: 'chosen',
  dropped: 'not the best',
  refused: 'does not meet the conditions',
  undecided: 'not decided',
} as const

/** A row a design. */
export function bestTable({ best, display }: CompareResult): Table {
  const across = best?.across
  return {
    title: 'How the best design was found',
    note: across
      ? `Chosen with inputs as given. Last column: the share of ${counted(across.draws, 'draw')} of the uncertain inputs in which the design is the best, or within ${amountText(best.within, best.unit, display)} of the best; in brackets its exact limits. Designs that do not meet the conditions with inputs as given are left out.`
      : '',
    columns: [
      ...words('design', 'verdict'),
      ...figures('shifts until decided', ...(across ? ['best with uncertain inputs'] : [])),
    ],
    rows: Object.entries(best?.designs ?? {}).map(([name, { verdict, shifts }]) => [
      name,
      verdicts[verdict],
      grouped(shifts, 0),
      ...(across
        ? [
            Object.hasOwn(across.best, name)
              ? shareOfDraws(across.best[name]!, across.draws, best.confidence)
              : '',
          ]
        : []),
    ]),
  }
}
