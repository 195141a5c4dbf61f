/** Figures of the first screen: as many as the plus-minus supports, five at most, and never told narrower than they are. Worked by hand. */
import { describe, expect, it } from 'vitest'
import { shortFigure, shortNumber } from '../../src/report/few-figures.js'

const flat = (text: string) => text.replaceAll('\u2009', ' ')
const figure = (mean: number, low: number, high: number, unit = 'cases') => ({ mean, low, high, unit })

describe('a figure of the first screen', () => {
  it.each([
    // 3 860 ± 16: four figures, as the plus-minus has them
    [3860, 3844, 3876, '3 860 ± 16 cases'],
    // 302 304 ± 239 has six: to tens, and the plus-minus outwards
    [302_304, 302_065, 302_543, '302 300 ± 240 cases'],
    // 1.084 10 ± 0.000 25 has six: to ten thousandths
    [1.0841, 1.08385, 1.08435, '1.0841 ± 0.0003 cases'],
    // both ends outwards where they are uneven
    [123_456.7, 123_456.1, 123_458.9, '123 460 (123 450 to 123 460) cases'],
    // the same in all shifts: once, without plus-minus
    [480, 480, 480, '480 cases'],
  ])('%d, %d to %d: %s', (mean, low, high, text) => {
    expect(flat(shortFigure(figure(mean, low, high), 'metric'))).toBe(text)
  })

  it('stands without its unit where that stands elsewhere', () => {
    expect(shortNumber(figure(0.15, 0.149, 0.151, 'cases/s'), 'metric')).toBe('9.00 ± 0.06')
  })
})
