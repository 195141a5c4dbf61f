/** What draws of the inputs say of a sizing, in words: in how many the promises are kept, figures with both kinds of what is not known, what to measure next. */
import { bothKinds, drawsText, measureNext } from '../../answers/inputs-words.js'
import type { Figure } from '../../catalogue/figure.js'
import { counted, grouped, percent, percentText, sentences } from '../../report/format.js'
import type { KeptDraws } from '../../statistics/kept-draws.js'
import type { SizeDrawn, SizedDesign, SizeResult } from './document.js'
import { endOf, figureWords, moneyText, observed, promisesText, setText } from './words.js'

const ofDraws = ({ kept, missed, open }: KeptDraws): number => kept + missed + open

/** `41 of 60 draws`. */
const keptText = (draws: KeptDraws): string => `${draws.kept} of ${counted(ofDraws(draws), 'draw')}`

/** What was asked of the draws: `in at least 90 % of 60 draws of what the inputs may be`; empty where nothing was. */
export const sureText = ({ drawn }: SizeResult): string =>
  drawn && drawn.sure !== null
    ? ` in at least ${percentText(drawn.sure)} of ${counted(drawn.draws, 'draw')} of the uncertain inputs`
    : ''

/** In how many draws the design that the search ends with keeps its promises, and in what share of what the inputs may be; empty where they were held fixed. */
export function keptSentences(result: SizeResult): string[] {
  const { drawn, made } = result
  const draws = endOf(result)?.design.draws
  if (!drawn || !draws) return []
  return sentences(
    `It meets ${promisesText(result)} in ${keptText(draws)} of the uncertain inputs: ${shareText(drawn)}.`,
    draws.open > 0 &&
      `${counted(draws.open, 'draw')} could not be decided in ${observed(made.shifts, result)} and ${draws.open === 1 ? 'counts' : 'count'} as not met.`,
  )
}

/** `68 % (55 to 80 %)`. */
const shareText = ({ share, low, high }: SizeDrawn): string =>
  `${percent(share)} (${percent(low).replace(' %', '')} to ${percent(high)})`

/** Whether the limits of the share leave open what was asked of it. */
export function isSureShown({ drawn }: SizeResult): string[] {
  if (!drawn || drawn.sure === null || drawn.share < drawn.sure || drawn.low >= drawn.sure) return []
  return [
    `The draws meet it as often as required. But ${percentText(drawn.sure)} lies within the limits of the true share, so the true share may be smaller. More --draws narrow the limits.`,
  ]
}

/** Said beside figures whose interval holds luck alone. */
export const asGiven = ({ drawn }: SizeResult): string => (drawn ? ', with the inputs as given' : '')

/** Said beside figures whose plus-minus holds both kinds. */
export const withBoth = ({ drawn }: SizeResult): string =>
  drawn ? ', with the uncertainty of the inputs in the plus-minus' : ''

/** The figures of the design that the search ends with, with both kinds of what is not known. */
export function bothKindsSentences(result: SizeResult): string[] {
  const { drawn, promises, display } = result
  const end = endOf(result)?.afresh
  if (!drawn || !end) return []
  const { throughput, 'cost-per-1000': cost } = end.measures
  const said = (label: string, figure: Figure | undefined) => {
    const text = bothKinds(figure, display)
    return text === null ? null : `${label}: ${text}`
  }
  const figures = sentences(
    ...promises.map(({ promise, unit }, index) => {
      const { inputs, ...luck } = end.promises[index]!
      const whole =
        inputs && figureWords({ mean: luck.mean, low: inputs.low, high: inputs.high }, unit, result)
      return (
        whole &&
        `${promise}: ${figureWords(luck, unit, result)} with the inputs as given, ${whole} with their uncertainty`
      )
    }),
    said('throughput', throughput),
    said(cost?.label ?? '', cost),
  )
  return figures.length === 0
    ? []
    : [`With both kinds of uncertainty (${drawsText(drawn)}): ${figures.join('; ')}.`]
}

/**
 * The input to measure next: by the promise or the rate, whichever straight lines explain best. A promise that is kept in all shifts of
 * one draw and in none of the next bends too much for them, where the rate does not.
 */
