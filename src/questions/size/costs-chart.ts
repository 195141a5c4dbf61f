/** Charts of a sizing: what designs cost against what they keep, and which combinations of two choices hold. */
import { isCostInPart, suffixCannotWork } from '../../answers/warnings.js'
import { printedUnit } from '../../catalogue/printed-units.js'
import { counted, grouped, percentText, sentences } from '../../report/format.js'
import { decimalsOf, numbers, roundStep, type Span } from '../../report/marks/axis.js'
import { shortened } from '../../report/marks/breaking.js'
import { type Chart, chartOf } from '../../report/marks/chart.js'
import { countsBeside } from '../../report/marks/dots.js'
import { nameNear } from '../../report/marks/labels.js'
import type { Mark, Point } from '../../report/marks/mark.js'
import { nameAtEnd, ruleAcross, shade } from '../../report/marks/rule.js'
import { whiskers } from '../../report/marks/whiskers.js'
import type { PromiseResult, SizedDesign, SizeResult } from './document.js'
import {
  designName,
  endName,
  endRing,
  freshPoints,
  marks,
  promiseTitle,
  signsOf,
  verdictPoints,
} from './marks.js'
import { amountIn, endDesign, endOf } from './words.js'

/** A design in the picture, `y` in the unit of the axis. */
interface Spot {
  design: SizedDesign
  x: number
  y: number
  ends: { low: number; high: number } | null
}

/** Signs that lie nearer than this to one another, in parts of the picture, cannot be told apart. */
const apart = 0.008

/** Designs by cost against the first promise; null where none was simulated. */
export function sizeCostChart(result: SizeResult): Chart | null {
  const { designs, promises, currency, isFull } = result
  const [promise] = promises
  if (!promise) return null
  const told = designs.filter(({ without, promises: [figure] }) => without === null && figure?.mean != null)
  if (told.length === 0) return null
  const { factor, word } = printedUnit(promise.unit, result.display)
  const isPriced = told.every(({ cost }) => cost !== null)
  const drawn = spotsOf(result, told, isPriced, factor)
  const asked = promise.value * factor
  const near = isFull ? 0 : promise.near * factor
  const axis = axisOf(drawn.all, asked, near, promise)
  const across = rangeOf(drawn.spots.map(({ x }) => x))
  const heaps = heapsOf(drawn.spots, across.max - across.min, axis.max - axis.min)
  const without = designs.length - designs.filter((each) => each.without === null).length
  return chartOf(result, {
    name: 'designs',
    section: 'designs',
    title: titleOf(result, isPriced),
    subtitle: subtitleOf(result, told, { hasHeaps: heaps.length > 0, near, without }),
    alt: altOf(result, told, without),
    mayNarrow: true,
    gap: 18,
    height: { all: 460 },
    axes: {
      x: numbers({
        isInside: true,
        title: isPriced
          ? `hand-calculated cost of a shift, ${currency}`
          : 'place in the order of the designs',
        ...across,
        most: 9,
        isPlain: true,
      }),
      y: numbers({
        isInside: true,
        title: promiseTitle(promise, word),
        ...axis,
        most: 8,
      }),
    },
    marks: [
      ...pointsOf(result, drawn),
      heaps.length > 0 && countsBeside(heaps),
      shade('y', asked - near, asked + near),
      ruleAcross(asked),
      // above the picture, where no point can lie
      nameAtEnd(asked, askedWords(promise, asked, axis.decimals, word), { isAbove: true }),
      drawn.chosen !== undefined &&
        nameNear(
          drawn.chosen,
          `${endName(result)}: ${shortened(designName(drawn.chosen.design), 56)}`,
          drawn.all.map(({ x, y, ends }) => ({ x, low: y, high: y, ...ends })),
          asked,
        ),
    ],
  })
}

/** Designs where they stand: all that are told, the one that the search ends with, and that one on fresh shifts too. */
function spotsOf(result: SizeResult, told: readonly SizedDesign[], isPriced: boolean, factor: number) {
  const spotAt = (design: SizedDesign, x: number, [figure]: SizedDesign['promises']): Spot => {
    const { mean, low, high } = figure!
    const ends = low === null || high === null ? null : { low: low * factor, high: high * factor }
    return { design, x, y: mean! * factor, ends }
  }
  // at its cost, or at its place in the order where nothing is priced
  const spots = told.map((design) => spotAt(design, isPriced ? design.cost! : design.place, design.promises))
  const end = endOf(result)
  const chosen = spots.find(
    ({ design }) => design === (result.pick === null ? end?.design : endDesign(result)),
  )
  const fresh =
    chosen && end && end.afresh.promises[0]?.mean != null
      ? [spotAt(end.design, chosen.x, end.afresh.promises)]
      : []
  return { spots, chosen, fresh, all: [...spots, ...fresh] }
}

/** Designs by verdict, with a ring around the end of the search and the intervals behind. */
function pointsOf(result: SizeResult, { spots, chosen, fresh, all }: ReturnType<typeof spotsOf>): Mark[] {
  const points = (of: readonly Spot[]) => of.map(({ x, y }) => ({ x, y }))
  const intervals = all.flatMap(({ x: at, ends }) => (ends ? { at, ...ends } : []))
  return [
    endRing(endName(result), chosen ? points([chosen]) : [], 5),
    ...verdictPoints((verdict) => points(spots.filter(({ design }) => design.verdict === verdict)), 5),
    freshPoints(points(fresh)),
    whiskers('interval', 'y', intervals, { borderWidth: 1.2, order: 3 }),
  ]
}

