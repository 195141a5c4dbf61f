/** Chart of two choices: which of their combinations hold, the other choices at the values of the pick, or of the nearest design. */
import { flowText } from '../../answers/flow.js'
import { numbers, ticksAt } from '../../report/marks/axis.js'
import { shortened } from '../../report/marks/breaking.js'
import { type Chart, chartOf } from '../../report/marks/chart.js'
import { dots } from '../../report/marks/dots.js'
import { palette } from '../../report/marks/inks.js'
import { byHand, type Points } from '../../report/marks/mark.js'
import { written } from '../../report/marks/pen.js'
import { isQuantity } from '../../scenario/choices.js'
import type { SizedDesign, SizeResult } from './document.js'
import { endName, endRing, marks, signsOf, verdictPoints, verdicts } from './marks.js'
import { endDesign } from './words.js'

/** Fewest and most values of a choice that makes a map. */
const [fewest, most] = [3, 40]

type Choice = SizeResult['choices'][number]

/** A combination of the two. */
interface Cell {
  x: number
  y: number
  /** Null where it was not tried. */
  design: SizedDesign | null
  /** What it came to. */
  is: SizedDesign['verdict'] | 'without' | 'not tried'
}

interface ChoiceMap {
  across: Choice
  up: Choice
  cells: Cell[]
}

/** The map of the two choices of numbers of which most is told; null where there are no two, or nothing at which the others could stand. */
export function sizeMapChart(result: SizeResult): Chart | null {
  const chosen = endDesign(result) ?? null
  const map = fullestMap(result, chosen)
  if (map === null) return null
  const { across, up, cells } = map
  const radius = up.values.length > 16 || across.values.length > 24 ? 4 : 6
  return chartOf(result, {
    name: 'map',
    section: 'designs',
    title: `Which combinations of ${shortened(across.path, 40)} and ${shortened(up.path, 40)} hold`,
    subtitle: subtitleOf(result, map, chosen),
    alt: altOf(map, chosen, endName(result)),
    gap: 16,
    height: up.values.length * (up.values.length > 16 ? 20 : 34),
    axes: { x: choiceAxis(across), y: choiceAxis(up) },
    marks: [
      ...pointsOf(cells, chosen, endName(result), radius),
      figuresBeside(cells, result, across.values.length, radius),
    ],
  })
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

function subtitleOf(result: SizeResult, map: ChoiceMap, chosen: SizedDesign | null): string {
  const others = othersOf(result, map).map(({ path }) => `${path} = ${flowText(chosen!.set[path])}`)
  const found = new Set(map.cells.map((cell) => cell.is))
  const signs = [
    signsOf([...found].filter((is) => is !== 'without' && is !== 'not tried')),
    ...(found.has('without') ? ['× rejected without simulation'] : []),
    ...(found.has('not tried') ? ['· not tried, or no scenario'] : []),
  ]
  return [
    ...(others.length > 0 ? [`At ${others.join(', ')}.`] : []),
    `${signs.join(', ')}${chosen ? `; ring: ${endName(result)}` : ''}.`,
    ...(result.promises[0]?.unit === 'share' ? ['Beside the signs: % of the shifts.'] : []),
  ].join(' ')
}

const othersOf = ({ choices }: SizeResult, { across, up }: Pick<ChoiceMap, 'across' | 'up'>): Choice[] =>
  choices.filter((choice) => choice !== across && choice !== up)

/** Every combination of the two with the design that stands there. */
function cellsOf(result: SizeResult, across: Choice, up: Choice, chosen: SizedDesign | null): Cell[] {
  const isSame = (one: unknown, other: unknown) => JSON.stringify(one) === JSON.stringify(other)
  const placeIn = ({ path, values }: Choice, { set }: SizedDesign) =>
    values.findIndex((value) => isSame(value, set[path]))
  const others = othersOf(result, { across, up })
  const known = new Map(
    result.designs
      .filter(({ set }) => others.every(({ path }) => isSame(set[path], chosen?.set[path])))
      .map((design) => [`${placeIn(across, design)} ${placeIn(up, design)}`, design]),
  )
  return across.values.flatMap((_, x) =>
    up.values.map((__, y): Cell => {
      const design = known.get(`${x} ${y}`) ?? null
      const is = design === null ? 'not tried' : design.without === null ? design.verdict : 'without'
      return { x, y, design, is }
    }),
  )
}

function pointsOf(
  cells: readonly Cell[],
  chosen: SizedDesign | null,
  name: string,
  radius: number,
): Points[] {
  const { quietInk, frame } = palette
  const at = (of: (cell: Cell) => boolean) => cells.filter(of).map(({ x, y }) => ({ x, y }))
  const those = (is: Cell['is']) => at((cell) => cell.is === is)
  const ended = at(({ design }) => design !== null && design === chosen)
  return [
    endRing(name, ended, radius),
    ...verdictPoints(those, radius),
    dots('rejected without simulation', those('without'), {
      ...{ style: 'crossRot', radius: radius - 1, colour: quietInk, edge: 1.5 },
    }),
    dots('not tried', those('not tried'), { style: 'circle', radius: 1.5, colour: frame }),
  ]
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
      for (const { x, y, design, is } of cells) {
        if (design === null || is === 'without' || design.share === null) continue
        const isBold = design === designs[pick ?? -1]
        const text = String(Math.round(design.share * 100))
        const lettering = { size: 11, colour: palette.quietInk, isBold }
        written(ctx, text, across(x) + radius + 8, up(y) + 4, lettering)
      }
    },
  })

/** Combinations of one kind that are named for those who do not see the picture. */
const mostNamed = 12

function altOf({ across, up, cells }: ChoiceMap, chosen: SizedDesign | null, name: string): string {
  const of = (words: string, isOf: (cell: Cell) => boolean) => {
    const found = cells.filter((cell) => cell.design !== null && isOf(cell))
    if (found.length === 0) return []
    const named = found
      .slice(0, mostNamed)
      .map(({ x, y }) => `${flowText(across.values[x])} and ${flowText(up.values[y])}`)
    const more = found.length > mostNamed ? ` and ${found.length - mostNamed} more` : ''
    return [`${words}: ${named.join(', ')}${more}`]
  }
  const others = (words: string, state: Cell['is']) =>
    of(words, ({ is, design }) => is === state && design !== chosen)
  const parts = [
    ...of(name, ({ design }) => design === chosen),
    ...verdicts.flatMap((verdict) => others(marks[verdict].word, verdict)),
    ...others('rejected without simulation', 'without'),
  ]
  return `${across.path} against ${up.path}: ${parts.join('; ')}; the others were not tried.`
}
