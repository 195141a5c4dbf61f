/** Bytes that were altered on their way: bits, bytes, pieces left out, doubled, moved, or another message in their place. */
import { Stream } from '../../src/engine/stream.js'

export class Mutants {
  private readonly stream: Stream

  constructor(seed: string) {
    this.stream = new Stream('queue', 'mutants')
    this.stream.begin(seed, 1)
  }

  /** A whole number below `count`. */
  below(count: number): number {
    return Math.floor(this.stream.next() * count)
  }

  /** `bytes` altered; `other` stands in for them now and then. */
  of(bytes: Uint8Array, other: Uint8Array): Uint8Array {
    const copy = Uint8Array.from(bytes)
    const at = this.below(copy.length)
    const to = at + this.below(copy.length - at)
    switch (this.below(7)) {
      case 0:
        copy[at]! ^= 1 << this.below(8)
        return copy
      case 1:
        copy[at] = this.below(256)
        return copy
      case 2:
        return copy.subarray(0, at)
      case 3:
        return Uint8Array.from([...copy.subarray(0, at), ...copy.subarray(to)])
      case 4:
        return Uint8Array.from([...copy.subarray(0, to), ...copy.subarray(at)])
      case 5:
        return Uint8Array.from({ length: this.below(200) }, () => this.below(256))
      default:
        return other
    }
  }
}
