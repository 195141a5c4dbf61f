/** Times as a log writes them, read by a pattern of Unicode letters or as ISO 8601. The library for dates is the judge; what it read once is remembered. */
import { DateTime } from 'luxon'

/** The word for times of ISO 8601: `2026-01-31T06:00`, `2026-01-31 06:00:12`, with or without an offset. */
export const iso = 'iso'

// names of months in one language whatever the machine speaks
const english = { locale: 'en-US', zone: 'utc' } as const

/** Letters of a pattern outside quotes, run by run. */
const tokensOf = (pattern: string): string[] => pattern.replace(/'[^']*'/g, ' ').match(/([A-Za-z])\1*/g) ?? []

const known = /^(?:yy|yyyy|M|MM|MMM|MMMM|d|dd|H|HH|h|hh|a|m|mm|s|ss|S|SSS|u|Z|ZZ|ZZZ)$/

/** What is wrong with a pattern, and the nearest mend; null where nothing is. */
export function patternFault(pattern: string): { rule: string; fix: string } | null {
  if (pattern === iso) return null
  const tokens = tokensOf(pattern)
  const has = (letters: RegExp) => tokens.some((token) => letters.test(token))
  const wrong = tokens.find((token) => !known.test(token))
  const rule =
    'a pattern has year, month, day, hour and minute: yyyy MM dd HH mm, and ss where there are seconds'
  if (wrong === undefined && has(/^y/) && has(/^M/) && has(/^d/) && has(/^m/)) {
    if (has(/^H/) || (has(/^h/) && has(/^a/))) return null
    if (has(/^h/))
      return {
        rule: '`h` counts to 12 and needs `a` for am and pm',
        fix: `did you mean \`${pattern.replace(/h/g, 'H')}\`?`,
      }
  }
  return {
    rule: wrong === undefined ? rule : `\`${wrong.slice(0, 20)}\` is not a part of a time; ${rule}`,
    fix: mended(pattern),
  }
}

/** The pattern as it was meant, where only capitals are wrong. */
function mended(pattern: string): string {
  const [date = '', time = ''] = pattern.split(/[ T](?=[^ T]*$)/)
  const lower = `${date.replace(/Y/g, 'y').replace(/D/g, 'd').replace(/m/g, 'M')} ${time.replace(/h/g, 'H').replace(/M/g, 'm').replace(/S/g, 's')}`
  const isMended = lower !== pattern && date !== '' && patternFault(lower) === null
  return isMended ? `did you mean \`${lower}\`?` : 'write it like `dd.MM.yyyy HH:mm`, or `iso`'
}

/** Patterns that logs are often written in: named where rows do not fit. */
const usual = [
  iso,
  ...[
    'dd.MM.yyyy',
    'dd.MM.yy',
    'd.M.yyyy',
    'dd/MM/yyyy',
    'MM/dd/yyyy',
    'M/d/yyyy',
    'yyyy/MM/dd',
    'dd-MM-yyyy',
  ].flatMap((date) =>
    ['HH:mm', 'HH:mm:ss', 'H:mm', 'H:mm:ss', 'hh:mm a', 'h:mm a'].map((time) => `${date} ${time}`),
  ),
]

/** Usual patterns that fit some of `texts`, and how many of them; what fits most comes first. */
export const patternsThatFit = (texts: readonly string[]): { pattern: string; count: number }[] =>
  (texts.length === 0 ? [] : usual)
    .map((pattern) => {
      const reader = new TimeReader(pattern)
      return { pattern, count: texts.filter((text) => !Number.isNaN(reader.read(text))).length }
    })
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.count - a.count)

const isoShape =
  /^(\d{4}-\d{2}-\d{2})[T ](\d{2}:\d{2}(?::\d{2}(?:[.,]\d{1,9})?)?)(?: ?(Z|[+-]\d{2}(?::?\d{2})?))?$/

/** More different texts than this are forgotten, and read again where they come back. */
const mostKept = 100_000

