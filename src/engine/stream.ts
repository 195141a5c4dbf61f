/** Named streams of random numbers: one per purpose and shift, so that a change elsewhere shifts no draw here. */
import alea from 'seedrandom/lib/alea.js'

/** Half a step of the generator's 32 bits: moves its [0, 1) onto the open interval (0, 1). */
const halfStep = 2 ** -33

/** The only way to a generator's seed text. JSON keeps the parts apart whatever they hold. */
export const streamKey = (seed: string, shift: number, owner: string, purpose: string): string =>
  JSON.stringify([seed, shift, owner, purpose])

/** Uniform numbers on the open interval (0, 1), reproducible from study seed, shift, owner and purpose. */
export class Stream {
  private generator: () => number = unseeded

  constructor(
    private readonly owner: string,
    private readonly purpose: string,
  ) {}

  /** Starts the stream of one shift. */
  begin(seed: string, shift: number): void {
    this.generator = alea(streamKey(seed, shift, this.owner, this.purpose))
  }

  /** The next number, 0 and 1 excluded. */
  next(): number {
    return this.generator() + halfStep
  }
}

function unseeded(): number {
  throw new Error('a stream was drawn from before its shift began')
}
