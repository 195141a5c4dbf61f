/** The first screen of a page as data: the sentences of the terminal's first screen, the figures that a reader looks for, and one picture. */
import type { Screen, Tone } from './screen.js'

/** A figure that a reader looks for first. */
export interface Tile {
  label: string
  value: string
  unit?: string
  /** Its plus-minus, or how few events it rests on. */
  interval?: string
  /** What it is held against, or leaves out. */
  note?: string
  tone?: Tone
}

/** What a question shows beside its sentences. */
export interface Shown {
  /** Whose figures these are, where several designs were simulated. */
  of?: string
  /** At most four, the most asked for first. */
  tiles: Tile[]
  /** Heads of the sentences that the tiles tell. */
  told: readonly string[]
  /** Name of the chart that explains the verdict; null where there is none. */
  picture: string | null
}

export interface Front extends Shown {
  /** Null where the command has no such screen. */
  screen: Screen | null
}
