/** Charts of a sizing: what designs cost against what they keep, and which combinations of two choices hold. */
import type { ChartConfiguration, Plugin } from 'chart.js'
import { isCostInPart, suffixCannotWork } from '../../answers/warnings.js'
import { printedUnit } from '../../catalogue/printed-units.js'
import { counted, grouped, percentText } from '../../report/format.js'
import {
  axisTitle,
  type Chart,
  chartWidth,
  foot,
  frame,
  palette,
  roundStep,
  shortened,
  tickFont,
  widthOf,
  written,
} from '../../report/marks/chart.js'
import type { PromiseResult, SizedDesign, SizeResult } from './document.js'
import {
  designName,
  endName,
  endRing,
  freshPoints,
  marks,
  type Points,
  signsOf,
  verdictPoints,
} from './marks.js'
import { endOf } from './words.js'

/** A design in the picture, `y` in the unit of the axis. */
interface Spot {
  design: SizedDesign
  x: number
  y: number
  ends: { low: number; high: number } | null
}

/** Share of the axis by which designs of like cost stand apart. */
const apart = 0.012

/** Designs by cost against the first promise; null where none was simulated. */
export function sizeCostChart(result: SizeResult): Chart | null {
  const { designs, pick, promises, currency, isFull } = result
  const [promise] = promises
  if (!promise) return null
  const told = designs.filter(({ without, promises: [figure] }) => without === null && figure?.mean != null)
  if (told.length === 0) return null
  const { factor, word } = printedUnit(promise.unit, result.display)
  const isPriced = told.every(({ cost }) => cost !== null)
  const places = placesOf(told, isPriced)
  const spotAt = (design: SizedDesign, x: number, [figure]: SizedDesign['promises']): Spot => {
    const { mean, low, high } = figure!
    const ends = low === null || high === null ? null : { low: low * factor, high: high * factor }
    return { design, x, y: mean! * factor, ends }
  }
  const spots = told.map((design, index) => spotAt(design, places[index]!, design.promises))
  const end = endOf(result)
  const chosen = spots.find(({ design }) => design === (designs[pick ?? -1] ?? end?.design))
  const fresh =
    chosen && end && end.afresh.promises[0]?.mean != null
      ? [spotAt(end.design, chosen.x, end.afresh.promises)]
      : []
  const all = [...spots, ...fresh]
  const asked = promise.value * factor
  const near = isFull ? 0 : promise.near * factor
  const axis = axisOf(all, asked, near, promise)
  const across = rangeOf(spots.map(({ x }) => x))
  const title = titleOf(result, isPriced)
  const without = designs.length - designs.filter((each) => each.without === null).length
  const subtitle = [
    `${signsOf(told.map(({ verdict }) => verdict))}${intervalWords(result)}. Dashed: what is asked for${near > 0 ? '; shaded: near enough to go either way' : ''}.`,
    ...(promises.length > 1 ? [`Verdicts are of all ${promises.length} promises.`] : []),
    ...(without > 0 ? [`Not drawn: ${grouped(without, 0)} refused without simulating.`] : []),
    ...(isPriced ? ['Designs of like cost stand side by side.'] : []),
  ].join(' ')
  const options = frame(title, subtitle, 18)
  const of = (verdict: SizedDesign['verdict']) =>
    spots.filter(({ design }) => design.verdict === verdict).map(({ x, y }) => ({ x, y }))
  const config: ChartConfiguration<'scatter'> = {
    type: 'scatter',
    data: {
      datasets: [
        ...(chosen ? [endRing(endName(result), [{ x: chosen.x, y: chosen.y }], 5)] : []),
        ...(Object.keys(marks) as (keyof typeof marks)[]).map((verdict) =>
          verdictPoints(verdict, of(verdict), 5),
        ),
        freshPoints(fresh.map(({ x, y }) => ({ x, y }))),
        intervals(all),
      ].filter(({ data }) => data.length > 0),
    },
    options: {
      ...options,
      scales: {
        x: {
          type: 'linear',
          min: across.min,
          max: across.max,
          title: axisTitle(
            isPriced ? `cost of a shift by hand, ${currency}` : 'place in the order of the designs',
          ),
          ticks: {
            color: palette.quietInk,
            font: tickFont,
            maxRotation: 0,
            maxTicksLimit: 9,
            includeBounds: false,
            callback: (value) => grouped(Number(value), across.decimals),
          },
          grid: { display: false },
          border: { color: palette.frame },
        },
        y: {
          type: 'linear',
          min: axis.min,
          max: axis.max,
          title: axisTitle(promise.unit === 'share' ? '% of the shifts' : `${promise.label}, ${word}`),
          ticks: {
            color: palette.quietInk,
            font: tickFont,
            maxTicksLimit: 8,
            includeBounds: false,
            callback: (value) => grouped(Number(value), axis.decimals),
          },
          grid: { color: palette.grid },
          border: { color: palette.frame },
        },
      },
    },
    plugins: [
      askedBand(promise, asked, near, axis.decimals, word),
      pickName(endName(result), chosen, all, asked),
      foot(result),
    ],
  }
  return {
    name: 'designs',
    title,
    alt: altOf(result, told, without),
    width: chartWidth,
    height: 460,
    config: config as ChartConfiguration,
  }
}

