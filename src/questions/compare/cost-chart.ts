/** Chart of the cost: what 1000 good cases cost with each design, stacked by element. */
import type { ChartConfiguration, Plugin } from 'chart.js'
import { printDifference } from '../../answers/difference.js'
import type { DifferenceFigure } from '../../answers/difference-figure.js'
import { costWords, isCostInPart } from '../../answers/warnings.js'
import { type CostElement, costElementKeys, costKey } from '../../catalogue/costs.js'
import { entriesOf } from '../../catalogue/figure.js'
import type { MeasureKey } from '../../catalogue/of-line.js'
import { figureText, grouped, printFigure } from '../../report/format.js'
import {
  axisTitle,
  belowHeight,
  type Chart,
  chartWidth,
  foot,
  frame,
  headHeight,
  legend,
  legendHeight,
  palette,
  roomAtRight,
  rowLabel,
  shortened,
  tickFont,
  widthOf,
  written,
} from '../../report/marks/chart.js'
import { okabeIto } from '../../report/marks/okabe-ito.js'
import type { CompareResult, DesignResult } from './document.js'

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

/** Elements on which white letters are read better than black ones. */
const darkElements: ReadonlySet<CostElement> = new Set<CostElement>([
  'labour',
  'energy',
  'maintenance',
  'failure-repair',
])

/** An element with a smaller share of every total cannot be seen. */
const leastSeen = 0.005

/** Room right of the bars for their figures, px. */
const figuresWidth = 166
const gap = 2
const rowHeight = 46

interface Element {
  key: CostElement
  label: string
  /** By design; 0 where it has none. */
  values: number[]
}

/** Stacked elements of the cost of 1000 good cases; null where no design is priced. */
export function costStackChart(result: CompareResult): Chart | null {
  const designs = Object.entries(result.variants)
  if (designs.every(([, { measures }]) => !isPriced(measures[total]))) return null
  const elements = elementsOf(designs.map(([, design]) => design))
  const totals = designs.map(([, { measures }]) => measures[total]?.mean ?? 0)
  const sums = designs.map((_, design) => elements.reduce((sum, { values }) => sum + values[design]!, 0))
  const seen = elements.filter(({ values }) =>
    values.some((value, design) => value > leastSeen * totals[design]!),
  )
  const title = titleOf(result, designs)
  const subtitle = subtitleOf(result, elements, seen)
  const options = frame(title, subtitle, gap)
  const config: ChartConfiguration<'bar'> = {
    type: 'bar',
    data: {
      labels: designs.map(([name]) => rowLabel(name)),
      datasets: elements.map(({ key, label, values }) => ({
        label,
        data: values,
        yAxisID: 'y',
        backgroundColor: colours[key],
        borderColor: palette.paper,
        borderWidth: { right: 1 },
        borderSkipped: false,
        barPercentage: 0.74,
        categoryPercentage: 0.9,
      })),
    },
    options: {
      ...options,
      indexAxis: 'y',
      plugins: {
        ...options.plugins,
        legend: {
          ...legend,
          labels: {
            ...legend.labels,
            filter: ({ datasetIndex }) => seen.includes(elements[datasetIndex ?? -1]!),
          },
        },
      },
      scales: {
        x: {
          stacked: true,
          min: 0,
          max: Math.max(...totals, ...sums) * 1.03 || 1,
          title: axisTitle(`${result.currency} per 1000 good cases`.trim()),
          ticks: {
            color: palette.quietInk,
            font: tickFont,
            maxTicksLimit: 9,
            includeBounds: false,
            maxRotation: 0,
            callback: (value) => grouped(Number(value), Number.isInteger(Number(value)) ? 0 : 2),
          },
          grid: { color: palette.grid },
          border: { color: palette.frame },
        },
        y: {
          stacked: true,
          ticks: { color: palette.ink, autoSkip: false, font: tickFont },
          grid: { display: false },
          border: { color: palette.frame },
        },
        figures: roomAtRight(figuresWidth),
      },
    },
    plugins: [pieceLetters(elements), figuresBeside(result), foot(result)],
  }
  return {
    name: 'cost-stack',
    title,
    alt: altOf(result, elements),
    width: chartWidth,
    height:
      headHeight(title, subtitle, gap) +
      legendHeight(seen.map(({ label }) => label)) +
      designs.length * rowHeight +
      belowHeight,
    config: config as ChartConfiguration,
  }
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
  if (priced.length === 1) return `Cost of 1000 good cases: only ${named(priced[0]!.name)} is priced`
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
  const { low, high } = figure.alone
  return !(figure.isShown ?? (low !== null && high !== null && (low > 0 || high < 0)))
}

