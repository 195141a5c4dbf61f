/// <reference lib="dom" />
/** Draws one instant of a replay: the line from above, its states, and every case where it is. */

import { type StateKey, type StopKind, states } from '../catalogue/states.js'
import { has } from '../kinds/traits.js'
import type { Layout } from '../pictures/layout.js'
import { type Move, placeAt, stateAt } from '../pictures/motion.js'
import { pad, type ReplayFrame, replayFrame } from '../pictures/replay-frame.js'
import { countAt, countOnLine, type Standing } from '../pictures/standing.js'
import { stopLooks } from '../pictures/state-looks.js'
import { okabeIto, pageColours } from '../report/marks/inks.js'
import type { Stretch } from '../shifts/stretch.js'

const kindColours = [
  okabeIto.orange,
  okabeIto.skyBlue,
  okabeIto.yellow,
  okabeIto.bluishGreen,
  okabeIto.reddishPurple,
]
const font = '12px system-ui, "DejaVu Sans", sans-serif'
const boldFont = `bold ${font}`

type Colours = typeof pageColours

/** More kinds of cases than this have no colours of their own that the eye could tell. */
const mostKindsDrawn = 12

export class ReplayPicture {
  private readonly context: CanvasRenderingContext2D
  /** Where all stands, once it is fitted. */
  frame!: ReplayFrame
  private colours!: Colours
  /** Where each kind of case is told with its colour; nowhere where there is one, or there are many. */
  private kindsAt: { x: number; y: number }[] = []
  private readonly hatches = new Map<StopKind, CanvasPattern>()
  private readonly stopColours = new Map<StopKind, string>()
  /** Whether a case has been through a sealer before this move. */
  private readonly isSealed: Uint8Array
  /** Of each piece the place of its first head, from which a case has tape, m. */
  private readonly tapedFrom: number[]

  constructor(
    private readonly canvas: HTMLCanvasElement,
    private readonly layout: Layout,
    private readonly stretch: Stretch,
    private readonly moves: readonly Move[],
    /** Of each source the number of cases that stand before the line, from each of these instants on. */
    private readonly standing: Standing,
  ) {
    this.context = canvas.getContext('2d')!
    const sealed = new Set<number>()
    const isSealer = layout.pieces.map((piece) => has(piece, 'tapes'))
    this.isSealed = Uint8Array.from(moves, ({ item, piece, before }) => {
      if (before >= 0 && isSealer[before]) sealed.add(item)
      return sealed.has(item) && !isSealer[piece] ? 1 : 0
    })
    this.tapedFrom = layout.pieces.map(({ heads }) => Math.min(Infinity, ...heads.map(({ at }) => at)))
  }

  /** Fits the picture into `width` px and reads the colours of the page anew. */
  fit(width: number): void {
    const { canvas, context } = this
    const style = getComputedStyle(canvas)
    const read = (name: string, otherwise: string) => style.getPropertyValue(name).trim() || otherwise
    this.colours = Object.fromEntries(
      Object.entries(pageColours).map(([name, light]) => [name, read(`--${name}`, light)]),
    ) as Colours
    context.font = boldFont
    this.frame = replayFrame(this.layout, width, (text) => context.measureText(text).width)
    this.kindsAt = this.placesOfKinds()
    const ratio = Math.min(3, window.devicePixelRatio || 1)
    canvas.width = Math.round(width * ratio)
    canvas.height = Math.round(this.height * ratio)
    canvas.style.height = `${this.height}px`
    context.setTransform(ratio, 0, 0, ratio, 0, 0)
    for (const [kind, look] of Object.entries(stopLooks) as [StopKind, (typeof stopLooks)[StopKind]][]) {
      const colour = read(look.variable, look.light)
      this.stopColours.set(kind, colour)
      this.hatches.set(kind, this.hatch(look.hatch, colour))
    }
  }

  private hatch(lines: string, colour: string): CanvasPattern {
    const tile = document.createElement('canvas')
    tile.width = 8
    tile.height = 8
    const context = tile.getContext('2d')!
    context.strokeStyle = colour
    context.lineWidth = 1.4
    context.stroke(new Path2D(lines))
    return this.context.createPattern(tile, 'repeat')!
  }

