/** Figures as people read them: no more digits than the interval supports. */
import { describe, expect, it } from 'vitest'
import type { Figure } from '../../src/catalogue/figure.js'
import { durationText, figureText, grouped } from '../../src/report/format.js'

const figure = (mean: number | null, half: number | null, unit = 's'): Figure => ({
  mean,
  low: mean === null || half === null ? null : mean - half,
  high: mean === null || half === null ? null : mean + half,
  sd: 1,
  n: 10,
  unit,
  label: 'x',
})

describe('figure', () => {
  it.each([
    [figure(79.3583, 0.519), '79.4 ± 0.5 s'],
    [figure(79.3583, 1.24), '79.4 ± 1.2 s'],
    [figure(0.2381, 0.000635, 'cases/s'), '14.29 ± 0.04 cases/min'],
    [figure(6000.13, 16.02, 'cases'), '6\u2009000 ± 16 cases'],
    [figure(1_234_567, 45_000, 'm'), '1\u2009235\u2009000 ± 45\u2009000 m'],
    [figure(0.0449, 0.0023, 'share'), '4.49 ± 0.23 %'],
    [figure(0.0449, 0.0051, 'share'), '4.5 ± 0.5 %'],
    [figure(1.08, 0, 'm/case'), '1.08 m/case'],
    [figure(0, 0, 'count'), '0'],
    [figure(4, 0, 'count'), '4'],
    [figure(240, 0), '240 s'],
    [figure(-0.0001, 0.5), '0.0 ± 0.5 s'],
    [figure(1.5, null), '–'],
    [figure(null, null), '–'],
  ])('%o is %s', (given, text) => {
    expect(figureText(given, 'metric')).toBe(text)
  })

  it('with an uneven interval says from where to where', () => {
    expect(figureText({ ...figure(0.95, 0, 'share'), low: 0.91, high: 0.974 }, 'metric')).toBe(
      '95 (91 to 97) %',
    )
  })

  it('in feet and pounds: 100 m are 328.1 ft, 10 kg are 22.05 lb (NIST SP 811)', () => {
    expect(figureText(figure(100, 0.3, 'm'), 'us')).toBe('328.1 ± 1.0 ft')
    expect(figureText(figure(10, 0.01, 'kg'), 'us')).toBe('22.046 ± 0.022 lb')
  })
})

it('numbers are grouped in threes', () => {
  expect([999, 1000, 1234567.891].map((value) => grouped(value, 1))).toEqual([
    '999.0',
    '1\u2009000.0',
    '1\u2009234\u2009567.9',
  ])
})

it('durations are in the words of a shift', () => {
  expect([90, 1800, 28_800, 27_000].map(durationText)).toEqual(['90 s', '30 min', '8 h', '7 h 30 min'])
})