function subtitleOf({ made, variants }: CompareResult, elements: Element[], seen: Element[]): string {
  const sureness = Number((made.confidence * 100).toPrecision(4))
  const unseen = elements.filter((element) => !seen.includes(element)).map(({ label }) => label)
  const left = Object.values(variants).map(({ costLeftOut }) => costLeftOut)
  const ever = [...new Set(left.flat())]
  const always = ever.filter((label) => left.every((each) => each.includes(label)))
  const sometimes = ever.filter((label) => !always.includes(label))
  return [
    `Beside each bar: total, and difference to the base. Plus-minus at ${sureness} % confidence of each figure alone.`,
    sometimes.length > 0 ? `Not priced by every design: ${sometimes.join(', ')}.` : '',
    always.length > 0 ? `Not priced: ${always.join(', ')}.` : '',
    unseen.length > 0 ? `Too small to be seen: ${unseen.join(', ')}.` : '',
  ]
    .filter((sentence) => sentence !== '')
    .join(' ')
}

/** The difference of the totals with an interval of its own, as that of the totals is. */
function differenceText(figure: DifferenceFigure | undefined, display: CompareResult['display']): string {
  if (!figure) return ''
  const { value, interval } = printDifference({ ...figure, ...figure.alone }, display)
  return value === '–' ? '' : `${[value, interval].filter((part) => part !== '').join(' ')} to the base`
}

/** Writes the total with its interval beside each bar: an error bar would be too short to see. */
function figuresBeside({ variants, differences, display }: CompareResult): Plugin<'bar'> {
  const rows = Object.entries(variants).map(([name, { measures }]) => {
    const { value, interval } = printFigure(measures[total], display)
    return {
      sum: isPriced(measures[total]) ? `${value} ${interval}` : 'not priced',
      difference: differenceText(differences[name]?.[total], display),
    }
  })
  return {
    id: 'figures-beside',
    afterDatasetsDraw(chart) {
      const x = chart.chartArea.right + 14
      for (const [index, { sum, difference }] of rows.entries()) {
        const y = chart.scales.y!.getPixelForValue(index)
        const isPair = difference !== ''
        written(chart.ctx, sum, x, isPair ? y - 2 : y + 4, { size: 12, colour: palette.ink, isBold: true })
        written(chart.ctx, difference, x, y + 13, { size: 11, colour: palette.quietInk })
      }
    },
  }
}

/** Writes name and money into each piece of a bar that is wide enough, else the money alone. */
function pieceLetters(elements: readonly Element[]): Plugin<'bar'> {
  return {
    id: 'piece-letters',
    afterDatasetsDraw(chart) {
      const { ctx } = chart
      for (const [index, { key, label, values }] of elements.entries()) {
        const colour = darkElements.has(key) ? palette.paper : palette.ink
        for (const [design, bar] of chart.getDatasetMeta(index).data.entries()) {
          const value = values[design]!
          const money = grouped(value, value < 9.95 ? 1 : 0)
          const { x, y, base } = bar.getProps(['x', 'y', 'base'], true) as Record<'x' | 'y' | 'base', number>
          const text = [`${label} ${money}`, money].find(
            (each) => x - base >= widthOf(ctx, each, { size: 11 }) + 8,
          )
          if (text) written(ctx, text, (x + base) / 2, y + 4, { size: 11, colour, align: 'center' })
        }
      }
    },
  }
}

function altOf({ variants, display }: CompareResult, elements: readonly Element[]): string {
  const words = Object.entries(variants).map(([name, { measures }], design) => {
    if (!isPriced(measures[total])) return `${name}: not priced`
    const parts = elements.flatMap(({ label, values }) =>
      values[design]! > 0 ? `${label} ${grouped(values[design]!, 2)}` : [],
    )
    return `${name}: ${figureText(measures[total], display)} (${parts.join(', ')})`
  })
  return `Cost of 1000 good cases: ${words.join('; ')}.`
}
