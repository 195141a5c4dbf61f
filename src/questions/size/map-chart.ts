/** Chart of two choices: which of their combinations hold, the other choices at the values of the pick, or of the nearest design. */
import type { ChartConfiguration, Plugin } from 'chart.js'
import { flowText } from '../../answers/flow.js'
import {
  axisTitle,
  belowHeight,
  type Chart,
  chartWidth,
  foot,
  frame,
  headHeight,
  palette,
  shortened,
  tickFont,
  written,
} from '../../report/marks/chart.js'
import { isQuantity } from '../../scenario/choices.js'
import type { SizedDesign, SizeResult } from './document.js'
import { endName, endRing, marks, type Points, signsOf, verdictPoints } from './marks.js'

/** Fewest and most values of a choice that makes a map. */
const [fewest, most] = [3, 40]
const gap = 16

type Choice = SizeResult['choices'][number]

/** A combination of the two. */
interface Cell {
  x: number
  y: number
  /** Null where it was not tried. */
  design: SizedDesign | null
}

/** The map of the two choices of numbers of which most is told; null where there are no two, or nothing at which the others could stand. */
export function sizeMapChart(result: SizeResult): Chart | null {
  const { choices, designs, pick, nearest, promises } = result
  const numeric = choices.filter(
    ({ values }) => values.length >= fewest && values.length <= most && values.every(isQuantity),
  )
  const pairs = numeric.flatMap((one, index) =>
    numeric.slice(index + 1).map((other) => [one, other] as const),
  )
  const chosen = designs[pick ?? nearest?.design ?? -1] ?? null
  if (chosen === null && choices.length > 2) return null
  const maps = pairs
    .map(([across, up]) => ({ across, up, cells: cellsOf(result, across, up, chosen) }))
    .map((map) => ({ ...map, told: map.cells.filter(({ design }) => design !== null).length }))
  const map = maps.reduce<(typeof maps)[number] | null>(
    (best, each) => (best === null || each.told > best.told ? each : best),
    null,
  )
  if (map === null || map.told === 0) return null
  const { across, up, cells } = map
  const others = choices.filter((choice) => choice !== across && choice !== up)
  const title = `Which combinations of ${shortened(across.path, 40)} and ${shortened(up.path, 40)} hold`
  const subtitle = [
    ...(others.length > 0
      ? [`At ${others.map(({ path }) => `${path} = ${flowText(chosen!.set[path])}`).join(', ')}.`]
      : []),
    `${[
      signsOf(cells.flatMap(({ design }) => (design?.without === null ? design.verdict : []))),
      ...(cells.some(({ design }) => design !== null && design.without !== null)
        ? ['× refused without simulating']
        : []),
      ...(cells.some(({ design }) => design === null) ? ['· not tried, or no scenario'] : []),
    ].join(', ')}${chosen ? `; ring: ${endName(result)}` : ''}.`,
    ...(promises[0]?.unit === 'share' ? ['Beside the signs: % of the shifts.'] : []),
  ].join(' ')
  const rowHeight = up.values.length > 16 ? 20 : 34
  const radius = up.values.length > 16 || across.values.length > 24 ? 4 : 6
  const options = frame(title, subtitle, gap)
  const axis = (choice: Choice) => ({
    type: 'linear' as const,
    min: -0.5,
    max: choice.values.length - 0.5,
    title: axisTitle(choice.path),
    afterBuildTicks: (scale: { ticks: { value: number }[] }) => {
      scale.ticks = choice.values.map((_, value) => ({ value }))
    },
    ticks: {
      color: palette.ink,
      font: tickFont,
      maxRotation: 0,
      autoSkip: true,
      callback: (value: string | number) => shortened(flowText(choice.values[Number(value)] ?? ''), 14),
    },
    grid: { color: palette.grid },
    border: { color: palette.frame },
  })
  const config: ChartConfiguration<'scatter'> = {
    type: 'scatter',
    data: { datasets: datasetsOf(cells, chosen, endName(result), radius) },
    options: { ...options, scales: { x: axis(across), y: axis(up) } },
    plugins: [figuresBeside(cells, result, across.values.length, radius), foot(result)],
  }
  return {
    name: 'map',
    title,
    alt: altOf(across, up, cells, chosen, endName(result)),
    width: chartWidth,
    height: headHeight(title, subtitle, gap) + up.values.length * rowHeight + belowHeight,
    config: config as ChartConfiguration,
  }
}

