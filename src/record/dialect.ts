/** How a log's file is written: the sign that parts its cells, and its encoding, found from what it holds. */

export type Delimiter = ',' | ';' | '\t'
export type Encoding = 'utf-8' | 'windows-1252' | 'utf-16le' | 'utf-16be'

export interface Dialect {
  delimiter: Delimiter
  encoding: Encoding
}

/** Takes a log's file as it is read. */
export interface LogTaker {
  header(names: readonly string[]): void
  /** Takes the cells of a row that is not empty; `row` counts as a spreadsheet does, the header being 1. False: no more of them. */
  row(cells: readonly string[], row: number): boolean
  /** How it was written, once all of it that was asked for is read. */
  written(dialect: Dialect): void
}

/** Reads a CSV file beside the record part by part, however it is written; throws with a plain message when it cannot. */
export type ReadLog = (file: string, taker: LogTaker) => void

/** The sign that parts the cells of a header line: the one that stands there most often outside quotes. */
export function delimiterOf(text: string): Delimiter {
  const line = /^[\r\n]*([^\r\n]*)/.exec(text.slice(0, 100_000))![1]!.replace(/"[^"]*"?/g, '')
  const count = (sign: Delimiter) => line.split(sign).length - 1
  return ([';', '\t', ','] as const).reduce((most, sign) => (count(sign) > count(most) ? sign : most), ',')
}

const marks: readonly { bytes: readonly number[]; encoding: Encoding }[] = [
  { bytes: [0xff, 0xfe], encoding: 'utf-16le' },
  { bytes: [0xfe, 0xff], encoding: 'utf-16be' },
]

const lineFeed = 0x0a
const carriageReturn = 0x0d
/** A line longer than this is none of a log. */
const longestLine = 1_000_000

const noText = 'it contains bytes that are not text: perhaps it is a workbook; save it as CSV'

/**
 * The text of a file, part by part. A mark at its beginning tells UTF-16; else it is UTF-8 until a line is none, and Windows-1252, which
 * holds Latin-1, from there on. `decode` throws with a plain message where it is no text.
 */
export class Decoding {
  encoding: Encoding = 'utf-8'
  /** Bytes of a line that is not whole. */
  private rest = new Uint8Array(0)
  private hasBegun = false
  private isBeyondAscii = false
  private readonly strict = new TextDecoder('utf-8', { fatal: true })
  private loose = new TextDecoder('utf-8')

  /** The text of the whole lines that are known after `part`. */
  decode(part: Uint8Array): string {
    if (!this.hasBegun) this.begin(part)
    if (this.isWide) return this.checked(this.loose.decode(part, { stream: true }))
    const whole = joined(this.rest, part)
    const end = Math.max(whole.lastIndexOf(lineFeed), whole.lastIndexOf(carriageReturn)) + 1
    if (whole.length - end > longestLine)
      throw new Error('it contains a line of more than a million characters: it is not a table')
    this.rest = whole.slice(end)
    return this.lines(whole.subarray(0, end))
  }

  /** What is left at the end. */
  end(): string {
    return this.isWide ? this.checked(this.loose.decode()) : this.lines(this.rest)
  }

  private get isWide(): boolean {
    return this.encoding === 'utf-16le' || this.encoding === 'utf-16be'
  }

  private begin(part: Uint8Array): void {
    this.hasBegun = true
    const mark = marks.find(({ bytes }) => bytes.every((byte, index) => part[index] === byte))
    if (mark) this.use(mark.encoding)
  }

  private use(encoding: Encoding): void {
    this.encoding = encoding
    this.loose = new TextDecoder(encoding)
  }

  private lines(bytes: Uint8Array): string {
    if (this.encoding === 'windows-1252') return this.checked(this.loose.decode(bytes))
    try {
      const text = this.strict.decode(bytes)
      this.isBeyondAscii ||= text.length < bytes.length
      return this.checked(text)
    } catch (error) {
      if (!(error instanceof TypeError)) throw error
      // what was UTF-8 so far is not read in another way because of one broken line: that shows its broken letters
      if (!this.isBeyondAscii) this.use('windows-1252')
      return this.checked(this.loose.decode(bytes))
    }
  }

  private checked(text: string): string {
    if (text.includes('\u0000')) throw new Error(noText)
    return text
  }
}

function joined(a: Uint8Array, b: Uint8Array): Uint8Array {
  if (a.length === 0) return b
  const all = new Uint8Array(a.length + b.length)
  all.set(a)
  all.set(b, a.length)
  return all
}