function subtitleOf(
  result: SizeResult,
  told: readonly SizedDesign[],
  { hasHeaps, near, without }: { hasHeaps: boolean; near: number; without: number },
): string {
  const signs = signsOf(told.map(({ verdict }) => verdict))
  const { promises } = result
  return sentences(
    `${signs}${intervalWords(result)}. Dashed: the promise${near > 0 ? '; shaded: close enough to go either way' : ''}.`,
    promises.length > 1 && `Verdicts are for all ${promises.length} promises.`,
    without > 0 && `Not drawn: ${grouped(without, 0)} rejected without simulation.`,
    hasHeaps && '×2 beside a sign: two designs have this cost and figure.',
  ).join(' ')
}

/** What is drawn with an interval. */
function intervalWords(result: SizeResult): string {
  const end = endOf(result)
  const interval = `${percentText(result.made.confidence)} interval`
  const fresh =
    end && `; ◆ ${endName(result)} in ${counted(end.afresh.shifts, 'fresh shift')}, with their ${interval}`
  return `${result.isFull ? `, with the ${interval}` : ''}${fresh ?? ''}`
}

/** Where several designs lie on one another, with how many they are: each stands where it is, none is moved aside. */
function heapsOf(spots: readonly Spot[], width: number, height: number): (Point & { text: string })[] {
  const heaps: { x: number; y: number; count: number }[] = []
  for (const { x, y } of spots) {
    const heap = heaps.find(
      (each) => Math.abs(each.x - x) < width * apart && Math.abs(each.y - y) < height * apart,
    )
    if (heap) heap.count++
    else heaps.push({ x, y, count: 1 })
  }
  return heaps.filter(({ count }) => count > 1).map(({ x, y, count }) => ({ x, y, text: `×${count}` }))
}

type Range = Omit<Span, 'ticks'>

function rangeOf(values: readonly number[]): Range {
  const [low, high] = [Math.min(...values), Math.max(...values)]
  const span = high > low ? high - low : Math.max(1e-6, Math.abs(low) * 0.01) * 2
  const middle = (low + high) / 2
  const half = span * (0.5 + 0.06)
  const step = roundStep((2 * half) / 8)
  return { min: middle - half, max: middle + half, decimals: decimalsOf(step) }
}

/** An axis that holds the intervals and what is asked for; of shares at most from 0 to 100 %. */
function axisOf(spots: readonly Spot[], asked: number, near: number, { unit }: PromiseResult): Range {
  const ends = spots.flatMap(({ y, ends }) => (ends ? [ends.low, ends.high, y] : [y]))
  const range = rangeOf([...ends, asked - near, asked + near])
  return unit === 'share'
    ? // room for half a sign at both ends
      { ...range, min: Math.max(-3, range.min), max: Math.min(103, range.max) }
    : range
}

/** What is asked for, with the digits that tell it from its neighbours. */
function askedWords({ isLeast }: PromiseResult, asked: number, decimals: number, word: string): string {
  const figure = Number(asked.toFixed(Math.max(decimals, 4)))
  return `promise: at ${isLeast ? 'least' : 'most'} ${figure} ${word}`.trimEnd()
}

function titleOf(result: SizeResult, isPriced: boolean): string {
  const { pick, designs, currency, promises, all } = result
  const what = shortened(promises.map(({ promise }) => promise).join(' and '), 100)
  if (pick === null) return `None of ${counted(all, 'design')} is shown to hold ${what}`
  const { cost, place } = designs[pick]!
  const but = suffixCannotWork(result)
  return isPriced && cost !== null && !isCostInPart(result)
    ? `The cheapest that holds ${what}: ${grouped(cost, 2)} ${currency} a shift${but}`
    : `The first design that holds ${what} is number ${grouped(place, 0)} of ${grouped(all, 0)}${but}`
}

/** At most so many designs are named for those who do not see the picture. */
const mostNamed = 12

function altOf(result: SizeResult, told: readonly SizedDesign[], without: number): string {
  const { promises, pick, designs } = result
  const text = (value: number) => amountIn(value, promises[0]!.unit, result, 3)
  const named = told.slice(0, mostNamed).map((design) => {
    const verdict = design === designs[pick ?? -1] ? 'the pick' : marks[design.verdict].word
    const nearest = pick === null && design === endOf(result)?.design ? ', the nearest' : ''
    return `${designName(design)}: ${text(design.promises[0]!.mean!)}, ${verdict}${nearest}`
  })
  const more = told.length > mostNamed ? [`and ${told.length - mostNamed} more`] : []
  const refused =
    without > 0
      ? ` ${grouped(without, 0)} more ${without === 1 ? 'design was' : 'designs were'} rejected without simulation.`
      : ''
  const end = endOf(result)
  const figure = end?.afresh.promises[0]?.mean ?? null
  const fresh =
    end && figure !== null
      ? ` In ${counted(end.afresh.shifts, 'fresh shift')} ${endName(result)} has ${text(figure)}.`
      : ''
  return `${promises[0]!.promise}, designs in order of cost: ${[...named, ...more].join('; ')}.${refused}${fresh}`
}
