/** The plan: a line from above, to scale, as a drawing that needs nothing else. */
import { type Display, unitsFor, wordsFor } from '../catalogue/printed-units.js'
import { has, nounOf } from '../kinds/traits.js'
import { roundStep } from '../report/marks/axis.js'
import { shortened, wordLines } from '../report/marks/breaking.js'
import { inks } from '../report/marks/inks.js'
import { empty, inLines, type Markup, svg } from '../report/markup.js'
import { exitName } from '../scenario/routes.js'
import type { Layout, LayoutPiece } from './layout.js'
import { drawLabels, heightOf, type Label, letters, placeLabels, smallWords } from './plan-labels.js'
import { arrow, drawPiece, drawWay, type Geometry, headLetter, headLetters } from './plan-pieces.js'
import { lanesOf, type Row, rowsOf } from './plan-rows.js'
import { n } from './svg-parts.js'

interface PlanOptions {
  /** Name of the piece with least to spare. */
  limiting?: string | undefined
  /** Words on what a piece does, such as `works 59 % of the shift`, by its name. */
  states?: Readonly<Record<string, string>>
  display?: Display
}

/** Width of the drawing, in units; on a narrow screen a unit is a little less than a pixel. */
const width = 420
/** Where the line begins and ends in it: at the right the way out has its arrow. */
const margin = { left: 22, right: 30 }
/** A piece is drawn no thinner. */
const leastAcross = 6
const mostName = 28
/** Below a lane: letters of heads, signs of people, ways past. */
const below = 24
const betweenRows = 14

/** The plan of a line; every name in it is escaped. Distances between ways side by side are not to scale, all else is. */
export function planSvg(layout: Layout, options: PlanOptions = {}): Markup {
  const display = options.display ?? 'metric'
  const rows = rowsOf(layout)
  const longest = Math.max(...rows.map(({ from, to }) => to - from))
  const scale = (width - margin.left - margin.right) / (longest > 0 ? longest : 1)
  let height = 0
  const parts = rows.map((row, index) => {
    const drawn = drawRow(layout, row, {
      scale,
      options,
      display,
      top: height,
      isFirst: index === 0,
      isLast: index === rows.length - 1,
    })
    height = drawn.bottom + betweenRows
    return drawn.markup
  })
  const foot = drawFoot(layout, scale, display, height)
  const title = `The line from above, to scale: ${words(layout.length, display)} long`
  return inLines([
    svg`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${n(foot.bottom)}" width="100%" role="img" aria-labelledby="plan-title plan-desc" font-family="system-ui, 'DejaVu Sans', sans-serif">`,
    svg`<title id="plan-title">${title}</title><desc id="plan-desc">${planWords(layout, options)}</desc>`,
    ...parts,
    foot.markup,
    svg`</svg>`,
  ])
}

const words = (metres: number, display: Display) => wordsFor(display).distance(metres)

/** A part of the plan, and where the next one may begin below it. */
interface Drawn {
  markup: Markup
  bottom: number
}

interface RowGiven {
  scale: number
  options: PlanOptions
  display: Display
  top: number
  isFirst: boolean
  isLast: boolean
}

/** One row: its lanes from above, each below its labels. */
function drawRow(layout: Layout, row: Row, given: RowGiven): Drawn {
  const { scale, isFirst, isLast } = given
  const lanes = lanesOf(layout.pieces)
  const isIn = ({ x, length }: LayoutPiece) => x < row.to - 1e-9 && x + length > row.from + 1e-9
  const x = (metres: number) => margin.left + (metres - row.from) * scale
  const across = (piece: LayoutPiece) => Math.max(leastAcross, piece.width * scale)
  const middles: number[] = []
  const labels: Markup[] = []
  let y = given.top
  for (let lane = 0; lane <= Math.max(0, ...lanes.values()); lane++) {
    const inLane = layout.pieces.filter((piece) => lanes.get(piece.name) === lane)
    const here = inLane.filter(isIn)
    const placed = placeLabels(
      here.flatMap((piece) => labelsOf(piece, layout, row, x, given)),
      width,
    )
    y += heightOf(placed) + (here.length > 0 ? 4 : 0)
    const wide = Math.max(0, ...here.map(across))
    middles[lane] = y + wide / 2
    labels.push(
      drawLabels(placed, y - 4, ({ at }) => {
        const piece = here.find((each) => x(each.x) <= at && at <= x(each.x + each.length)) ?? here[0]!
        return middles[lane]! - across(piece) / 2
      }),
    )
    y += wide + (here.length > 0 ? below : 0)
  }
  const geometry: Geometry = {
    scale,
    x,
    across,
    middle: (piece) => middles[lanes.get(piece.name)!]!,
    gap: below,
  }
  const here = layout.pieces.filter(isIn)
  const left = isFirst ? 0 : margin.left
  const right = isLast ? width : x(row.to)
  const clipped = svg`<svg x="${n(left)}" y="${n(given.top)}" width="${n(right - left)}" height="${n(y - given.top)}" viewBox="${n(left)} ${n(given.top)} ${n(right - left)} ${n(y - given.top)}">`
  const markup = inLines([
    clipped,
    ...waysOf(layout, row, geometry),
    ...here.flatMap((piece) => (piece.x >= row.from - 1e-9 ? waysIn(piece, layout, geometry) : [])),
    ...here.map((piece) => drawPiece(piece, layout, geometry, piece.name === given.options.limiting)),
    ...here.flatMap((piece) => (has(piece, 'tapes') ? headLetters(piece, geometry) : [])),
    ...here.map((piece) => peopleAt(piece, layout, geometry)),
    svg`</svg>`,
    ...(isFirst ? [] : [edge(margin.left, given.top, y)]),
    ...(isLast ? [] : [edge(right, given.top, y), onwards(right, y)]),
    // over the edges: a label may reach past them
    ...labels,
  ])
  return { markup, bottom: isLast ? y : y + letters.line }
}

