/** The design that was selected: in a sentence with its guarantee, and how each design fared. */

import { sizeText } from '../../answers/difference.js'
import { figureAt } from '../../answers/figure-at.js'
import { withVerdict } from '../../answers/warnings.js'
import type { Display } from '../../catalogue/printed-units.js'
import { figures, words } from '../../report/cell.js'
import { counted, figureText, grouped, listed, percent, percentText } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import { chanceLimits } from '../../statistics/events.js'
import { fewest } from '../../statistics/evidence.js'
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
  const among = best.among.length > 0 ? ` of the designs that keep ${conditions(best.among)}` : ''
  if (best.pick !== null) {
    const amount = amountText(best.within, best.unit, display)
    const open = Object.entries(best.designs).filter(([, { verdict }]) => verdict === 'undecided')
    const leftOut =
      open.length > 0
        ? ` Left out, as it is still open whether they keep that: ${open.map(([name]) => name).join(', ')}.`
        : ''
    const note = variants[best.pick]?.note ? ` (${variants[best.pick]!.note})` : ''
    return [
      `Choose ${withVerdict(best.pick, result)}${note}: it has the ${what}${among}. With ${percentText(best.confidence)} confidence${best.across ? ', inputs taken as they are given,' : ''} it is the best of them, or within ${amount} of the best.${leftOut}`,
      ...acrossSentences(result),
    ]
  }
  const all = Object.values(best.designs)
  if (all.every(({ verdict }) => verdict === 'refused'))
    return [`No design can be chosen: none keeps ${conditions(best.among)}.`]
  return [`No design is chosen: ${stillOpen(best).join(' ')}`, ...acrossSentences(result)]
}

/** `87 % (76 to 94 %)`: a share of draws with its exact limits. */
function shareOfDraws(some: number, draws: number, confidence: number): string {
  const { low, high } = chanceLimits(some, draws, confidence)
  return `${percent(some / draws)} (${percent(low).replace(' %', '')} to ${percent(high)})`
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
  const over = `Over ${counted(across.draws, 'draw')} of what the inputs may be`
  const near = `the best or within ${amountText(best.within, unit, display)} of it`
  const others = Object.entries(across.best)
    .filter(([name, some]) => name !== pick && some > 0)
    .sort((a, b) => b[1] - a[1])
    .slice(0, mostNamed)
    .map(([name]) => `${name} in ${share(name)}`)
  if (pick === null) return others.length > 0 ? [`${over} ${near}: ${listed(others)}.`] : []
  const farthest =
    across.behind !== null && across.behind > best.within
      ? `, and ${amountText(across.behind, unit, display)} behind it at worst`
      : ''
  const rivals = others.length > 0 ? `; ${listed(others)}` : ''
  const told = [best.measure, ...across.among.map(({ measure }) => measure)].flatMap((measure) => {
    const figure = figureAt(variants[pick]!, measure)
    return figure ? `${figure.label}: ${figureText(figure, display)}` : []
  })
  return [
    `${over} ${pick} is ${near} in ${share(pick)}${farthest}${rivals}.`,
    `With what is not known of the inputs, of ${pick}: ${[...new Set(told)].join('; ')}.`,
  ]
}

/** Why designs are still open, and what to do. */
function stillOpen(best: BestResult): string[] {
  const open = Object.entries(best.designs).filter(([, { verdict }]) => verdict === 'undecided')
  // of two that are alike one says it for both
  const reasons = [...new Set(open.flatMap(([name, outcome]) => whyOpen(name, outcome)))]
  if (open.every(([, { shifts }]) => shifts < best.most))
    return [...reasons, 'So rare a difference cannot matter: take either.']
  return [
    `after ${grouped(best.most, 0)} shifts, the most that were allowed, it is still open for ${open.map(([name]) => name).join(', ')}.`,
    ...reasons,
    'Allow more shifts, or a larger difference that does not matter.',
  ]
}

/** The reason in a sentence; none where the shifts just spread too far for their number. */
function whyOpen(name: string, { why, shifts }: Outcome<string>): string[] {
  if (why === undefined || why.reason === 'spread') return []
  const of = `${why.shifts === 0 ? 'none' : grouped(why.shifts, 0)} of ${grouped(shifts, 0)} shifts`
  if (why.reason === 'unseen') return [`${name} had ${why.stop} in ${of}: not told what they do.`]
  return [`${[name, why.other].sort().join(' and ')} differed in ${of}: not told.`]
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
    `Chosen by fully sequential selection (Kim & Nelson 2006) on means, and on ratios as total over total; it spent ${grouped(best.spent, 0)} shifts of all designs together. No design is told from another before each kind of jam, tape break and breakdown that the scenario names came in ${fewest} of its shifts, or so seldom that it cannot matter, nor by differences too rare to know how far they spread.${accepted} Designs that were dropped early have few shifts: their figures here are as wide.${best.across ? ' Who keeps what is required was told with inputs as they are given too.' : ''}`,
  ]
}

const verdicts = {
  picked: 'chosen',
  dropped: 'not the best',
  refused: 'does not keep what is required',
  undecided: 'still open',
} as const

/** A row a design. */
export function bestTable({ best, display }: CompareResult): Table {
  const across = best?.across
  return {
    title: 'How the best was found',
    note: across
      ? `Chosen with inputs as they are given. Last column: in what share of ${counted(across.draws, 'draw')} of what the inputs may be it is the best, or within ${amountText(best.within, best.unit, display)} of it, in brackets exact limits of that share; designs that do not keep what is required with inputs as given take no part.`
      : '',
    columns: [
      ...words('design', 'verdict'),
      ...figures('shifts until it was clear', ...(across ? ['best over the inputs'] : [])),
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
