/** Chart of the cost: what 1000 good cases cost with each design, stacked by element. */

import { printDifference, withoutUnit } from '../../answers/difference.js'
import { type DifferenceFigure, wholeInterval } from '../../answers/difference-figure.js'
import { isOffNothing } from '../../answers/difference-with-inputs.js'
import { costWords, isCostInPart } from '../../answers/warnings.js'
import type { CostElement } from '../../catalogue/costs.js'
import { costElementKeys, costKey } from '../../catalogue/costs.js'
import { entriesOf, wholeOf } from '../../catalogue/figure.js'
import type { MeasureKey } from '../../catalogue/of-line.js'
import { figureText, grouped, percentText, printFigure, sentences } from '../../report/format.js'
import { numbers, roomAtRight, wholeOr } from '../../report/marks/axis.js'
import { pieceWords, stacked, stackedBars } from '../../report/marks/bars.js'
import { beside, figureOver } from '../../report/marks/beside.js'
import { rowLabel, shortened } from '../../report/marks/breaking.js'
import { type Chart, chartOf } from '../../report/marks/chart.js'
import { okabeIto } from '../../report/marks/inks.js'
import type { CompareResult, DesignResult } from './document.js'
import { drawnWords, undrawn } from './on-page.js'

const total: MeasureKey = 'cost-per-1000'

/**
 * Colour of each element, the same in every study. Of all ways to give them out one in which elements that often touch
 * lie at least 15 apart in lightness (CIELAB), so that a grey print tells them apart too.
 */
const colours: Readonly<Record<CostElement, string>> = {
  tape: okabeIto.orange,
  labour: okabeIto.blue,
  downtime: okabeIto.reddishPurple,
  energy: okabeIto.black,
  maintenance: okabeIto.bluishGreen,
  capital: okabeIto.yellow,
  failures: okabeIto.skyBlue,
  'failure-repair': okabeIto.vermillion,
}

/** An element with a smaller share of every total cannot be seen. */
const leastSeen = 0.005

interface Element {
  key: CostElement
  label: string
  /** By design; 0 where it has none. */
  values: number[]
}

/** Stacked elements of the cost of 1000 good cases; null where no design is priced. */
export function costStackChart(result: CompareResult): Chart | null {
  const all = Object.entries(result.variants)
  const left = undrawn(result)
  const designs = all.filter(([name]) => !left.has(name))
  const names = designs.map(([name]) => name)
  if (designs.every(([, { measures }]) => !isPriced(measures[total]))) return null
  const elements = elementsOf(designs.map(([, design]) => design))
  const totals = designs.map(([, { measures }]) => measures[total]?.mean ?? 0)
  const sums = designs.map((_, design) => elements.reduce((sum, { values }) => sum + values[design]!, 0))
  const seen = elements.filter(({ values }) =>
    values.some((value, design) => value > leastSeen * totals[design]!),
  )
  return chartOf(result, {
    name: 'cost-stack',
    section: 'money',
    title: titleOf(result, all),
    subtitle: `${subtitleOf(result, elements, seen)}${drawnWords(names.length - 1, all.length - 1)}`,
    alt: altOf(result, names, elements),
    gap: 2,
    height: designs.length * 46,
    rows: designs.map(([name]) => rowLabel(name)),
    legend: seen.map(({ label }) => label),
    axes: {
      x: numbers({
        title: `${result.currency} per 1000 good cases`.trim(),
        min: 0,
        max: Math.max(...totals, ...sums) * 1.03 || 1,
        most: 9,
        isInside: true,
        textOf: wholeOr(2),
        more: stacked,
      }),
      figures: roomAtRight(166),
    },
    marks: [
      ...elements.map(({ key, label, values }) =>
        stackedBars(label, values, colours[key], {
          borderWidth: { right: 1 },
          barPercentage: 0.74,
        }),
      ),
      pieceWords(8, (piece, design) => wordsIn(elements[piece]!, design)),
      beside(figuresOf(result, names)),
    ],
  })
}

const isPriced = (figure: { mean: number | null } | undefined) => figure !== undefined && figure.mean !== null