/** A row ends here, and the next one goes on. */
const edge = (x: number, top: number, bottom: number): Markup =>
  svg`<path d="M${n(x)} ${n(top + 8)}V${n(bottom)}" stroke="${inks.quiet}" stroke-width="1" stroke-dasharray="6 3 1 3"/>`

const onwards = (x: number, y: number): Markup =>
  smallWords(x, y + letters.small, 'continues in the next row ↓', { anchor: 'end', fill: inks.quiet })

/** Ways between pieces of which some part lies in the row, and the ways out. */
function waysOf({ pieces }: Layout, row: Row, geometry: Geometry): Markup[] {
  const byName = new Map(pieces.map((piece) => [piece.name, piece]))
  const isSeen = (from: number, to: number) => Math.min(from, to) < row.to && Math.max(from, to) >= row.from
  return pieces.flatMap((piece) =>
    piece.next.flatMap((name) => {
      const end = piece.x + piece.length
      if (name === exitName) {
        if (end <= row.from + 1e-9 || end > row.to + 1e-9) return []
        return [wayOut(piece, piece.next.length === 1, pieces, geometry)]
      }
      const target = byName.get(name)!
      return isSeen(end, target.x) || isSeen(piece.x, target.x + target.length)
        ? [drawWay(piece, target, pieces, geometry)]
        : []
    }),
  )
}

/** Where cases come from outside: from the left, or from the side where something stands there. */
function waysIn(piece: LayoutPiece, layout: Layout, geometry: Geometry): Markup[] {
  if (sourcesOf(piece, layout).length === 0) return []
  const [x, middle] = [geometry.x(piece.x), geometry.middle(piece)]
  const isFree = piece.x < 1e-9
  if (isFree) return [arrow(`M${n(x - 16)} ${n(middle)}h16`, x, middle, 'right')]
  const low = middle + geometry.across(piece) / 2
  const at = x + Math.min(4, (piece.length * geometry.scale) / 2)
  return [arrow(`M${n(at)} ${n(low + 16)}V${n(low)}`, at, low, 'up')]
}

/** Straight on where that is free, else downwards. */
function wayOut(
  piece: LayoutPiece,
  isOnly: boolean,
  pieces: readonly LayoutPiece[],
  geometry: Geometry,
): Markup {
  const end = piece.x + piece.length
  const middle = geometry.middle(piece)
  const isFree = pieces.every((each) => geometry.middle(each) !== middle || each.x < end - 1e-9)
  const x = geometry.x(end)
  if (isOnly && isFree)
    return svg`${arrow(`M${n(x)} ${n(middle)}h16`, x + 16, middle, 'right')}${smallWords(x + 4, middle + 13, 'out')}`
  const low = middle + geometry.across(piece) / 2 + 14
  return svg`${arrow(`M${n(x - 4)} ${n(middle)}V${n(low)}`, x - 4, low, 'down')}${smallWords(x + 2, low, 'out')}`
}

/** Signs of people: how many work there. */
function peopleAt(piece: LayoutPiece, { crews }: Layout, geometry: Geometry): Markup {
  const standing = crews.filter(({ at }) => at === piece.name).reduce((sum, { people }) => sum + people, 0)
  const people = standing || piece.people
  if (!people) return empty
  // at a sealer beside the fold place, clear of the letters of its heads
  const inset = has(piece, 'tapes') ? 1 : Math.min(10, (piece.length * geometry.scale) / 2)
  const x = geometry.x(piece.x) + inset
  const y = geometry.middle(piece) + geometry.across(piece) / 2 + 11
  const look = { weight: 'bold', anchor: 'middle', fill: inks.paper } as const
  const number = smallWords(x, y + 3.6, String(people), look)
  return svg`<circle cx="${n(x)}" cy="${n(y)}" r="7.5" fill="${inks.ink}"/>${number}`
}

