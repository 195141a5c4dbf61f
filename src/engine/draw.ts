/** Draws of a law from a stream: one value after the other. */

import type { Stream } from './stream.js'
import { unset } from './unset.js'
import { type Inverse, inverse, type Law } from './variates.js'

/**
 * `next` draws and `value` is what came; `draw` does both. What is drawn with every case is read from the field: a number
 * that a call gives back is allocated, unless the compiler happens to dissolve the call.
 */
export abstract class Draw {
  value = unset

  abstract next(): void

  draw(): number {
    this.next()
    return this.value
  }
}

/** Draws of `law`; a law of one value needs no stream. */
export function drawsOf(law: Law, stream: () => Stream): Draw {
  switch (law.law) {
    case 'constant':
      return new Constant(law.value)
    case 'exponential':
      return new Exponential(stream(), law.mean)
    default:
      return new OfQuantile(stream(), inverse(law))
  }
}

class Constant extends Draw {
  constructor(value: number) {
    super()
    this.value = value
  }

  override next(): void {}
}

/** As `OfQuantile` of this law, without the call: the commonest law. */
class Exponential extends Draw {
  constructor(
    private readonly stream: Stream,
    private readonly mean: number,
  ) {
    super()
  }

  override next(): void {
    this.stream.advance()
    this.value = -this.mean * Math.log(1 - this.stream.value)
  }
}

class OfQuantile extends Draw {
  constructor(
    private readonly stream: Stream,
    private readonly quantile: Inverse,
  ) {
    super()
  }

  override next(): void {
    this.stream.advance()
    this.value = this.quantile(this.stream.value)
  }
}
