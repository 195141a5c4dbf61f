/** Scenarios as they travel: whole, with all that their files hold; a long list that many designs share travels once. */
import * as z from 'zod'
import type { Scenario } from '../scenario/schema.js'
import { digestOf, seal, unseal } from './seal.js'
import { fromBytes, type PartOf, toBytes } from './wire.js'

/** Lists from this length on travel apart. */
const longList = 2000

/** What stands on the server: a design, or a part of designs, under the hash of what it holds. */
export interface Piece {
  sort: 'design' | 'part'
  hash: string
  sealed: () => Uint8Array
}

/** A design to be sent: its own hash, and those of its parts. */
export interface Sent {
  hash: string
  pieces: Piece[]
}

const ofDesign = z.strictObject({
  parts: z.array(z.string().regex(/^[0-9a-f]{64}$/)).max(10_000),
  scenario: z.instanceof(Uint8Array),
})

/** Takes scenarios apart; each is looked at once. */
export class Sending {
  private readonly known = new WeakMap<Scenario, Sent>()
  /** Lists of designs are the same objects mostly: they are hashed once. */
  private readonly lists = new WeakMap<object, string>()

  of(scenario: Scenario): Sent {
    const known = this.known.get(scenario)
    if (known) return known
    const { bytes, parts } = this.apart(scenario)
    const hash = digestOf(bytes)
    const sent: Sent = {
      hash,
      pieces: [
        ...[...parts].map(([each, list]) => pieceOf('part', each, () => toBytes(list))),
        // packed again where it is asked for again: thousands of designs need not be held
        pieceOf('design', hash, () => this.apart(scenario).bytes),
      ],
    }
    this.known.set(scenario, sent)
    return sent
  }

  private apart(scenario: Scenario): { bytes: Uint8Array; parts: Map<string, object> } {
    const parts = new Map<string, object>()
    const partOf: PartOf = (list) => {
      if (list.length < longList) return null
      const hash = this.lists.get(list) ?? digestOf(toBytes(list))
      this.lists.set(list, hash)
      parts.set(hash, list)
      return hash
    }
    const packed = toBytes(scenario, partOf)
    return { bytes: toBytes({ parts: [...parts.keys()], scenario: packed }), parts }
  }
}

const pieceOf = (sort: Piece['sort'], hash: string, bytes: () => Uint8Array): Piece => ({
  sort,
  hash,
  sealed: () => seal(sort, hash, bytes()),
})

/**
 * The scenario of that hash, whose pieces `get` brings; null where one of them is not there. Throws an `Error` where one is not as it
 * was sent.
 */
export async function received(
  hash: string,
  get: (piece: Pick<Piece, 'sort' | 'hash'>) => Promise<Uint8Array | null>,
): Promise<Scenario | null> {
  const bytesOf = async (sort: Piece['sort'], of: string): Promise<Uint8Array | null> => {
    const sealed = await get({ sort, hash: of })
    if (sealed === null) return null
    const bytes = unseal(sort, of, sealed)
    if (digestOf(bytes) !== of) throw new Error('it is not what its name says')
    return bytes
  }
  const bytes = await bytesOf('design', hash)
  if (bytes === null) return null
  const { parts, scenario } = ofDesign.parse(fromBytes(bytes))
  const lists = new Map<string, unknown>()
  for (const part of parts) {
    const list = await bytesOf('part', part)
    if (list === null) return null
    lists.set(part, fromBytes(list))
  }
  return fromBytes(scenario, (name) => {
    if (!lists.has(name)) throw new Error('a part that is not named')
    return lists.get(name)
  }) as Scenario
}