export function measureNextOf(result: SizeResult): string[] {
  const { drawn } = result
  const end = endOf(result)?.afresh
  if (!drawn || !end) return []
  const ofRate = drawn.contributions.find(({ measure }) => measure === 'throughput')
  const told = [
    ...drawn.promises.map((each, index) => ({ told: each, figure: end.promises[index] })),
    { told: ofRate, figure: end.measures.throughput },
  ]
  return (
    told
      .sort((a, b) => (b.told?.explained ?? 0) - (a.told?.explained ?? 0))
      .map(({ told: each, figure }) => measureNext(each ?? undefined, figure))
      .find((said) => said.length > 0) ?? []
  )
}

/** How the draws were judged, and what their limits are of. */
export function drawsCertainty(result: SizeResult): string[] {
  const { drawn, made } = result
  if (!drawn) return []
  return [
    `A draw is one possible set of the inputs. It is judged like a design in the search, with its own shifts, until it is decided or after ${grouped(made.shifts, 0)} shifts. A verdict is wrong with at most ${percentText(drawn.wrongly)} chance either way; a draw within the stated "within" of a promise may go either way. The limits of the share are exact at ${percentText(made.confidence)} confidence (Clopper and Pearson), widened for wrong verdicts${drawn.family > 1 ? `, and apply to all ${drawn.family} drawn designs at the same time` : ''}.`,
    ...isSureShown(result),
    ...bothKindsSentences(result),
  ]
}

/** The same in a sentence for the list of what the study did; empty where inputs were held fixed. */
export const drawsFact = ({ drawn }: SizeResult): string =>
  drawn
    ? ` Uncertainty of the inputs: ${drawsText(drawn)}, each with its own random numbers, the same for all designs; two-way layout of draws and shifts, degrees of freedom by Welch and Satterthwaite.`
    : ''

/** Of a pick that was asked to be sure, the designs before it that hold with the inputs as they are given, in too few draws. */
export function lessSure(result: SizeResult): { design: SizedDesign; draws: KeptDraws }[] {
  const { designs, pick, drawn } = result
  if (!drawn || drawn.sure === null || pick === null) return []
  return designs.flatMap((design, index) =>
    design.draws && index < pick ? [{ design, draws: design.draws }] : [],
  )
}

/** `7 that are not kept are too many`, with how many of them could not be told. */
function tooMany({ missed, open }: KeptDraws): string {
  const all = missed + open
  const told =
    open > 0
      ? ` (${open === all ? (all === 1 ? 'it was' : 'they were') : `${open} of them`} not decided)`
      : ''
  return all === 1
    ? `one draw that misses it${told} is too many`
    : `${all} draws that miss it${told} are too many`
}

/** The cheapest of these and the last in a sentence each. */
export function lessSureSentences(result: SizeResult, pick: SizedDesign): string[] {
  const all = lessSure(result)
  const told = all.length > 1 ? [all[0]!, all.at(-1)!] : all
  const holds =
    all.length > 1
      ? [
          `${counted(all.length, 'design')} before it also hold ${promisesText(result)} with the inputs as given, but in too few draws.`,
        ]
      : []
  return [
    ...holds,
    ...told.map(({ design, draws }) => {
      const saved = design.cost === null || pick.cost === null ? 0 : pick.cost - design.cost
      const less = saved > 0 ? ` costs ${moneyText(saved, result)} a shift less and` : ''
      const seen = all.length > 1 ? '' : ' also holds it with the inputs as given, but'
      return `${setText(design.set)}${less}${seen} meets it in ${keptText(draws)} and was dropped then: ${tooMany(draws)}.`
    }),
  ]
}

/** Where none is sure enough: that, and which is the surest. */
export function noneSure(result: SizeResult): string | null {
  const { drawn, designs, nearest } = result
  if (!drawn || nearest === null) return null
  const holding = designs.filter(({ draws }) => draws)
  return `None of the ${counted(result.all, 'design')} holds ${promisesText(result)}${sureText(result)}. With the inputs as given ${holding.length === 1 ? 'one does' : `${grouped(holding.length, 0)} that were drawn do`}. The most certain is ${setText(designs[nearest.design]!.set)}. ${keptSentences(result).join(' ')}`
}

/** What to do where none is sure enough; `wider`: choices to be widened, empty where none stands at an end. */
export const noneSureAdvice = (result: SizeResult, wider: string): string[] => {
  const less = `sk for less than --sure "${percentText(result.drawn!.sure!)}", or promise less.`
  return [
    ...measureNextOf(result),
    wider === '' ? `A${less}` : `Let the search also try ${wider}; or a${less}`,
  ]
}
