/** Messages as they travel: packed, bounded, and with a digest of what they say and where they belong, so that an altered one is told. */
import { createHash } from 'node:crypto'
import { deflateRawSync, inflateRawSync } from 'node:zlib'

/** The digest stands first, SHA-256. */
const digestBytes = 32

/** Most bytes of each sort of message, packed. Project rule: beyond what any demo takes a hundred times. */
export const mostBytes = { task: 100_000, design: 32_000_000, part: 32_000_000, answer: 64_000_000 } as const
export type Sort = keyof typeof mostBytes

/** Most bytes that a message may unpack to. */
const mostUnpacked = 300_000_000

/** SHA-256 in hexadecimal digits. */
export const digestOf = (...parts: readonly (Uint8Array | string)[]): string => {
  const hash = createHash('sha256')
  for (const part of parts) hash.update(part)
  return hash.digest('hex')
}

const digest = (sort: Sort, belongsTo: string, packed: Uint8Array): Uint8Array =>
  createHash('sha256').update(`${sort} ${belongsTo}\n`).update(packed).digest()

/** A message is larger than its sort may be. */
export class TooLarge extends Error {}

/** Packs a message that belongs to `belongsTo`, such as the answer to a task. Throws `TooLarge`. */
export function seal(sort: Sort, belongsTo: string, bytes: Uint8Array): Uint8Array {
  // the fastest way of packing: rows of measures are mostly zeros, and more of it would take as long as simulating
  const packed = deflateRawSync(bytes, { level: 1 })
  if (bytes.length > mostUnpacked || digestBytes + packed.length > mostBytes[sort])
    throw new TooLarge(
      `${(packed.length / 1e6).toPrecision(3)} MB packed, ${mostBytes[sort] / 1e6} MB at most travel`,
    )
  return Buffer.concat([digest(sort, belongsTo, packed), packed])
}

/** Unpacks it. Throws an `Error` where it is none, is of another sort, belongs elsewhere or was altered. */
export function unseal(sort: Sort, belongsTo: string, message: Uint8Array): Uint8Array {
  if (message.length > mostBytes[sort]) throw new TooLarge(`more than ${mostBytes[sort] / 1e6} MB`)
  const packed = message.subarray(digestBytes)
  if (Buffer.compare(message.subarray(0, digestBytes), digest(sort, belongsTo, packed)) !== 0)
    throw new Error('it is not as it was sent')
  return inflateRawSync(packed, { maxOutputLength: mostUnpacked })
}
