/** Where the line stands in the picture of a replay: to scale along the travel, in rows where it is long, a strip per lane. */
import { has } from '../kinds/traits.js'
import type { Layout, LayoutPiece } from './layout.js'

/** Pieces beside one another along the travel: one strip of the picture. */
interface Lane {
  /** Upper edge and width, m. */
  y: number
  width: number
}

/** The name of a piece and its state above it. */
export interface Label {
  piece: number
  row: number
  /** Middle of the words, half of their room, and middle of the piece where it is seen, px. */
  x: number
  half: number
  /** Baseline of the name, px. */
  y: number
  /** Where the line from the words to the piece ends, px. */
  pieceX: number
  pieceY: number
}

export interface ReplayFrame {
  width: number
  height: number
  /** Pixels per metre. */
  scale: number
  rows: { top: number; bottom: number; from: number; to: number }[]
  labels: Label[]
  /** Row in which most of a piece lies. */
  rowOf: (piece: LayoutPiece) => number
  /** Left edge of the picture of row `row` for `x` metres. */
  across: (row: number, x: number) => number
  /** Middle of a piece across, px. */
  middle: (row: number, piece: number) => number
  /** Upper edge of the words of sources below the lane of a piece, px. */
  below: (row: number, piece: number) => number
}

/** Left and right of the line, px. */
export const pad = 10
const labelHeight = 32
/** A case of 0.4 m is at least so many times that many pixels long, before the line is broken into rows. */
const leastScale = 24
const mostScale = 90
const mostRows = 6
/** Room for the widest words of a state, px. */
const stateRoom = { machine: 112, conveyor: 56 }
const sourceHeight = 15

/** Lays the line out in `width` px; `letters` is the width of a name in px. */
export function replayFrame(layout: Layout, width: number, letters: (text: string) => number): ReplayFrame {
  const inner = Math.max(120, width - 2 * pad)
  const length = Math.max(layout.length, 0.5)
  const rowCount = Math.min(mostRows, Math.max(1, Math.ceil((length * leastScale) / inner)))
  const scale = Math.min(mostScale, (inner * rowCount) / length)
  const perRow = length / rowCount
  const { lanes, laneOf } = lanesOf(layout)
  const rowOf = (piece: LayoutPiece) => homeRow(piece, perRow, rowCount)
  const across = (row: number, x: number) => pad + (x - row * perRow) * scale
  const rows: ReplayFrame['rows'] = []
  const labels: Label[] = []
  const middles: number[][] = []
  const belows: number[][] = []
  let y = 4
  for (let row = 0; row < rowCount; row++) {
    const [from, to] = [row * perRow, (row + 1) * perRow]
    const top = y
    middles[row] = []
    belows[row] = []
    for (const [lane, { width: wide, y: laneY }] of lanes.entries()) {
      const inLane = [...layout.pieces.entries()].filter(([index]) => laneOf[index] === lane)
      const home = inLane.filter(([, piece]) => rowOf(piece) === row)
      const placed = placedIn(home, width, letters, (piece) =>
        across(row, (Math.max(piece.x, from) + Math.min(piece.x + piece.length, to)) / 2),
      )
      const laneTop = y + (1 + Math.max(-1, ...placed.map(({ level }) => level))) * labelHeight + 4
      const bottom = laneTop + wide * scale
      for (const { index, piece, pieceX, x, half, level } of placed) {
        const pieceY = laneTop + (piece.y - laneY) * scale
        const words = laneTop - 8 - (level + 1) * labelHeight + 16
        labels.push({ piece: index, row, x, half: half - 4, y: words, pieceX, pieceY })
      }
      for (const [index, piece] of inLane) {
        middles[row]![index] = laneTop + (piece.y - laneY + piece.width / 2) * scale
        belows[row]![index] = bottom + 4
      }
      if (inLane.some(([, { x, length: long }]) => x < to && x + long > from))
        y = bottom + sourcesOf(home, layout) * sourceHeight + 12
    }
    rows.push({ top, bottom: y, from, to })
    y += 6
  }
  return {
    ...{ width, height: y, scale, rows, labels, rowOf, across },
    middle: (row, piece) => middles[row]![piece]!,
    below: (row, piece) => belows[row]![piece]!,
  }
}

/** Names of pieces of a lane from left to right, each at the first level, counted upwards, at which it touches none. */
function placedIn(
  home: readonly [number, LayoutPiece][],
  width: number,
  letters: (text: string) => number,
  middleOf: (piece: LayoutPiece) => number,
) {
  const ends: number[] = []
  return home
    .map(([index, piece]) => {
      const pieceX = middleOf(piece)
      const state = has(piece, 'tapes') || has(piece, 'hasPlaces') ? 'machine' : 'conveyor'
      const half = Math.max(letters(piece.name), stateRoom[state]) / 2 + 4
      return { index, piece, pieceX, x: Math.min(Math.max(pieceX, half), width - half), half }
    })
    .sort((a, b) => a.pieceX - b.pieceX)
    .map((label) => {
      const free = ends.findIndex((end) => end <= label.x - label.half)
      const level = free < 0 ? ends.length : free
      ends[level] = label.x + label.half
      return { ...label, level }
    })
}

/** How many sources have their words below these pieces: in rows one under the other. */
const sourcesOf = (home: readonly [number, LayoutPiece][], { arrivals }: Layout): number =>
  arrivals.filter(({ next }) => home.some(([, { name }]) => name === next)).length

/** The row in which most of a piece lies. */
function homeRow({ x, length }: LayoutPiece, perRow: number, rows: number): number {
  let [best, most] = [0, -1]
  for (let row = 0; row < rows; row++) {
    const seen = Math.min(x + length, (row + 1) * perRow) - Math.max(x, row * perRow)
    if (seen > most + 1e-9) {
      best = row
      most = seen
    }
  }
  return best
}

/** Pieces whose extents across overlap share a lane. */
function lanesOf({ pieces }: Layout): { lanes: Lane[]; laneOf: number[] } {
  const laneOf: number[] = []
  const lanes: Lane[] = []
  const order = pieces.map((_, index) => index).sort((a, b) => pieces[a]!.y - pieces[b]!.y)
  for (const index of order) {
    const { y, width } = pieces[index]!
    const last = lanes.at(-1)
    if (last && y < last.y + last.width - 1e-6) last.width = Math.max(last.width, y + width - last.y)
    else lanes.push({ y, width })
    laneOf[index] = lanes.length - 1
  }
  return { lanes, laneOf }
}
