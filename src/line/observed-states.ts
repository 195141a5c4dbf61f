/** What an observer tells of the states of pieces and of the speeds at which they carry: when the instant is over at which they change. */
import { type Clock, never } from '../engine/clock.js'
import type { ShiftEvent } from './shift-event.js'
import { State, stateKeys } from './states.js'

/**
 * A piece and its state: the last one told, the one it is in now, and when that lapses into waiting; and the speed at which it carries,
 * told and now, m/s.
 */
interface Piece {
  name: string
  told: State | -1
  state: State
  lapse: number
  toldPace: number
  pace: number
}

/** What the observer asks of a piece that says its state. */
interface Stating {
  readonly name: string
  readonly frozen: boolean
  readonly mechanism: { readonly pace: number; readonly carries: boolean }
}

/** A lower part of `Observer`, which is the only class that is made of it. */
export abstract class ObservedStates {
  private readonly pieces = new Map<string, Piece>()
  private now = 0

  constructor(
    protected readonly clock: Clock,
    protected readonly tell: (event: ShiftEvent) => void,
    /** False: what happens to cases is told to nobody; telling it is most of what an observer costs. */
    protected readonly isOfCases: boolean,
  ) {}

  /** A shift begins. */
  begin(): void {
    this.pieces.clear()
    this.now = 0
  }

  /** The shift is over: tells what is open. */
  close(): void {
    this.advance()
    this.tellStates()
  }

  /** A piece is in `state` from now, until `lapse` if it says nothing before; and carries at its pace. */
  state({ name, frozen, mechanism }: Stating, state: State, lapse: number): void {
    this.advance()
    const piece = this.pieces.get(name)
    const pace = frozen ? 0 : mechanism.pace
    if (piece) {
      piece.state = state
      piece.lapse = lapse
      piece.pace = pace
    } else {
      const toldPace = mechanism.carries && this.isOfCases ? -1 : pace
      this.pieces.set(name, { ...{ name, told: -1, state, lapse }, toldPace, pace })
    }
  }

  protected advance(): void {
    const { now } = this.clock
    if (!(now > this.now)) return
    this.tellStates()
    for (let piece = this.firstToLapse(now); piece; piece = this.firstToLapse(now)) {
      this.now = piece.lapse
      this.lapsed(piece)
      this.tellState(piece)
    }
    this.now = now
  }

  private tellStates(): void {
    for (const piece of this.pieces.values()) {
      if (piece.lapse <= this.now) this.lapsed(piece)
      if (piece.state !== piece.told) this.tellState(piece)
      if (piece.pace !== piece.toldPace && this.isOfCases) {
        piece.toldPace = piece.pace
        this.tell({ time: this.now, event: 'carries-at', at: piece.name, speed: piece.pace })
      }
    }
  }

  private firstToLapse(before: number): Piece | undefined {
    let first: Piece | undefined
    for (const piece of this.pieces.values())
      if (piece.lapse < before && (!first || piece.lapse < first.lapse)) first = piece
    return first
  }

  private lapsed(piece: Piece): void {
    piece.state = State.waiting
    piece.lapse = never
  }

  private tellState(piece: Piece): void {
    piece.told = piece.state
    this.tell({ time: this.now, event: 'state', at: piece.name, state: stateKeys[piece.state]! })
  }
}
