/** Building blocks for what documents look like once they are read back: a schema for each key of a type, and none that the type lacks. */
import * as z from 'zod'

/** The type without `readonly`: what is read is a new copy. */
type Own<T> = T extends object ? { -readonly [Key in keyof T]: Own<T[Key]> } : T

/** For each key of `T` a schema of what may stand there; a key that may be missing says so. */
type ShapeOf<T> = {
  [Key in keyof T]-?: Record<never, never> extends Pick<T, Key>
    ? z.ZodExactOptional<z.ZodType<T[Key]>>
    : z.ZodType<T[Key]>
}

/** The same from the other side: the schema of a key takes all that the type lets stand there. */
type TakesAllOf<T, Shape> = {
  [Key in keyof Shape]: Shape[Key] extends z.ZodType<infer Output>
    ? Key extends keyof T
      ? Own<Exclude<T[Key], undefined>> extends Own<Output>
        ? unknown
        : never
      : never
    : never
}

/**
 * The schema of an object of type `T`. The compiler refuses it where a key is missing or unknown, where a schema lets through what the type has not,
 * and where it refuses what the type has. Keys of later versions pass.
 */
export const shapeOf =
  <T extends object>() =>
  <Shape extends ShapeOf<T>>(shape: Shape & TakesAllOf<T, Shape>): z.ZodType<T> =>
    z.looseObject(shape as z.core.$ZodLooseShape) as unknown as z.ZodType<T>

/** A number without units or of any; JSON can write none that is not finite, but may be made to hold one. */
export const number = z.number()
export const numberOrNull = number.nullable()
export const text = z.string()
export const textOrNull = text.nullable()
export const isSo = z.boolean()
/** How many of something. */
export const count = z.number().min(0)
/** Place in a list, from 0. */
export const place = z.int().min(0)
/** A part of a whole, 0 to 1, with what rounding leaves. */
export const part = z
  .number()
  .min(-1e-6)
  .max(1 + 1e-6)

/** A value as a scenario may have it: whatever a file can hold, without numbers that have no end. */
export const anything = z.json() as unknown as z.ZodType<unknown>

/** A text of one of those forms that only its maker can tell apart, such as the name of a measure. */
export const textOf = <T extends string>() => text as unknown as z.ZodType<T>

/** What may be missing. */
export const maybe = z.exactOptional

/** Whether numbers never fall from one to the next. */
export const ascends = (values: readonly number[]): boolean =>
  values.every((value, index) => index === 0 || value >= values[index - 1]!)

/** Numbers in order. */
export const ascending = z.array(number).refine(ascends, 'in order, none below the one before')

/** By name. */
export const byName = <T>(each: z.ZodType<T>) => z.record(text, each)