/** Every combination of the two with the design that stands there. */
function cellsOf(
  { choices, designs }: SizeResult,
  across: Choice,
  up: Choice,
  chosen: SizedDesign | null,
): Cell[] {
  const isSame = (one: unknown, other: unknown) => JSON.stringify(one) === JSON.stringify(other)
  const placeIn = ({ path, values }: Choice, { set }: SizedDesign) =>
    values.findIndex((value) => isSame(value, set[path]))
  const others = choices.filter((choice) => choice !== across && choice !== up)
  const known = new Map(
    designs
      .filter(({ set }) => others.every(({ path }) => isSame(set[path], chosen?.set[path])))
      .map((design) => [`${placeIn(across, design)} ${placeIn(up, design)}`, design]),
  )
  return across.values.flatMap((_, x) =>
    up.values.map((__, y): Cell => ({ x, y, design: known.get(`${x} ${y}`) ?? null })),
  )
}

function datasetsOf(
  cells: readonly Cell[],
  chosen: SizedDesign | null,
  name: string,
  radius: number,
): Points[] {
  const at = (of: (cell: Cell) => boolean) => cells.filter(of).map(({ x, y }) => ({ x, y }))
  const verdicts = Object.keys(marks) as (keyof typeof marks)[]
  return [
    endRing(
      name,
      at(({ design }) => design !== null && design === chosen),
      radius,
    ),
    ...verdicts.map((verdict) =>
      verdictPoints(
        verdict,
        at(({ design }) => design?.without === null && design.verdict === verdict),
        radius,
      ),
    ),
    {
      label: 'refused without simulating',
      data: at(({ design }) => design !== null && design.without !== null),
      pointStyle: 'crossRot' as const,
      pointRadius: radius - 1,
      pointBorderColor: palette.quietInk,
      pointBorderWidth: 1.5,
    },
    {
      label: 'not tried',
      data: at(({ design }) => design === null),
      pointStyle: 'circle' as const,
      pointRadius: 1.5,
      pointBackgroundColor: palette.frame,
      pointBorderColor: palette.frame,
    },
  ].filter(({ data }) => data.length > 0)
}

/** Room beside a sign below which no figure is written, px. */
const leastRoom = 46

/** Writes beside the sign of a simulated design how many of its shifts keep the promise. */
function figuresBeside(
  cells: readonly Cell[],
  { promises, designs, pick }: SizeResult,
  columns: number,
  radius: number,
): Plugin<'scatter'> {
  return {
    id: 'figures',
    afterDatasetsDraw({ ctx, chartArea, scales }) {
      const room = (chartArea.right - chartArea.left) / columns / 2
      if (promises[0]?.unit !== 'share' || room - radius - 8 < leastRoom / 2) return
      for (const { x, y, design } of cells) {
        if (design === null || design.without !== null || design.share === null) continue
        const isPick = design === designs[pick ?? -1]
        written(
          ctx,
          String(Math.round(design.share * 100)),
          scales.x!.getPixelForValue(x) + radius + 8,
          scales.y!.getPixelForValue(y) + 4,
          { size: 11, colour: palette.quietInk, isBold: isPick },
        )
      }
    },
  }
}

function altOf(
  across: Choice,
  up: Choice,
  cells: readonly Cell[],
  chosen: SizedDesign | null,
  name: string,
): string {
  const of = (words: string, isOf: (design: SizedDesign) => boolean) => {
    const found = cells.filter(({ design }) => design !== null && isOf(design))
    if (found.length === 0) return []
    const named = found
      .slice(0, 12)
      .map(({ x, y }) => `${flowText(across.values[x])} and ${flowText(up.values[y])}`)
    return [`${words}: ${named.join(', ')}${found.length > 12 ? ` and ${found.length - 12} more` : ''}`]
  }
  const isTold = ({ without }: SizedDesign) => without === null
  const parts = [
    ...of(name, (design) => design === chosen),
    ...of('holds', (design) => isTold(design) && design.verdict === 'accepted' && design !== chosen),
    ...of('fails', (design) => isTold(design) && design.verdict === 'refused' && design !== chosen),
    ...of('not told', (design) => design.verdict === 'undecided' && design !== chosen),
    ...of('refused without simulating', (design) => !isTold(design) && design !== chosen),
  ]
  return `${across.path} against ${up.path}: ${parts.join('; ')}; the others were not tried.`
}