  private get height(): number {
    const last = this.kindsAt.at(-1)
    return last ? last.y + 20 : this.frame.height + 4
  }

  /** One beside the other in as many rows as that takes. */
  private placesOfKinds(): { x: number; y: number }[] {
    const { context, frame, layout } = this
    if (layout.cases.length < 2 || layout.cases.length > mostKindsDrawn) return []
    context.font = font
    let [x, y] = [10, frame.height + 4]
    return layout.cases.map(({ name }) => {
      const wide = 19 + context.measureText(name).width
      if (x > 10 && x + wide > frame.width) [x, y] = [10, y + 18]
      const place = { x, y }
      x += wide + 16
      return place
    })
  }

  /** State of a piece at `time`. */
  stateOf(piece: number, time: number): StateKey {
    return stateAt(this.stretch.states[piece]!, time)
  }

  /** Cases on the line at `time`. */
  countOn(time: number): number {
    return countOnLine(this.stretch, this.standing, time)
  }

  /** Draws it, once it is fitted: what is folded away has no width yet. */
  draw(time: number): void {
    const { context, frame, colours } = this
    if (!frame) return
    context.fillStyle = colours.paper
    context.fillRect(0, 0, frame.width, this.height)
    for (let row = 0; row < frame.rows.length; row++) this.drawRow(row, time)
    this.drawLabels(time)
    this.drawSources(time)
    this.drawKinds()
  }

  private drawRow(row: number, time: number): void {
    const { context, frame, layout } = this
    const { top, bottom } = frame.rows[row]!
    context.save()
    context.beginPath()
    // a case that stands across the break of two rows is seen in both, each time as far as the row goes
    const left = row === 0 ? 0 : pad
    const right = row === frame.rows.length - 1 ? frame.width : frame.width - pad
    context.rect(left, top, right - left, bottom - top)
    context.clip()
    for (let piece = 0; piece < layout.pieces.length; piece++) this.drawPiece(row, piece, time)
    for (let move = 0; move < this.moves.length; move++) {
      if (this.moves[move]!.in > time) break
      if (this.moves[move]!.out > time) this.drawCase(row, move, time)
    }
    context.restore()
  }

  private drawPiece(row: number, index: number, time: number): void {
    const { context, frame, colours } = this
    const piece = this.layout.pieces[index]!
    const { from, to } = frame.rows[row]!
    if (piece.x > to || piece.x + piece.length < from) return
    const x = frame.across(row, piece.x)
    const [wide, tall] = [piece.length * frame.scale, piece.width * frame.scale]
    const y = frame.middle(row, index) - tall / 2
    const state = this.stateOf(index, time)
    const kind = states[state].stop
    context.fillStyle = state === 'on-break' ? colours.pause : colours.band
    context.fillRect(x, y, wide, tall)
    context.strokeStyle = colours.quiet
    context.lineWidth = 1
    if (kind) {
      context.fillStyle = this.hatches.get(kind)!
      context.fillRect(x, y, wide, tall)
      context.strokeStyle = this.stopColours.get(kind)!
      context.lineWidth = 3
    } else if (state === 'blocked') {
      context.strokeStyle = colours.accent
      context.lineWidth = 2
    }
    context.strokeRect(x, y, wide, tall)
    for (const { at } of piece.heads) {
      const across = x + at * frame.scale
      this.line(across, y - 4, across, y + tall + 4, colours.quiet, 1)
    }
  }

