/** What the pictures ask of every kind of equipment: how it looks from above, and how cases move on it. Lengths in m, times in s. */
import type { Scenario } from '../scenario/schema.js'
import { zonesFor } from '../trade/zones.js'
import type { Kind } from './keys.js'

/** A piece from above: `length` lies along the travel and `width` across it. */
export interface Shape {
  type: Kind
  carries?: string
  length: number
  width: number
  /** Belt or drive, m/s; null where nothing carries. */
  speed: number | null
  /** Taping heads: distance from the upstream end. */
  heads: { name: string; at: number }[]
  /** Of a station: places that work side by side, across, and places to wait before them, along, as far as drawn. */
  places?: { work: number; wait: number }
  /** Places where people work. */
  people?: number
}

/** Room that one case takes: the longest case, and the place for it with what is spare around it. */
export interface OnePlace {
  longest: number
  length: number
  width: number
}

/** What of a piece decides how cases move on it. */
export interface Movement {
  /** How cases move on it; `place` holds one case for a time. */
  moves: 'accumulating' | 'belt' | 'sealer' | 'station' | 'place'
  /** Way of a case on it: whole zones of a zoned conveyor, the belts of a sealer; 0 where a case only stands. */
  length: number
  speed: number | null
  /** Accumulating: room that a case takes, by kind; else empty. */
  pitches: number[]
  /** The same where sizes vary: a case takes its length and the spacing, or whole zones, m. */
  keeps?: { spacing: number } | { zone: number }
  /** Accumulating: time until a case follows the one ahead. */
  startDelay: number
  /** Places that work side by side. */
  servers: number
}

export interface InPictures<Keys> {
  shape(keys: Keys, one: OnePlace): Shape
  movement(keys: Keys, scenario: Scenario): Movement
}

/** Room that a case takes on an accumulating conveyor, m: by its own length where it has one. */
export function pitchOf(
  { pitches, keeps }: Movement,
  { kind, size }: { kind: number; size?: { length: number } | undefined },
): number {
  if (!size || !keeps) return pitches[kind]!
  return 'zone' in keeps ? zonesFor(size.length, keeps.zone) * keeps.zone : size.length + keeps.spacing
}

/** How cases move where they only stand. */
export const standing = { length: 0, speed: null, pitches: [], startDelay: 0, servers: 1 }