/** What is drawn with an interval. */
function intervalWords(result: SizeResult): string {
  const end = endOf(result)
  const interval = `${percentText(result.made.confidence)} interval`
  return [
    result.isFull ? `, with the ${interval}` : '',
    end
      ? `; ◆ ${endName(result)} in ${counted(end.afresh.shifts, 'fresh shift')}, with their ${interval}`
      : '',
  ].join('')
}

/** Where designs stand: at their cost, those of like cost side by side; at their place in the order where nothing is priced. */
function placesOf(designs: readonly SizedDesign[], isPriced: boolean): number[] {
  if (!isPriced) return designs.map(({ place }) => place)
  const costs = designs.map(({ cost }) => cost!)
  const span = Math.max(...costs) - Math.min(...costs) || 1
  const groups: number[][] = []
  for (const [index, cost] of costs.entries()) {
    const last = groups.at(-1)
    if (last && cost - costs[last[0]!]! < (span * apart) / 4) last.push(index)
    else groups.push([index])
  }
  const places = [...costs]
  for (const [number, group] of groups.entries()) {
    const next = groups[number + 1]
    const room = next ? (costs[next[0]!]! - costs[group[0]!]!) * 0.8 : span
    const step = Math.min(span * apart, room / group.length)
    for (const [rank, index] of group.entries()) places[index] = costs[index]! + rank * step
  }
  return places
}

interface Range {
  min: number
  max: number
  decimals: number
}

function rangeOf(values: readonly number[]): Range {
  const [low, high] = [Math.min(...values), Math.max(...values)]
  const span = high > low ? high - low : Math.max(1e-6, Math.abs(low) * 0.01) * 2
  const middle = (low + high) / 2
  const half = span * (0.5 + 0.06)
  const step = roundStep((2 * half) / 8)
  return {
    min: middle - half,
    max: middle + half,
    decimals: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)),
  }
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

/** The intervals as lines with gaps between. */
const intervals = (spots: readonly Spot[]): Points => ({
  label: 'interval',
  data: spots.flatMap(({ x, ends }) =>
    ends === null
      ? []
      : [
          { x, y: ends.low },
          { x, y: ends.high },
          { x: Number.NaN, y: Number.NaN },
        ],
  ),
  showLine: true,
  spanGaps: false,
  borderColor: palette.main,
  borderWidth: 1.2,
  pointRadius: 0,
  fill: false,
  order: 3,
})

/** Shades what may go either way and draws what is asked for. */
function askedBand(
  promise: PromiseResult,
  asked: number,
  near: number,
  decimals: number,
  word: string,
): Plugin<'scatter'> {
  const figure = Number(asked.toFixed(Math.max(decimals, 4)))
  const text = `asked for: at ${promise.isLeast ? 'least' : 'most'} ${figure} ${word}`.trimEnd()
  return {
    id: 'asked',
    beforeDatasetsDraw({ ctx, chartArea, scales }) {
      const { left, right, top, bottom } = chartArea
      const at = (value: number) => Math.min(bottom, Math.max(top, scales.y!.getPixelForValue(value)))
      ctx.save()
      ctx.fillStyle = palette.pause
      ctx.globalCompositeOperation = 'multiply'
      ctx.fillRect(left, at(asked + near), right - left, at(asked - near) - at(asked + near))
      ctx.restore()
      ctx.save()
      ctx.strokeStyle = palette.target
      ctx.setLineDash([6, 4])
      ctx.lineWidth = 1.5
      ctx.beginPath()
      ctx.moveTo(left, at(asked))
      ctx.lineTo(right, at(asked))
      ctx.stroke()
      ctx.restore()
      // above the picture, where no point can lie
      written(ctx, text, right, top - 6, {
        size: 12,
        colour: palette.target,
        isBold: true,
        align: 'right',
      })
    },
  }
}

