/** Named streams of random numbers: one per purpose and shift, so that a change elsewhere shifts no draw here. */
import alea from 'seedrandom/lib/alea.js'
import type { RandomNumbers } from './draw.js'

/** A step of the generator's 32 bits. Half of it moves its [0, 1) onto the open interval (0, 1). */
const step = 2 ** -32
const halfStep = step / 2
const multiplier = 2091639

/** Carry of a stream that has not begun: that of the generator is never negative. */
const notBegun = -1

/** The only way to a generator's seed text. JSON keeps the parts apart whatever they hold. */
export const streamKey = (seed: string, shift: number, owner: string, purpose: string): string =>
  JSON.stringify([seed, shift, owner, purpose])

/**
 * Uniform numbers on the open interval (0, 1), reproducible from study seed, shift, owner and purpose. The library seeds the
 * generator (Alea, by J. Baagoe, 2010); its recurrence, a multiply with carry, is written out here: called through the library,
 * each number would cost four times as much and an allocation. A test holds that the numbers are the library's.
 */
export class Stream implements RandomNumbers {
  /** The last number, 0 and 1 excluded. */
  value = Number.NaN
  private s0 = 0.5
  private s1 = 0.5
  private s2 = 0.5
  private carry = notBegun

  constructor(
    private readonly owner: string,
    private readonly purpose: string,
  ) {}

  /** Starts the stream of one shift. */
  begin(seed: string, shift: number): void {
    const { s0, s1, s2, c } = alea(streamKey(seed, shift, this.owner, this.purpose), { state: true }).state()
    this.s0 = s0
    this.s1 = s1
    this.s2 = s2
    this.carry = c
  }

  /** Draws the next number: `value`. */
  advance(): void {
    if (this.carry === notBegun) refuse()
    const product = multiplier * this.s0 + this.carry * step
    this.carry = product | 0
    this.s0 = this.s1
    this.s1 = this.s2
    this.s2 = product - this.carry
    this.value = this.s2 + halfStep
  }

  /** Draws the next number and gives it back. */
  next(): number {
    this.advance()
    return this.value
  }
}

function refuse(): never {
  throw new Error('a stream was drawn from before its shift began')
}
