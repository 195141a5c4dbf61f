/** Chart of the promise: what share of its shifts puts out at least so many good cases, one line per design. */
import type { ChartConfiguration, ChartDataset, Plugin } from 'chart.js'
import { casesText, type ShiftTarget, shiftTarget } from '../../answers/shift-target.js'
import { grouped } from '../../report/format.js'
import { spanAxis } from '../../report/marks/axes.js'
import {
  axisTitle,
  type Chart,
  chartWidth,
  foot,
  frame,
  headHeight,
  palette,
  percent,
  roundStep,
  shortened,
  tickFont,
  widthOf,
  written,
} from '../../report/marks/chart.js'
import {
  type Design,
  designNames,
  edgeOf,
  type Label,
  labelsOf,
  medianOf,
  putOutAtLeast,
  widthGuess,
} from '../../report/marks/design-names.js'
import { okabeIto } from '../../report/marks/okabe-ito.js'
import type { CompareResult } from './document.js'

/** More lines are not told apart. */
const mostDesigns = 8
const plotHeight = 390
/** Between the subtitle and the plot, px: the name of the target stands in it. */
const gap = 24
const mostTicks = 9

/** What one may promise of a shift: the share of shifts that keep it. */
const promise = 0.95
/** Fewer shifts say of 95 % of them no more than of all. */
const fewestForPromise = 20

/** Each design has a colour and dashes of its own, so that the lines are told apart in grey too; the base comes first. */
const strokes: Design['stroke'][] = [
  { colour: okabeIto.black, dash: [] },
  { colour: okabeIto.blue, dash: [9, 4] },
  { colour: okabeIto.vermillion, dash: [3, 3] },
  { colour: okabeIto.bluishGreen, dash: [12, 3, 3, 3] },
  { colour: okabeIto.reddishPurple, dash: [6, 6] },
  { colour: okabeIto.orange, dash: [6, 2] },
  { colour: okabeIto.skyBlue, dash: [2, 5] },
  { colour: palette.quietInk, dash: [14, 3, 2, 3, 2, 3] },
]

/** Shares of shifts by the output that they reach; null where no design has a shift. */
export function outputSharesChart(result: CompareResult): Chart | null {
  const all = Object.entries(result.variants)
  const designs = all
    .filter(([, { outputs }]) => outputs.length > 0)
    .slice(0, mostDesigns)
    .map(
      ([name, { outputs }], index): Design => ({
        name,
        outputs: [...outputs].sort((a, b) => a - b),
        stroke: strokes[index]!,
      }),
    )
  if (designs.length === 0) return null
  const target = shiftTarget(result)
  const isPromised = designs.every(({ outputs }) => outputs.length >= fewestForPromise)
  const labels = labelsOf(designs, (design) => figuresOf(design, target, isPromised))
  const axis = axisOf(designs, labels, target)
  const title = titleOf(designs, isPromised)
  const subtitle = subtitleOf(all.length, designs.length, isPromised, target !== null)
  const options = frame(title, subtitle, gap)
  const config: ChartConfiguration<'line'> = {
    type: 'line',
    data: {
      datasets: [...(target ? [targetLine(target)] : []), ...designs.map((design) => lineOf(design, axis))],
    },
    options: {
      ...options,
      scales: {
        x: spanAxis({ ...axis, decimals: 0 }, 'good cases a shift'),
        y: {
          type: 'linear',
          min: 0,
          max: 100,
          title: axisTitle('% of the shifts put out at least that'),
          ticks: { color: palette.quietInk, font: tickFont, stepSize: 20 },
          grid: { color: palette.grid },
          border: { color: palette.frame },
        },
      },
    },
    plugins: [
      ...(isPromised ? [promiseLine()] : []),
      designNames(designs, labels),
      ...(target ? [targetName(target)] : []),
      foot(result),
    ],
  }
  return {
    name: 'output-shares',
    title,
    alt: altOf(designs, target, isPromised),
    width: chartWidth,
    height: headHeight(title, subtitle, gap) + plotHeight,
    config: config as ChartConfiguration,
  }
}

/** The share of shifts that put out at least so many cases falls at each output that occurs. */
function lineOf({ name, outputs, stroke }: Design, axis: { min: number }): ChartDataset<'line', Points> {
  const points = outputs.flatMap((x, index) =>
    index > 0 && outputs[index - 1] === x
      ? []
      : [{ x, y: (100 * (outputs.length - index)) / outputs.length }],
  )
  return {
    label: name,
    data: [{ x: axis.min, y: 100 }, ...points, { x: outputs.at(-1)!, y: 0 }],
    // between two outputs no shift is lost: the higher one counts
    stepped: 'after',
    borderColor: stroke.colour,
    borderDash: stroke.dash,
    borderWidth: stroke === strokes[0] ? 2.6 : 2,
    pointRadius: 0,
    clip: false,
  }
}

type Points = { x: number; y: number }[]

function targetLine({ cases }: ShiftTarget): ChartDataset<'line', Points> {
  return {
    label: 'target',
    data: [
      { x: cases, y: 0 },
      { x: cases, y: 100 },
    ],
    borderColor: palette.target,
    borderDash: [6, 4],
    borderWidth: 1.5,
    pointRadius: 0,
  }
}