function labelsOf(piece: LayoutPiece, layout: Layout, row: Row, x: Geometry['x'], given: RowGiven): Label[] {
  const { options, display } = given
  const from = Math.max(piece.x, row.from)
  const to = Math.min(piece.x + piece.length, row.to)
  const isBegun = piece.x < row.from - 1e-9
  const isLimiting = options.limiting === piece.name
  const state = options.states?.[piece.name]
  const name = shortened(piece.name, mostName)
  const at = x(from) + Math.min(5, (x(to) - x(from)) / 2)
  if (isBegun) return [{ at, lines: [`${name}, continued`] }]
  const sources = sourcesOf(piece, layout).map((each) => shortened(each, mostName))
  const shown = sources.length > 3 ? [...sources.slice(0, 2), `${sources.length - 2} more`] : sources
  const lines = [
    name,
    ...(isLimiting ? [leastToSpare] : []),
    ...pieceWords(piece, display),
    ...(shown.length > 0 ? [`fed from ${shown.join(', ')}`] : []),
    ...(state === undefined ? [] : [shortened(state, 40)]),
  ]
  return [{ at, lines }]
}

const sourcesOf = ({ name }: LayoutPiece, { arrivals }: Layout): string[] =>
  arrivals.filter(({ next }) => next === name).map((each) => each.name)

const leastToSpare = '▲ least to spare'

/** What a piece is, in a few words, line by line. */
function pieceWords(piece: LayoutPiece, display: Display): string[] {
  const { name, carries, length, speed, places } = piece
  const { distance, speed: speedText } = wordsFor(display)
  if (has(piece, 'conveys')) return [`${carries} conveyor`, `${distance(length)}, ${speedText(speed!)}`]
  const word = nounOf(piece)
  const isSaid = name.toLowerCase().includes(word)
  const what = places && places.work > 1 ? [`${word}, ${places.work} places`] : isSaid ? [] : [word]
  return has(piece, 'tapes') ? [...what, `belts ${speedText(speed!)}`] : what
}

/** Scale bar, key of the marks, and the people. */
function drawFoot(layout: Layout, scale: number, display: Display, top: number): Drawn {
  const unit = unitsFor(display).distance
  const step = roundStep(60 / (scale * unit.size))
  const bar = step * unit.size * scale
  const y = top + 8
  const parts = [
    svg`<path data-scale="${n(step)}" d="M${margin.left} ${n(y - 4)}v8m0 -4h${n(bar)}m0 -4v8" fill="none" stroke="${inks.ink}" stroke-width="1.2"/>`,
    smallWords(margin.left + bar + 6, y + 3.6, `${step} ${unit.word}`),
  ]
  const heads = [...new Set(layout.pieces.flatMap((piece) => piece.heads.map(({ name }) => name)))]
  const key = [
    ...(heads.length > 0 ? [`Heads: ${heads.map((name) => `${headLetter(name)} ${name}`).join(', ')}.`] : []),
    ...(layout.crews.length > 0
      ? [
          `Crew: ${layout.crews.map(({ name, people }) => `${shortened(name, mostName)} ${people}`).join(', ')}.`,
        ]
      : []),
    ...(layout.pieces.some(({ people }) => people) || layout.crews.some(({ at }) => at)
      ? ['A number in a disc: people who work there.']
      : []),
  ]
  let at = y + 20
  for (const text of key.flatMap((each) => wordLines(each, letters.small, width - 2 * margin.left))) {
    parts.push(smallWords(margin.left, at, text, { fill: inks.quiet }))
    at += letters.line
  }
  return { markup: inLines(parts), bottom: at - 4 }
}

/** The plan in words, for those who do not see it: every piece in the order of the file. */
export function planWords(
  layout: Layout,
  { limiting, states, display = 'metric' }: PlanOptions = {},
): string {
  const pieces = layout.pieces.map((piece) => {
    const heads = piece.heads.map(({ name, at }) => `${name} head at ${words(at, display)}`)
    const sources = sourcesOf(piece, layout)
    return [
      `${piece.name}: ${pieceWords({ ...piece, name: '' }, display).join(', ')}`,
      ...heads,
      ...(sources.length > 0 ? [`cases from ${sources.join(', ')}`] : []),
      ...(piece.people ? [`run by ${piece.people}`] : []),
      ...(limiting === piece.name ? ['least to spare'] : []),
      ...(states?.[piece.name] === undefined ? [] : [states[piece.name]!]),
      `to ${piece.next.map((name) => (name === exitName ? 'the exit' : name)).join(' or ')}`,
    ].join(', ')
  })
  return `${pieces.join('; ')}.`
}
