/** Times of a log by their pattern, and the clock of a place with its changes. */
import { describe, expect, it } from 'vitest'
import { patternFault, patternsThatFit, TimeReader } from '../../src/record/time-pattern.js'
import { LocalClock, zoneFault } from '../../src/record/zone.js'

/** s since 1970 of a time of UTC: the calendar of the language, which the code under test does not use. */
const utc = (text: string) => Date.parse(`${text}Z`) / 1000

const fitting = (texts: string[]) => patternsThatFit(texts).map(({ pattern }) => pattern)

describe('a pattern', () => {
  it.each([
    ['dd.MM.yyyy HH:mm', '31.01.2026 06:05', '2026-01-31T06:05:00', 60],
    ['dd.MM.yyyy HH:mm:ss', '31.01.2026 06:05:07', '2026-01-31T06:05:07', 1],
    ['M/d/yyyy h:mm a', '1/31/2026 6:05 PM', '2026-01-31T18:05:00', 60],
    ["yyyy-MM-dd'T'HH:mm:ss.SSS", '2026-01-31T06:05:07.250', '2026-01-31T06:05:07.250', 0],
    ['dd MMM yyyy HH:mm', '31 Jan 2026 06:05', '2026-01-31T06:05:00', 60],
    ['HH:mm dd.MM.yyyy', '06:05 31.01.2026', '2026-01-31T06:05:00', 60],
    ['iso', '2026-01-31 06:05', '2026-01-31T06:05:00', 60],
    ['iso', '2026-01-31T06:05:07', '2026-01-31T06:05:07', 1],
    ['iso', '2026-01-31T06:05:07,25', '2026-01-31T06:05:07.250', 0],
    // the end of a day
    ['dd.MM.yyyy HH:mm', '31.01.2026 24:00', '2026-02-01T00:00:00', 60],
  ])('%s reads %s, and knows its grain', (pattern, text, expected, grain) => {
    const reader = new TimeReader(pattern)
    for (const _ of ['once', 'again']) expect(reader.read(text)).toBe(utc(expected))
    expect(reader.grain).toBe(grain)
    expect(reader.isAbsolute).toBe(false)
  })

  it('with an offset is UTC, and says so', () => {
    const reader = new TimeReader('iso')
    expect(reader.read('2026-01-31T06:05+01:00')).toBe(utc('2026-01-31T05:05'))
    expect(reader.isAbsolute).toBe(true)
    expect(reader.read('2026-01-31T23:30-0230')).toBe(utc('2026-02-01T02:00'))
    expect(reader.read('2026-01-31T06:05')).toBe(utc('2026-01-31T06:05'))
    expect(reader.isAbsolute).toBe(false)
    const other = new TimeReader('yyyy-MM-dd HH:mm ZZ')
    expect(other.read('2026-01-31 06:05 +01:00')).toBe(utc('2026-01-31T05:05'))
    expect(other.isAbsolute).toBe(true)
  })

  it.each([
    ['dd.MM.yyyy HH:mm', '31.02.2026 06:05', 'no-such-date'],
    ['dd.MM.yyyy HH:mm', '30.01.2026 06:65', 'no-such-date'],
    ['dd.MM.yyyy HH:mm', '30.01.2026 25:00', 'no-such-date'],
    ['dd.MM.yyyy HH:mm', '2026-01-31 06:05', 'unfit'],
    ['dd.MM.yyyy HH:mm', '31.01.2026', 'unfit'],
    ['dd.MM.yyyy HH:mm', '', 'unfit'],
    ['dd.MM.yyyy HH:mm', ' '.repeat(10_000), 'unfit'],
    ['dd.MM.yyyy HH:mm', '__proto__ constructor', 'unfit'],
    ['iso', '2026-02-29 06:05', 'no-such-date'],
    ['iso', '06:05', 'unfit'],
    ['iso', '2026-W05', 'unfit'],
  ])('%s does not read %s', (pattern, text, why) => {
    const reader = new TimeReader(pattern)
    for (const _ of ['once', 'again']) {
      expect(reader.read(text)).toBeNaN()
      expect(reader.why).toBe(why)
    }
  })

  it('that is none gets the one that was meant', () => {
    expect(patternFault('dd.MM.yyyy HH:mm')).toBeNull()
    expect(patternFault('iso')).toBeNull()
    expect(patternFault('DD.MM.YYYY HH:mm')!.fix).toContain('`dd.MM.yyyy HH:mm`')
    expect(patternFault('dd.mm.yyyy hh:mm')!.fix).toContain('`dd.MM.yyyy HH:mm`')
    expect(patternFault('dd.MM.yyyy hh:mm')!.fix).toContain('HH:mm')
    expect(patternFault('HH:mm')!.fix).toContain('dd.MM.yyyy HH:mm')
    expect(patternFault('x'.repeat(10_000))!.rule.length).toBeLessThan(300)
  })

  it('that would fit is named, and more than one where days and months cannot be told apart', () => {
    expect(fitting(['2026-01-31 06:05'])).toEqual(['iso'])
    expect(fitting(['31/01/2026 06:05'])).toEqual(['dd/MM/yyyy HH:mm', 'dd/MM/yyyy H:mm'])
    expect(fitting(['02/01/2026 06:05'])).toContain('dd/MM/yyyy HH:mm')
    expect(fitting(['02/01/2026 06:05'])).toContain('MM/dd/yyyy HH:mm')
    expect(fitting(['tomorrow'])).toEqual([])
  })
})

