/** Values as bytes and back, to the last bit: numbers that JSON does not know, rows of numbers, what is undefined. Nothing but data. */

/** Rows of numbers that travel as they lie in memory. */
const rowKinds = { Float64Array, Float32Array, Uint32Array, Int32Array, Uint16Array, Uint8Array } as const
type RowKind = keyof typeof rowKinds
type Row = InstanceType<(typeof rowKinds)[RowKind]>

/** The key of an object that stands for what JSON has no word for. */
const tag = '$'
/** Numbers that JSON would alter. */
const oddNumbers: ReadonlyMap<string, number> = new Map([
  ['NaN', Number.NaN],
  ['Infinity', Infinity],
  ['-Infinity', -Infinity],
  ['-0', -0],
])

/** Is asked of each list before it is written: the name of a part that travels apart, or null. */
export type PartOf = (value: Row | readonly unknown[]) => string | null
/** Brings a part by its name. Throws where there is none. */
export type PartAt = (name: string) => unknown

const noPart: PartOf = () => null
const noParts: PartAt = () => {
  throw new TypeError('a part that is named nowhere')
}

/** Bytes of a value of plain data: length of the text, the text in JSON, then the rows. Throws `TypeError` of anything else. */
export function toBytes(value: unknown, partOf: PartOf = noPart): Uint8Array {
  const rows: Uint8Array[] = []
  const text = new TextEncoder().encode(JSON.stringify(plain(value, rows, partOf)))
  const all = [new Uint8Array(new Uint32Array([text.length]).buffer), text, ...rows]
  const bytes = new Uint8Array(all.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  for (const each of all) {
    bytes.set(each, at)
    at += each.length
  }
  return bytes
}

function plain(value: unknown, rows: Uint8Array[], partOf: PartOf): unknown {
  if (typeof value === 'number') {
    const isUsual = Number.isFinite(value) && !Object.is(value, -0)
    return isUsual ? value : { [tag]: [...oddNumbers].find(([, each]) => Object.is(each, value))![0] }
  }
  if (value === undefined) return { [tag]: 'undefined' }
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return value
  if (ArrayBuffer.isView(value)) return plainRow(value as Row, rows, partOf)
  if (Array.isArray(value)) {
    const part = partOf(value)
    return part === null ? value.map((each) => plain(each, rows, partOf)) : { [tag]: 'part', name: part }
  }
  const form: unknown = typeof value === 'object' ? Object.getPrototypeOf(value) : undefined
  if (form !== null && form !== Object.prototype) throw new TypeError(`no plain data: ${typeof value}`)
  return Object.fromEntries(
    Object.entries(value as object).map(([key, each]) => [
      // a key of its own that begins like the tag is told from it
      key.startsWith(tag) ? tag + key : key,
      plain(each, rows, partOf),
    ]),
  )
}

function plainRow(row: Row, rows: Uint8Array[], partOf: PartOf): unknown {
  const part = partOf(row)
  if (part !== null) return { [tag]: 'part', name: part }
  const kind = (Object.keys(rowKinds) as RowKind[]).find((each) => row.constructor === rowKinds[each])
  if (kind === undefined) throw new TypeError(`no plain data: ${row.constructor.name}`)
  rows.push(new Uint8Array(row.buffer, row.byteOffset, row.byteLength))
  return { [tag]: kind, length: row.length }
}

/** The value of bytes that `toBytes` made. Throws an `Error` where they are anything else. */
export function fromBytes(bytes: Uint8Array, partAt: PartAt = noParts): unknown {
  const text = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(0, true)
  if (4 + text > bytes.length) throw new RangeError('bytes are missing')
  const json: unknown = JSON.parse(
    new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(4, 4 + text)),
  )
  const left = new RowsLeft(bytes, 4 + text)
  const value = valued(json, left, partAt)
  if (!left.isDone) throw new RangeError('bytes are left over')
  return value
}

/** Rows in the order in which they were written. */
class RowsLeft {
  constructor(
    private readonly bytes: Uint8Array,
    private at: number,
  ) {}

  get isDone(): boolean {
    return this.at === this.bytes.length
  }

  next(kind: RowKind, length: unknown): Row {
    const form = rowKinds[kind]
    const size = Number.isInteger(length) ? (length as number) * form.BYTES_PER_ELEMENT : -1
    if (size < 0 || this.at + size > this.bytes.length) throw new RangeError('bytes are missing')
    // a copy of its own, for rows must begin where numbers may
    const row = new form(new Uint8Array(this.bytes.subarray(this.at, this.at + size)).buffer)
    this.at += size
    return row
  }
}

function valued(json: unknown, rows: RowsLeft, partAt: PartAt): unknown {
  if (Array.isArray(json)) return json.map((each) => valued(each, rows, partAt))
  if (typeof json !== 'object' || json === null) return json
  const entries = Object.entries(json)
  if (Object.hasOwn(json, tag)) return ofTag(json as Record<string, unknown>, rows, partAt)
  const value: Record<string, unknown> = {}
  for (const [key, each] of entries) {
    if (key === '__proto__') throw new TypeError('a key that no data has')
    value[key.startsWith(tag) ? key.slice(tag.length) : key] = valued(each, rows, partAt)
  }
  return value
}

function ofTag(json: Record<string, unknown>, rows: RowsLeft, partAt: PartAt): unknown {
  const word = String(json[tag])
  if (word === 'undefined') return undefined
  if (word === 'part') return partAt(String(json.name))
  const odd = oddNumbers.get(word)
  if (odd !== undefined) return odd
  if (Object.hasOwn(rowKinds, word)) return rows.next(word as RowKind, json.length)
  throw new TypeError('a word that no data has')
}
