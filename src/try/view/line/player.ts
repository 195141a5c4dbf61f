/** Plays the recorded stretch of a line on a canvas: cases move, machines show their state, and another stretch may take its place at any time. */
import { states } from '../../../catalogue/states.js'
import { Playhead } from '../../../page/playhead.js'
import { ReplayPicture } from '../../../page/replay-draw.js'
import type { Layout } from '../../../pictures/layout.js'
import type { Move } from '../../../pictures/motion.js'
import { countAt, standingOf } from '../../../pictures/standing.js'
import { clockOf } from '../../../pictures/stops.js'
import type { Stretch } from '../../../shifts/stretch.js'

/** Where a piece is seen, px. */
export interface Place {
  name: string
  left: number
  top: number
  width: number
  height: number
}

/** What is told of an instant. */
export interface Instant {
  /** Time since the start of the shift, s, and as a clock. */
  time: number
  clock: string
  /** State of each piece in words. */
  doing: readonly string[]
  /** Cases on the line. */
  onLine: number
}

/** Smallest target for a finger, px (WCAG 2.2, 2.5.8). */
const leastTarget = 24

/** So much of a stretch goes by while an empty line fills. */
const fills = 0.25

/** Where it begins to be shown: an empty line at the start of a shift says nothing. */
const beginOf = ({ from, to, held }: Stretch): number =>
  countAt(held, from) > 0 ? from : from + (to - from) * fills

export class LinePlayer {
  readonly playhead: Playhead
  private width = 0
  private picture: ReplayPicture | null = null
  private layout: Layout | null = null
  private stretch: Stretch | null = null

  constructor(
    private readonly canvas: HTMLCanvasElement,
    private readonly tell: (instant: Instant) => void,
    private readonly place: (places: Place[]) => void,
  ) {
    this.playhead = new Playhead({
      ...{ box: canvas, draw: () => this.picture?.draw(this.playhead.time), tell: () => this.say() },
      ended: () => this.playhead.goTo(this.stretch!.from),
    })
  }

  /** Takes another stretch, and goes on at the same time where it has that. */
  take(layout: Layout, stretch: Stretch, moves: readonly Move[]): void {
    this.layout = layout
    this.stretch = stretch
    this.picture = new ReplayPicture(this.canvas, layout, stretch, moves, standingOf(stretch))
    this.playhead.take(stretch, beginOf(stretch))
    if (this.width > 0) this.fit(this.width)
  }

  /** Fits the picture into `width` px. */
  fit(width: number): void {
    this.width = width
    if (!this.picture || width <= 0) return
    this.picture.fit(width)
    this.place(this.places())
    this.playhead.show()
  }

  /** Name of the piece of which `x`, `y` px meets the body or the words; null beside all. */
  pieceAt(x: number, y: number): string | null {
    const { picture, layout } = this
    if (!picture || !layout) return null
    const label = picture.frame.labels.find(
      (each) => Math.abs(each.x - x) <= each.half && y >= each.y - 14 && y <= each.y + 18,
    )
    if (label) return layout.pieces[label.piece]!.name
    const within = ({ left, top, width, height }: Place) =>
      x >= left && x <= left + width && y >= top && y <= top + height
    return this.places().find(within)?.name ?? null
  }

  private places(): Place[] {
    const { picture, layout } = this
    if (!picture?.frame || !layout) return []
    const { frame } = picture
    return layout.pieces.map((piece, index) => {
      const row = frame.rowOf(piece)
      const left = Math.max(0, frame.across(row, piece.x))
      const right = Math.min(frame.width, frame.across(row, piece.x + piece.length))
      const width = Math.max(leastTarget, right - left)
      const height = Math.max(leastTarget, piece.width * frame.scale)
      const top = frame.middle(row, index) - height / 2
      return { name: piece.name, left: (left + right - width) / 2, top, width, height }
    })
  }

  private say(): void {
    const { picture, layout, stretch, playhead } = this
    if (!picture?.frame || !layout || !stretch) return
    const { time } = playhead
    const doing = layout.pieces.map((_, index) =>
      states[picture.stateOf(index, time)].short.replace(': ', ', '),
    )
    this.tell({ time, clock: clockOf(time, true), doing, onLine: picture.countOn(time) })
  }
}
