/** Chart of the promise: what share of its shifts puts out at least so many good cases, one line per design. */
import { casesText, type ShiftTarget, shiftTarget } from '../../answers/shift-target.js'
import { grouped, percent } from '../../report/format.js'
import { numbers, type Span, spanAxis, spanOf } from '../../report/marks/axis.js'
import { shortened } from '../../report/marks/breaking.js'
import { type Chart, chartOf, chartWidth } from '../../report/marks/chart.js'
import { okabeIto, palette } from '../../report/marks/inks.js'
import { line, targetLine } from '../../report/marks/line.js'
import type { Points } from '../../report/marks/mark.js'
import { nameAbove, nameAtEnd, ruleAcross } from '../../report/marks/rule.js'
import type { CompareResult } from './document.js'
import {
  type Design,
  designNames,
  edgeOf,
  type Label,
  labelsOf,
  medianOf,
  putOutAtLeast,
  widthGuess,
} from './line-names.js'

/** More lines are not told apart. */
const mostDesigns = 8
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

/** Names of the designs that have a line: the first that have a shift. */
export const drawnLines = ({ variants }: Pick<CompareResult, 'variants'>): readonly string[] =>
  Object.keys(variants)
    .filter((name) => variants[name]!.outputs.length > 0)
    .slice(0, mostDesigns)

/** Shares of shifts by the output that they reach; null where no design has a shift. */
export function outputSharesChart(result: CompareResult): Chart | null {
  const all = Object.keys(result.variants)
  const designs = drawnLines(result).map(
    (name, index): Design => ({
      name,
      outputs: [...result.variants[name]!.outputs].sort((a, b) => a - b),
      stroke: strokes[index]!,
    }),
  )
  if (designs.length === 0) return null
  const target = shiftTarget(result)
  const isPromised = designs.every(({ outputs }) => outputs.length >= fewestForPromise)
  const labels = labelsOf(designs, (design) => figuresOf(design, target, isPromised))
  const axis = axisOf(designs, labels, target)
  const quiet = { colour: palette.quietInk, isBold: false, size: 11 }
  return chartOf(result, {
    name: 'output-shares',
    section: 'designs',
    title: titleOf(designs, isPromised),
    subtitle: subtitleOf(all.length, designs.length, isPromised, target !== null),
    alt: altOf(designs, target, isPromised),
    // the name of the target stands between subtitle and plot
    gap: 24,
    height: 320,
    type: 'line',
    axes: {
      x: spanAxis({ ...axis, decimals: 0 }, 'good cases a shift'),
      y: numbers({
        title: '% of the shifts reach this number or more',
        min: 0,
        max: 100,
        moreOfTicks: { stepSize: 20 },
      }),
    },
    marks: [
      target && targetLine(target.cases, 100, { borderWidth: 1.5 }),
      ...designs.map((design) => lineOf(design, axis)),
      isPromised && [
        ruleAcross(promise * 100, { colour: palette.quietInk, width: 1, dash: [2, 3] }),
        nameAtEnd(promise * 100, `${percent(promise)} of the shifts`, quiet),
      ],
      designNames(designs, labels),
      target && nameAbove(target.cases, `target ${casesText(target.cases)}`, { up: 7 }),
    ],
  })
}

/** The share of shifts that put out at least so many cases falls at each output that occurs. */
function lineOf({ name, outputs, stroke }: Design, axis: { min: number }): Points {
  const points = outputs.flatMap((x, index) =>
    index > 0 && outputs[index - 1] === x
      ? []
      : [{ x, y: (100 * (outputs.length - index)) / outputs.length }],
  )
  return line(name, [{ x: axis.min, y: 100 }, ...points, { x: outputs.at(-1)!, y: 0 }], {
    // between two outputs no shift is lost: the higher one counts
    stepped: 'after',
    borderColor: stroke.colour,
    borderDash: stroke.dash,
    borderWidth: stroke === strokes[0] ? 2.6 : 2,
    clip: false,
  })
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

/** Holds all outputs and the target, and leaves room for the labels at both sides. */
function axisOf(designs: readonly Design[], labels: readonly Label[], target: ShiftTarget | null): Span {
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
  const span = spanOf(min, max, mostTicks, 1)
  // room for a label may lie below no case at all
  return { ...span, ticks: span.ticks.filter((value) => value >= 0) }
}

/** Says what the base promises, and the design that promises most. */
function titleOf(designs: readonly Design[], isPromised: boolean): string {
  const share = isPromised ? promise : 1
  const promisedBy = ({ outputs }: Design) => putOutAtLeast(outputs, share)
  const [base] = designs as [Design]
  const best = designs.reduce((a, b) => (promisedBy(b) > promisedBy(a) ? b : a))
  const who = isPromised ? `${percent(promise)} of the shifts reach` : 'Every shift reaches'
  const most = `${who} ${grouped(promisedBy(best), 0)} cases or more with`
  if (designs.length === 1) return `${most} the base`
  if (best === base) return `${most} the base, no variant more`
  return `${most} ${shortened(best.name, 40)}, ${grouped(promisedBy(base), 0)} with the base`
}

function subtitleOf(all: number, drawn: number, isPromised: boolean, hasTarget: boolean): string {
  const chosen = all > drawn ? ` Drawn: the base and the first ${drawn - 1} of ${all - 1} variants.` : ''
  const least = isPromised ? `the number that ${percent(promise)} of its shifts reach` : 'its worst shift'
  const reach = hasTarget ? ', and how many reach the target' : ''
  return `Share of shifts with this number of good cases or more. Below each name: ${least}${reach}.${chosen}`
}

function altOf(designs: readonly Design[], target: ShiftTarget | null, isPromised: boolean): string {
  const words = designs.map((design) => {
    const share = isPromised ? promise : 1
    const promised = `${percent(share)} reach ${grouped(putOutAtLeast(design.outputs, share), 0)}`
    const half = `half reach ${grouped(medianOf(design), 0)}`
    const reach = target ? `, ${percent(reachOf(design, target))} reach the target` : ''
    return `${design.name}: ${promised}, ${half}${reach}`
  })
  const of = target ? `, target ${casesText(target.cases)}` : ''
  return `Good cases a shift by share of the shifts${of}: ${words.join('; ')}.`
}
