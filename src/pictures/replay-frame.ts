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
  /** Sources whose words stand below a lane, in rows one under the other. */
  const sourcesAt = (row: number, lane: number) =>
    layout.arrivals.filter(({ next }) => {
      const piece = layout.pieces.findIndex(({ name }) => name === next)
      return piece >= 0 && laneOf[piece] === lane && homeRow(layout.pieces[piece]!, perRow, rowCount) === row
    }).length
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
    for (const [lane, { width: across, y: laneY }] of lanes.entries()) {
      const here = layout.pieces
        .map((piece, index) => ({ piece, index }))
        .filter(({ index }) => laneOf[index] === lane)
        .filter(({ piece }) => homeRow(piece, perRow, rowCount) === row)
      const levels: number[][] = []
      const placed = here
        .map(({ piece, index }) => {
          const seen = [Math.max(piece.x, from), Math.min(piece.x + piece.length, to)] as const
          const pieceX = pad + ((seen[0] + seen[1]) / 2 - from) * scale
          const state = has(piece, 'tapes') || has(piece, 'hasPlaces') ? 'machine' : 'conveyor'
          const half = Math.max(letters(piece.name), stateRoom[state]) / 2 + 4
          const x = Math.min(Math.max(pieceX, half), width - half)
          return { index, piece, pieceX, x, half }
        })
        .sort((a, b) => a.pieceX - b.pieceX)
        .map((label) => {
          let level = levels.findIndex((taken) => taken[0]! <= label.x - label.half)
          if (level < 0) level = levels.push([0]) - 1
          levels[level]![0] = label.x + label.half
          return { ...label, level }
        })
      const isHere = layout.pieces.some(
        ({ x, length: long }, index) => laneOf[index] === lane && x < to && x + long > from,
      )
      const labelRoom = levels.length * labelHeight
      const laneTop = y + labelRoom + 4
      for (const { index, piece, pieceX, x, half, level } of placed)
        labels.push({
          piece: index,
          row,
          x,
          half: half - 4,
          y: laneTop - 8 - (level + 1) * labelHeight + 16,
          pieceX,
          pieceY: laneTop + (piece.y - laneY) * scale,
        })
      for (const [index, piece] of layout.pieces.entries())
        if (laneOf[index] === lane) {
          middles[row]![index] = laneTop + (piece.y - laneY + piece.width / 2) * scale
          belows[row]![index] = laneTop + across * scale + 4
        }
      if (isHere) y = laneTop + across * scale + sourcesAt(row, lane) * sourceHeight + 12
    }
    rows.push({ top, bottom: y, from, to })
    y += 6
  }
  return {
    width,
    height: y,
    scale,
    rows,
    labels,
    rowOf: (piece) => homeRow(piece, perRow, rowCount),
    across: (row, x) => pad + (x - row * perRow) * scale,
    middle: (row, piece) => middles[row]![piece]!,
    below: (row, piece) => belows[row]![piece]!,
  }
}

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
