/** Chart of two choices: which of their combinations hold, the other choices at the values of the pick, or of the nearest design. */
import { flowText } from '../../answers/flow.js'
import { numbers, ticksAt } from '../../report/marks/axis.js'
import { shortened } from '../../report/marks/breaking.js'
import { type Chart, chartOf } from '../../report/marks/chart.js'
import { palette } from '../../report/marks/inks.js'
import { byHand, type Points } from '../../report/marks/mark.js'
import { written } from '../../report/marks/pen.js'
import { isQuantity } from '../../scenario/choices.js'
import type { SizedDesign, SizeResult } from './document.js'
import { endName, endRing, signsOf, verdictPoints } from './marks.js'

/** Fewest and most values of a choice that makes a map. */
const [fewest, most] = [3, 40]

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
  const { designs, pick, nearest } = result
  const chosen = designs[pick ?? nearest?.design ?? -1] ?? null
  const map = fullestMap(result, chosen)
  if (map === null) return null
  const { across, up, cells } = map
  const radius = up.values.length > 16 || across.values.length > 24 ? 4 : 6
  return chartOf(result, {
    name: 'map',
    section: 'designs',
    title: `Which combinations of ${shortened(across.path, 40)} and ${shortened(up.path, 40)} hold`,
    subtitle: subtitleOf(result, map, chosen),
    alt: altOf(across, up, cells, chosen, endName(result)),
    gap: 16,
    height: up.values.length * (up.values.length > 16 ? 20 : 34),
    axes: { x: choiceAxis(across), y: choiceAxis(up) },
    marks: [
      ...datasetsOf(cells, chosen, endName(result), radius),
      figuresBeside(cells, result, across.values.length, radius),
    ],
  })
}

interface ChoiceMap {
  across: Choice
  up: Choice
  cells: Cell[]
}

/** The two choices of which most combinations were tried; null without any. */
function fullestMap(result: SizeResult, chosen: SizedDesign | null): ChoiceMap | null {
  const { choices } = result
  if (chosen === null && choices.length > 2) return null
  const numeric = choices.filter(
    ({ values }) => values.length >= fewest && values.length <= most && values.every(isQuantity),
  )
  const toldOf = ({ cells }: ChoiceMap) => cells.filter(({ design }) => design !== null).length
  return numeric
    .flatMap((across, index) =>
      numeric.slice(index + 1).map((up) => ({ across, up, cells: cellsOf(result, across, up, chosen) })),
    )
    .reduce<ChoiceMap | null>((best, each) => (toldOf(each) > (best ? toldOf(best) : 0) ? each : best), null)
}

const choiceAxis = ({ path, values }: Choice) => ({
  ...numbers({
    title: path,
    textOf: (value) => shortened(flowText(values[value] ?? ''), 14),
    moreOfTicks: { color: palette.ink, autoSkip: true },
  }),
  min: -0.5,
  max: values.length - 0.5,
  ...ticksAt(values.map((_, value) => value)),
})

function subtitleOf(
  result: SizeResult,
  { across, up, cells }: ChoiceMap,
  chosen: SizedDesign | null,
): string {
  const { choices, promises } = result
  const others = choices.filter((choice) => choice !== across && choice !== up)
  const signs = [
    signsOf(cells.flatMap(({ design }) => (design?.without === null ? design.verdict : []))),
    ...(cells.some(({ design }) => design !== null && design.without !== null)
      ? ['× refused without simulating']
      : []),
    ...(cells.some(({ design }) => design === null) ? ['· not tried, or no scenario'] : []),
  ]
  return [
    ...(others.length > 0
      ? [`At ${others.map(({ path }) => `${path} = ${flowText(chosen!.set[path])}`).join(', ')}.`]
      : []),
    `${signs.join(', ')}${chosen ? `; ring: ${endName(result)}` : ''}.`,
    ...(promises[0]?.unit === 'share' ? ['Beside the signs: % of the shifts.'] : []),
  ].join(' ')
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
  return [
    endRing(
      name,
      at(({ design }) => design !== null && design === chosen),
      radius,
    ),
    ...verdictPoints(
      (verdict) => at(({ design }) => design?.without === null && design.verdict === verdict),
      radius,
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
const figuresBeside = (
  cells: readonly Cell[],
  { promises, designs, pick }: SizeResult,
  columns: number,
  radius: number,
) =>
  byHand({
    over({ ctx, area, x: across, y: up }) {
      const room = (area.right - area.left) / columns / 2
      if (promises[0]?.unit !== 'share' || room - radius - 8 < leastRoom / 2) return
      for (const { x, y, design } of cells) {
        if (design === null || design.without !== null || design.share === null) continue
        const isBold = design === designs[pick ?? -1]
        const text = String(Math.round(design.share * 100))
        const lettering = { size: 11, colour: palette.quietInk, isBold }
        written(ctx, text, across(x) + radius + 8, up(y) + 4, lettering)
      }
    },
  })

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
