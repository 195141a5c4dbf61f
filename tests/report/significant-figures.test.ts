/** Figures as they are printed: as many as the plus-minus supports, five at most, never told narrower than they are. Worked by hand. */
import { describe, expect, it } from 'vitest'
import { figureText, numberText } from '../../src/report/format.js'

const flat = (text: string) => text.replaceAll('\u2009', ' ')
const figure = (mean: number, low: number, high: number, unit = 'cases') => ({ mean, low, high, unit })

describe('a printed figure', () => {
  it.each([
    // 3 860 ± 16: four figures, as the plus-minus has them
    [3860, 3844, 3876, '3 860 ± 16 cases'],
    // 302 304 ± 239 has six: to tens, and the plus-minus outwards
    [302_304, 302_065, 302_543, '302 300 ± 240 cases'],
    // 1.084 10 ± 0.000 25 has six: to ten thousandths
    [1.0841, 1.08385, 1.08435, '1.0841 ± 0.0003 cases'],
    // 1 234 567 ± 45 123: to thousands
    [1_234_567, 1_189_444, 1_279_690, '1 235 000 ± 45 000 cases'],
    // 123 456.7 (123 446.1 to 123 478.9) has seven: to tens, both ends outwards where they are uneven
    [123_456.7, 123_446.1, 123_478.9, '123 460 (123 440 to 123 480) cases'],
    // 1.083 957 ± 0.000 006 is the same to five figures whatever the luck: once, like a constant
    [1.083957, 1.083951, 1.083963, '1.0840 cases'],
    // shown to be more than nothing: ± 0.4 would not say so, and an end that is not 0 is not told as 0
    [0.3, 0.01, 0.68, '0.3 (0.01 to 0.7) cases'],
    // not shown: 0 lies within
    [0.3, -0.05, 0.65, '0.3 ± 0.4 cases'],
    // the same in all shifts: once, without plus-minus
    [480, 480, 480, '480 cases'],
  ])('%d, %d to %d: %s', (mean, low, high, text) => {
    expect(flat(figureText(figure(mean, low, high), 'metric'))).toBe(text)
  })

  it('stands without its unit where that stands elsewhere', () => {
    expect(numberText(figure(0.15, 0.149, 0.151, 'cases/s'), 'metric')).toBe('9.00 ± 0.06')
  })
})