type WhyNoTime = 'unfit' | 'no-such-date'

/** What is known of texts that were read: s, or why they are none. */
type Kept = Map<string, number | WhyNoTime>

/** Date and time of day of a pattern and what parts them, where one sign does so; what is read of each is remembered. */
const parted = /^([^Hhmsa ]+)( |'T')([^yMd]+)$/

/** Reads the times of a file; all its columns share one. */
export class TimeReader {
  /** Why the last text was no time: it does not fit the pattern, or there is no such day or hour. */
  why: WhyNoTime = 'unfit'
  /** The last text brought its offset from UTC: it needs no zone. */
  isAbsolute: boolean
  /** Grain of the texts that were read, s; 0: finer than a second. */
  grain: number
  private readonly dates: Kept = new Map()
  private readonly hours: Kept = new Map()
  private readonly ask: (text: string) => number

  constructor(readonly pattern: string) {
    this.isAbsolute = tokensOf(pattern).some((token) => token.startsWith('Z'))
    this.grain = pattern === iso ? 60 : grainOf(pattern)
    const parts = this.isAbsolute ? null : parted.exec(pattern)
    if (pattern === iso) this.ask = (text) => this.ofIso(text)
    else if (parts) {
      const [, date, between, time] = parts as unknown as [string, string, string, string]
      const [ofDate, ofTime] = [byPattern(date), byPattern(`yyyy-MM-dd ${time}`)]
      const sign = between.replaceAll("'", '')
      this.ask = (text) => {
        const cut = text.indexOf(sign)
        if (cut < 0) return this.no('unfit')
        const day = this.remembered(this.dates, text.slice(0, cut), ofDate)
        return day + this.remembered(this.hours, text.slice(cut + 1), (hour) => ofTime(`1970-01-01 ${hour}`))
      }
    } else {
      const whole = byPattern(pattern)
      this.ask = (text) => this.remembered(this.dates, text, whole)
    }
  }

  /** s since 1970: in UTC where the text is absolute, else as a clock of that place shows it. NaN: no time, see `why`. */
  read(text: string): number {
    this.why = 'unfit'
    return text.length > 100 ? Number.NaN : this.ask(text)
  }

  private no(why: WhyNoTime): number {
    this.why = why
    return Number.NaN
  }

  private ofIso(text: string): number {
    const [, date, hour, offset] = isoShape.exec(text) ?? []
    if (date === undefined || hour === undefined) return this.no('unfit')
    this.isAbsolute = offset !== undefined
    const grain = hour.length > 8 ? 0 : hour.length > 5 ? 1 : 60
    this.grain = Math.min(this.grain, grain)
    const day = this.remembered(this.dates, date, byIso)
    const rest = `1970-01-01T${hour.replace(',', '.')}${offset ?? ''}`
    return day + this.remembered(this.hours, rest, byIso)
  }

  private remembered(kept: Kept, text: string, ask: (text: string) => number | WhyNoTime): number {
    let known = kept.get(text)
    if (known === undefined) {
      known = ask(text)
      if (kept.size >= mostKept) kept.clear()
      kept.set(text, known)
    }
    return typeof known === 'number' ? known : this.no(known)
  }
}

function grainOf(pattern: string): number {
  const tokens = tokensOf(pattern)
  if (tokens.some((token) => /^[Su]/.test(token))) return 0
  return tokens.some((token) => token.startsWith('s')) ? 1 : 60
}

const toSeconds = (time: DateTime): number | WhyNoTime => {
  if (time.isValid) return time.toMillis() / 1000
  return time.invalidReason === 'unit out of range' ? 'no-such-date' : 'unfit'
}

const byIso = (text: string) => toSeconds(DateTime.fromISO(text, { zone: 'utc' }))

function byPattern(pattern: string): (text: string) => number | WhyNoTime {
  const parser = DateTime.buildFormatParser(pattern, english)
  return (text) => toSeconds(DateTime.fromFormatParser(text, parser, english))
}