/** Steps away from the pick at which its name may stand, px, the nearest first. */
const steps = [0, 26, -26, 52, -52, 78, -78, 104, -104, 140, -140, 180, -180]

/** Names the pick, or the nearest, where no other design is drawn, with a line to it. */
function pickName(
  what: string,
  spot: Spot | undefined,
  spots: readonly Spot[],
  asked: number,
): Plugin<'scatter'> {
  return {
    id: 'pick-name',
    afterDatasetsDraw({ ctx, chartArea, scales }) {
      if (!spot) return
      const [across, up] = [scales.x!, scales.y!]
      const [x, y] = [across.getPixelForValue(spot.x), up.getPixelForValue(spot.y)]
      const name = `${what}: ${shortened(designName(spot.design), 56)}`
      const lettering = { size: 12, colour: palette.ink, isBold: true }
      const width = widthOf(ctx, name, lettering)
      const drawn = spots.map((each) => ({
        x: across.getPixelForValue(each.x),
        top: up.getPixelForValue(Math.max(each.y, each.ends?.high ?? each.y)) - 8,
        bottom: up.getPixelForValue(Math.min(each.y, each.ends?.low ?? each.y)) + 8,
      }))
      drawn.push({ x, top: y - 12, bottom: y + 12 })
      const line = up.getPixelForValue(asked)
      /** Designs that a name there would lie on; out of the picture it may not stand. */
      const covered = (left: number, middle: number) =>
        left < chartArea.left + 4 ||
        left + width > chartArea.right - 4 ||
        middle < chartArea.top + 12 ||
        middle > chartArea.bottom - 12
          ? Infinity
          : drawn.filter(
              (each) =>
                each.x > left - 10 &&
                each.x < left + width + 10 &&
                each.top < middle + 8 &&
                each.bottom > middle - 8,
            ).length + (Math.abs(line - middle) < 12 ? 1 : 0)
      const best = steps
        .flatMap((step) =>
          [x + 18, x - 18 - width, x - width / 2].map((left) => ({ left, middle: y + step })),
        )
        .map((place) => ({ ...place, over: covered(place.left, place.middle) }))
        .reduce((least, each) => (each.over < least.over ? each : least))
      const left = Math.min(Math.max(best.left, chartArea.left + 4), chartArea.right - width - 4)
      if (best.middle !== y) {
        ctx.save()
        ctx.strokeStyle = palette.ink
        ctx.lineWidth = 1
        ctx.beginPath()
        ctx.moveTo(x, y + (best.middle > y ? 11 : -11))
        ctx.lineTo(Math.min(Math.max(x, left), left + width), best.middle + (best.middle > y ? -8 : 8))
        ctx.stroke()
        ctx.restore()
      }
      written(ctx, name, left, best.middle + 4, lettering)
    },
  }
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
  const { display, promises, pick, designs } = result
  const { factor, word } = printedUnit(promises[0]!.unit, display)
  const text = (value: number) => `${Number((value * factor).toPrecision(3))} ${word}`.trimEnd()
  const named = told.slice(0, mostNamed).map((design) => {
    const verdict = design === designs[pick ?? -1] ? 'the pick' : marks[design.verdict].word
    const nearest = pick === null && design === endOf(result)?.design ? ', the nearest' : ''
    return `${designName(design)}: ${text(design.promises[0]!.mean!)}, ${verdict}${nearest}`
  })
  const more = told.length > mostNamed ? [`and ${told.length - mostNamed} more`] : []
  const refused = without > 0 ? ` ${grouped(without, 0)} more were refused without simulating.` : ''
  const end = endOf(result)
  const figure = end?.afresh.promises[0]?.mean ?? null
  const fresh =
    end && figure !== null
      ? ` In ${counted(end.afresh.shifts, 'fresh shift')} ${endName(result)} keeps ${text(figure)}.`
      : ''
  return `${promises[0]!.promise}, designs in order of cost: ${[...named, ...more].join('; ')}.${refused}${fresh}`
}
