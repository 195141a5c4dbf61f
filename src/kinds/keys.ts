/** The kinds of equipment, each with the schema of its keys in a scenario file: one row a kind. Every other registry must have the same rows. */
import type * as z from 'zod'
import { conveyor } from './conveyor/keys.js'
import { divert } from './divert/keys.js'
import { inspect } from './inspect/keys.js'
import { sealer } from './sealer/keys.js'
import { station } from './station/keys.js'

export const kindKeys = { conveyor, sealer, station, divert, inspect } as const

/** What stands in `type` of a piece. */
export type Kind = keyof typeof kindKeys

/** The keys of a piece of one kind, or of any, once they are read: every quantity in SI. */
export type KeysOf<K extends Kind = Kind> = z.output<(typeof kindKeys)[K]>