/** `95 %: 3 912 · target: 43 %`. */
function figuresOf(design: Design, target: ShiftTarget | null, isPromised: boolean): string {
  const { outputs } = design
  const promised = isPromised
    ? `${percent(promise)}: ${grouped(putOutAtLeast(outputs, promise), 0)}`
    : `least: ${grouped(outputs[0]!, 0)}`
  return target ? `${promised} · target: ${percent(reachOf(design, target))}` : promised
}

const reachOf = ({ outputs }: Design, { least }: ShiftTarget) =>
  outputs.filter((output) => output >= least).length / outputs.length

interface Axis {
  min: number
  max: number
  ticks: number[]
}

/** Holds all outputs and the target, and leaves room for the labels at both sides. */
function axisOf(designs: readonly Design[], labels: readonly Label[], target: ShiftTarget | null): Axis {
  const reach = [
    ...designs.flatMap(({ outputs }) => [outputs[0]!, outputs.at(-1)!]),
    ...(target ? [target.cases] : []),
  ]
  const [lowest, highest] = [Math.min(...reach), Math.max(...reach)]
  const margin = Math.max(1, (highest - lowest) * 0.04)
  const widest = (side: Label['side']) =>
    Math.max(0, ...labels.filter((label) => label.side === side).map(widthGuess))
  // part of the width of the plot that labels take at a side
  const [left, right] = [widest('left') / (chartWidth - 110), widest('right') / (chartWidth - 110)]
  const edges = (side: Label['side']) =>
    labels.filter((label) => label.side === side).map((label) => edgeOf(designs, label))
  const [from, to] = [Math.min(highest, ...edges('left')), Math.max(lowest, ...edges('right'))]
  let [min, max] = [lowest - margin, highest + margin]
  // room at one side takes from the other: a few rounds settle it
  for (let round = 0; round < 20; round++) {
    min = Math.min(min, from - left * (max - min))
    max = Math.max(max, to + right * (max - min))
  }
  const step = Math.max(1, roundStep((max - min) / mostTicks))
  const first = Math.ceil(min / step)
  const ticks = Array.from(
    { length: Math.floor(max / step) - first + 1 },
    (_, index) => (first + index) * step,
  )
  // room for a label may lie below no case at all
  return { min, max, ticks: ticks.filter((value) => value >= 0) }
}

/** Marks the share of shifts that a promise is read at. */
function promiseLine(): Plugin<'line'> {
  return {
    id: 'promise',
    beforeDatasetsDraw({ ctx, chartArea, scales }) {
      const y = scales.y!.getPixelForValue(promise * 100)
      ctx.save()
      ctx.strokeStyle = palette.quietInk
      ctx.lineWidth = 1
      ctx.setLineDash([2, 3])
      ctx.beginPath()
      ctx.moveTo(chartArea.left, y)
      ctx.lineTo(chartArea.right, y)
      ctx.stroke()
      ctx.restore()
      written(ctx, `${percent(promise)} of the shifts`, chartArea.right - 4, y - 4, {
        size: 11,
        colour: palette.quietInk,
        align: 'right',
      })
    },
  }
}

function targetName({ cases }: ShiftTarget): Plugin<'line'> {
  const text = `target ${casesText(cases)}`
  return {
    id: 'target-name',
    afterDatasetsDraw({ ctx, chartArea, scales }) {
      const lettering = { size: 12, colour: palette.target, isBold: true }
      const half = widthOf(ctx, text, lettering) / 2
      const x = scales.x!.getPixelForValue(cases)
      const within = Math.max(chartArea.left + half, Math.min(chartArea.right - half, x))
      written(ctx, text, within, chartArea.top - 7, { ...lettering, align: 'center' })
    },
  }
}

/** Says what the base promises, and the design that promises most. */
function titleOf(designs: readonly Design[], isPromised: boolean): string {
  const share = isPromised ? promise : 1
  const promisedBy = ({ outputs }: Design) => putOutAtLeast(outputs, share)
  const [base] = designs as [Design]
  const best = designs.reduce((a, b) => (promisedBy(b) > promisedBy(a) ? b : a))
  const who = isPromised ? `${percent(promise)} of the shifts put` : 'Every shift puts'
  const most = `${who} out at least ${grouped(promisedBy(best), 0)} cases with`
  if (designs.length === 1) return `${most} the base`
  if (best === base) return `${most} the base, no variant more`
  return `${most} ${shortened(best.name, 40)}, ${grouped(promisedBy(base), 0)} with the base`
}

function subtitleOf(all: number, drawn: number, isPromised: boolean, hasTarget: boolean): string {
  const chosen = all > drawn ? ` Drawn: the base and the first ${drawn - 1} of ${all - 1} variants.` : ''
  const least = isPromised ? `what ${percent(promise)} of its shifts reach` : 'its poorest shift'
  const reach = hasTarget ? ', and how many reach the target' : ''
  return `Share of shifts with so many good cases or more. Below each name: ${least}${reach}.${chosen}`
}

function altOf(designs: readonly Design[], target: ShiftTarget | null, isPromised: boolean): string {
  const words = designs.map((design) => {
    const share = isPromised ? promise : 1
    const promised = `${percent(share)} put out at least ${grouped(putOutAtLeast(design.outputs, share), 0)}`
    const half = `half at least ${grouped(medianOf(design), 0)}`
    const reach = target ? `, ${percent(reachOf(design, target))} reach the target` : ''
    return `${design.name}: ${promised}, ${half}${reach}`
  })
  const of = target ? `, target ${casesText(target.cases)}` : ''
  return `Good cases a shift by share of the shifts${of}: ${words.join('; ')}.`
}
