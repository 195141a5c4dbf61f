/** A piece of each kind to begin with: the least that it must say, with values that are usual, and what these rest on. */
import type { Kind } from '../../kinds/keys.js'
import type { Basis } from '../../scenario/kit.js'

export interface NewPiece {
  /** What it is called at first. */
  name: string
  keys: Readonly<Record<string, unknown>>
  basis: Basis
  /** What it is, for whoever chooses. */
  about: string
}

/** A divert needs ways, which depend on the line that it comes into. */
export const newPieces: Readonly<Record<Exclude<Kind, 'divert'>, NewPiece>> = {
  conveyor: {
    name: 'conveyor',
    keys: { type: 'conveyor', length: '4 m' },
    basis: 'common practice, no source',
    about: 'carries cases, and holds those that wait',
  },
  sealer: {
    name: 'sealer',
    keys: { type: 'sealer' },
    basis: 'from memory, low confidence',
    about: 'tapes the cases; its values are those of the format until you give those of your machine',
  },
  station: {
    name: 'station',
    keys: { type: 'station', time: '4 s' },
    basis: 'common practice, no source',
    about: 'holds each case for a time: packer, labeller, check weigher, palletiser',
  },
  inspect: {
    name: 'inspection',
    keys: { type: 'inspect', time: '1 s', chance: '1 %' },
    basis: 'common practice, no source',
    about: 'looks at each case and rejects some',
  },
}

/** The kinds that can be added. */
export const newKinds = Object.keys(newPieces) as (keyof typeof newPieces)[]

/** A name that is not taken: `conveyor`, `conveyor 2`. */
export function freeName(wanted: string, taken: readonly string[]): string {
  if (!taken.includes(wanted)) return wanted
  let number = 2
  while (taken.includes(`${wanted} ${number}`)) number++
  return `${wanted} ${number}`
}
