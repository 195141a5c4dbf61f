/** What can be said of a piece by its kind alone: one row a kind. Without the schema, so that the programs of a page can ask too. */
import type { KeysOf, Kind } from './keys.js'

interface Traits {
  /** Tapes cases that its belts carry past its heads. */
  tapes: boolean
  /** Carries cases over a length that is for choice: it is bought by the metre, and lies in the plan as long as it is. */
  conveys: boolean
  /** Works in places side by side, with room to wait before them. */
  hasPlaces: boolean
  /** Lets some cases go another way: `aside` those that it rejects, `apart` all by a rule. */
  parts: 'aside' | 'apart' | null
  /** Names it where `type` is not the word for it. */
  noun: string | null
}

const traits = {
  conveyor: { tapes: false, conveys: true, hasPlaces: false, parts: null, noun: null },
  sealer: { tapes: true, conveys: false, hasPlaces: false, parts: null, noun: null },
  station: { tapes: false, conveys: false, hasPlaces: true, parts: null, noun: null },
  divert: { tapes: false, conveys: false, hasPlaces: false, parts: 'apart', noun: null },
  inspect: { tapes: false, conveys: false, hasPlaces: false, parts: 'aside', noun: 'inspection' },
} as const satisfies Record<Kind, Traits>

/** Traits that a kind has or has not. */
type Flag = 'tapes' | 'conveys' | 'hasPlaces'
type KindWith<Trait extends Flag> = {
  [K in Kind]: (typeof traits)[K][Trait] extends true ? K : never
}[Kind]

const traitsOf = ({ type }: { type: string }): Partial<Traits> =>
  (traits as Readonly<Record<string, Traits>>)[type] ?? {}

/** Whether a piece is of a kind with this trait; what is read of a scenario then has the keys of such a kind. */
export function has<Trait extends Flag>(piece: KeysOf, trait: Trait): piece is KeysOf<KindWith<Trait>>
export function has(piece: { type: string }, trait: Flag): boolean
export function has(piece: { type: string }, trait: Flag): boolean {
  return traitsOf(piece)[trait] === true
}

/** How it lets cases go more ways than one; null where all go on. */
export const partingOf = (piece: { type: string }): Traits['parts'] => traitsOf(piece).parts ?? null

/** What a piece is, in a word. */
export const nounOf = (piece: { type: string }): string => traitsOf(piece).noun ?? piece.type