describe('the clock of a place', () => {
  const berlin = new LocalClock('Europe/Berlin')

  it('shows winter and summer', () => {
    expect(berlin.meant(utc('2026-01-31T06:00'))).toEqual([utc('2026-01-31T05:00')])
    expect(berlin.meant(utc('2026-07-31T06:00'))).toEqual([utc('2026-07-31T04:00')])
    expect(berlin.local(utc('2026-07-31T23:00'))).toBe(utc('2026-08-01T01:00'))
    expect(berlin.day(utc('2026-07-31T23:00'))).toBe('2026-08-01')
    expect(berlin.hour(utc('2026-07-31T23:00'))).toBe(1)
  })

  // 29 March 2026, 02:00 becomes 03:00; 25 October 2026, 03:00 becomes 02:00 (Directive 2000/84/EC: 01:00 UTC on the last Sunday)
  it('leaves out an hour in spring', () => {
    expect(berlin.meant(utc('2026-03-29T01:59'))).toEqual([utc('2026-03-29T00:59')])
    expect(berlin.meant(utc('2026-03-29T02:00'))).toEqual([])
    expect(berlin.meant(utc('2026-03-29T02:59'))).toEqual([])
    expect(berlin.meant(utc('2026-03-29T03:00'))).toEqual([utc('2026-03-29T01:00')])
  })

  it('shows an hour twice in autumn', () => {
    expect(berlin.meant(utc('2026-10-25T01:59'))).toEqual([utc('2026-10-24T23:59')])
    expect(berlin.meant(utc('2026-10-25T02:30'))).toEqual([utc('2026-10-25T00:30'), utc('2026-10-25T01:30')])
    expect(berlin.meant(utc('2026-10-25T03:00'))).toEqual([utc('2026-10-25T02:00')])
    expect(berlin.hour(utc('2026-10-25T00:30'))).toBe(2)
    expect(berlin.hour(utc('2026-10-25T01:30'))).toBe(2)
  })

  it('that has no zone shows what is written', () => {
    expect(new LocalClock(null).meant(utc('2026-03-29T02:30'))).toEqual([utc('2026-03-29T02:30')])
  })

  it('with half an hour', () => {
    const lordHowe = new LocalClock('Australia/Lord_Howe')
    // half an hour forward on 4 October 2026, 02:00
    expect(lordHowe.meant(utc('2026-10-04T02:15'))).toEqual([])
    expect(lordHowe.meant(utc('2026-10-04T02:30'))).toEqual([utc('2026-10-03T15:30')])
  })

  it('of no place gets the nearest name', () => {
    expect(zoneFault('Europe/Berlin')).toBeNull()
    expect(zoneFault('Europa/Berlin')!.fix).toContain('Europe/Berlin')
    expect(zoneFault('CET summer')!.fix).toContain('Europe/Berlin')
  })
})
