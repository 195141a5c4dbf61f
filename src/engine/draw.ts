/** Draws of a law: one value after the other, by inversion of one uniform number each, so that streams stay in step. */
import { unset } from './unset.js'

/** Uniform numbers on the open interval (0, 1): `advance` draws the next one, `value` is what came. */
export interface RandomNumbers {
  readonly value: number
  advance(): void
}

/**
 * `next` draws and `value` is what came; `draw` does both. What is drawn with every case is read from the field: a number
 * that a call takes or gives back is allocated, unless the compiler happens to dissolve the call.
 */
export abstract class Draw {
  value = unset

  abstract next(): void

  draw(): number {
    this.next()
    return this.value
  }
}