/** The elements that any design has, each after the one that it follows in its design. */
function elementsOf(designs: readonly DesignResult[]): Element[] {
  const labels = new Map<CostElement, string>()
  const order: CostElement[] = []
  for (const { measures } of designs) {
    let last = -1
    for (const [name, { label }] of entriesOf(measures)) {
      const key = costElementKeys.find((each) => costKey(each) === name)
      if (key === undefined) continue
      if (!labels.has(key)) {
        labels.set(key, label.replace(/^of it /, ''))
        order.splice(last + 1, 0, key)
      }
      last = order.indexOf(key)
    }
  }
  return order.map((key) => ({
    key,
    label: labels.get(key)!,
    values: designs.map(({ measures }) => measures[costKey(key)]?.mean ?? 0),
  }))
}

/** Says which design costs least, and whether that is more than luck. */
function titleOf(result: CompareResult, designs: readonly (readonly [string, DesignResult])[]): string {
  const priced = designs.flatMap(([name, { measures }]) => {
    const mean = measures[total]?.mean
    return mean === null || mean === undefined ? [] : [{ name, mean }]
  })
  if (priced.length === 1) return `Cost of 1000 good cases: only ${named(priced[0]!.name)} has prices`
  if (isCostInPart(result)) return costWords('Cost of 1000 good cases', result)
  const { differences } = result
  const least = priced.reduce((a, b) => (b.mean < a.mean ? b : a))
  const doubt = isInDoubt(differences[least.name]?.[total]) ? ', but not shown to differ from the base' : ''
  return `Cost of 1000 good cases: least with ${named(least.name)}${doubt}`

  function named(name: string): string {
    return name === designs[0]![0] ? 'the base' : shortened(name, 40)
  }
}

/** Judged with the other comparisons where it was one of them, else by its own interval. */
const isInDoubt = (figure: DifferenceFigure | undefined): boolean => {
  if (!figure) return false
  return !(figure.isShown ?? isOffNothing(wholeOf(figure.alone)))
}

function subtitleOf({ made, variants, drawn }: CompareResult, elements: Element[], seen: Element[]): string {
  const unseen = elements.filter((element) => !seen.includes(element)).map(({ label }) => label)
  const left = Object.values(variants).map(({ costLeftOut }) => costLeftOut)
  const ever = [...new Set(left.flat())]
  const always = ever.filter((label) => left.every((each) => each.includes(label)))
  const sometimes = ever.filter((label) => !always.includes(label))
  return sentences(
    `Beside each bar: total, and difference to the base. Plus-minus at ${percentText(made.confidence)} confidence for each figure alone${drawn ? ', with the uncertainty of the inputs' : ''}.`,
    sometimes.length > 0 && `Without a price in some designs: ${sometimes.join(', ')}.`,
    always.length > 0 && `Without a price: ${always.join(', ')}.`,
    unseen.length > 0 && `Too small to see: ${unseen.join(', ')}.`,
  ).join(' ')
}

/** The difference of the totals with an interval of its own, as that of the totals is. */
function differenceText(figure: DifferenceFigure | undefined, display: CompareResult['display']): string {
  if (!figure) return ''
  const words = withoutUnit(
    printDifference({ ...wholeInterval({ ...figure, ...figure.alone }), unit: figure.unit }, display),
  )
  return words === null ? '' : `${words} to the base`
}

/** The total with its interval for beside each bar: an error bar would be too short to see. */
const figuresOf = ({ variants, differences, display }: CompareResult, names: readonly string[]) =>
  names.map((name, row) => {
    const { measures } = variants[name]!
    const { value, interval } = printFigure(measures[total], display)
    const sum = isPriced(measures[total]) ? `${value} ${interval}` : 'not priced'
    return { row, words: figureOver(sum, differenceText(differences[name]?.[total], display), 14) }
  })

/** Name and money in a piece of a bar, or the money alone. */
function wordsIn({ label, values }: Element, design: number): string[] {
  const money = grouped(values[design]!, values[design]! < 9.95 ? 1 : 0)
  return [`${label} ${money}`, money]
}

function altOf(
  { variants, display }: CompareResult,
  names: readonly string[],
  elements: readonly Element[],
): string {
  const words = names.map((name, design) => {
    const { measures } = variants[name]!
    if (!isPriced(measures[total])) return `${name}: not priced`
    const parts = elements.flatMap(({ label, values }) =>
      values[design]! > 0 ? `${label} ${grouped(values[design]!, 2)}` : [],
    )
    return `${name}: ${figureText(measures[total], display)} (${parts.join(', ')})`
  })
  return `Cost of 1000 good cases: ${words.join('; ')}.`
}
