/** Schemas of documents cannot drift from their types: the compiler refuses what lacks a key, has one too many, or says of one more or less than the type. */
import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import { ascending, maybe, number, numberOrNull, part, shapeOf, text } from '../../src/catalogue/shape.js'

interface Told {
  name: string
  value: number | null
  more?: string
}
const made = shapeOf<Told>()

describe('a shape', () => {
  it('is that of its type, or does not compile', () => {
    const shape: z.ZodType<Told> = made({ name: text, value: numberOrNull, more: maybe(text) })
    expect(shape.parse({ name: 'a', value: null })).toEqual({ name: 'a', value: null })
    // @ts-expect-error a key is missing
    made({ name: text, value: numberOrNull })
    // @ts-expect-error a key that the type lacks
    made({ name: text, value: numberOrNull, more: maybe(text), other: text })
    // @ts-expect-error what may be missing must be allowed to be
    made({ name: text, value: numberOrNull, more: text })
    // @ts-expect-error null may stand there, and would be refused
    made({ name: text, value: number, more: maybe(text) })
    // @ts-expect-error null may not stand there, and would be let through
    made({ name: text.nullable(), value: numberOrNull, more: maybe(text) })
  })

  it('lets keys of later versions pass, and holds numbers to what they can be', () => {
    const shape = made({ name: text, value: numberOrNull, more: maybe(text) })
    expect(shape.safeParse({ name: 'a', value: 1, later: 2 }).success).toBe(true)
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, '1', undefined])
      expect(shape.safeParse({ name: 'a', value }).success, String(value)).toBe(false)
    expect(ascending.safeParse([0, 1, 1, 2]).success).toBe(true)
    expect(ascending.safeParse([0, 2, 1]).success).toBe(false)
    expect(part.safeParse(1.1).success).toBe(false)
    expect(z.array(part).safeParse([0, 1]).success).toBe(true)
  })
})