  private drawCase(row: number, number: number, time: number): void {
    const { frame, layout } = this
    const move = this.moves[number]!
    const size = move.size ?? layout.cases[move.kind]!
    const piece = layout.pieces[move.piece]!
    const place = placeAt(move, time)
    let x = frame.across(row, piece.x + place)
    let y = frame.middle(row, move.piece)
    const { servers } = this.stretch.pieces[move.piece]!
    if (servers > 1) {
      // from the row of those who wait to its own place
      const part = Math.min(1, Math.max(0, 1 - (piece.length - place) / size.length))
      y += ((move.lane + 0.5) / servers - 0.5) * piece.width * frame.scale * part
    }
    if (move.before >= 0 && place < size.length) {
      // its tail is still where it was: from there in one length to where it is
      const before = layout.pieces[move.before]!
      const part = place / size.length
      const fromX = frame.across(row, before.x + before.length + place)
      x = fromX + (x - fromX) * part
      const fromY = frame.middle(row, move.before)
      y = fromY + (y - fromY) * part
    }
    const [wide, tall] = [size.length * frame.scale, size.width * frame.scale]
    if (x < 0 || x - wide > frame.width) return
    this.caseBox(move.kind, x - wide, y - tall / 2, wide, tall)
    if (this.isSealed[number] || place >= this.tapedFrom[move.piece]!)
      this.line(x - wide, y, x, y, okabeIto.black, 2)
  }

  private line(x: number, y: number, toX: number, toY: number, colour: string, width: number): void {
    const { context } = this
    context.strokeStyle = colour
    context.lineWidth = width
    context.beginPath()
    context.moveTo(x, y)
    context.lineTo(toX, toY)
    context.stroke()
  }

  /** A case of that kind, its edge within it. */
  private caseBox(kind: number, x: number, y: number, wide: number, tall: number): void {
    const { context, colours } = this
    context.fillStyle = kindColours[kind % kindColours.length]!
    context.fillRect(x, y, wide, tall)
    context.strokeStyle = colours.ink
    context.lineWidth = 1
    context.strokeRect(x + 0.5, y + 0.5, wide - 1, tall - 1)
  }

  private drawLabels(time: number): void {
    const { context, frame, colours, layout } = this
    context.textAlign = 'center'
    context.lineJoin = 'round'
    for (const { x, y, half, pieceX, pieceY } of frame.labels) {
      const from = Math.min(Math.max(pieceX, x - half), x + half)
      this.line(from, y + 18, pieceX, pieceY, colours.quiet, 1)
    }
    context.strokeStyle = colours.paper
    context.lineWidth = 4
    for (const { piece, x, y } of frame.labels) {
      const state = this.stateOf(piece, time)
      const { short, group } = states[state]
      const isStopped = group === 'stop'
      this.words(layout.pieces[piece]!.name, x, y, boldFont, colours.ink)
      this.words(short, x, y + 14, isStopped ? boldFont : font, isStopped ? colours.ink : colours.quiet)
    }
    context.textAlign = 'left'
  }

  /** Words with paper around them, so that they are read above lines; around `middle`, as far as they have room there. */
  private words(text: string, middle: number, y: number, letters: string, colour: string): void {
    const { context, frame } = this
    context.font = letters
    const half = context.measureText(text).width / 2 + 2
    const x = Math.max(half, Math.min(middle, frame.width - half))
    context.fillStyle = colour
    context.strokeText(text, x, y)
    context.fillText(text, x, y)
  }

  private drawSources(time: number): void {
    const { context, frame, colours, layout, stretch } = this
    context.font = font
    context.fillStyle = colours.quiet
    for (const [source, { name, next }] of layout.arrivals.entries()) {
      const piece = layout.pieces.findIndex((each) => each.name === next)
      if (piece < 0) continue
      const line = layout.arrivals.slice(0, source).filter((other) => other.next === next).length
      const row = frame.rowOf(layout.pieces[piece]!)
      const count = countAt(this.standing[source]!, time)
      const isQueue = stretch.sources[source]!.whenFull === 'queue'
      const words =
        count === 0 ? `↑ ${name}` : isQueue ? `↑ ${name}: ${count} on the floor` : `↑ ${name} waits for room`
      const most = frame.width - context.measureText(words).width - pad
      const x = Math.max(pad, Math.min(frame.across(row, layout.pieces[piece]!.x), most))
      context.fillText(words, x, frame.below(row, piece) + 11 + line * 15)
    }
  }

  private drawKinds(): void {
    const { context, colours, kindsAt, layout } = this
    context.font = font
    for (const [kind, { x, y }] of kindsAt.entries()) {
      this.caseBox(kind, x, y, 14, 12)
      context.fillStyle = colours.ink
      context.fillText(layout.cases[kind]!.name, x + 19, y + 10)
    }
  }
}
