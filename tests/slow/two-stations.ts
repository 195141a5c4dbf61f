/** The line of two exponential stations, the first one saturated, that the slow checks share, and what is exactly known of it. */
import { birthDeath, type Chain } from './markov.js'

/** Cases that have room between the stations. */
export const room = 2

/**
 * Cases past the first station, with `between` that have room before the second: at most those, one in work and one that is done
 * and stands on the first, which then works no more. Both work at rate 1.
 */
export const twoStations = (between: number): Chain => birthDeath(1, 1, between + 2)

/** Output of the line in its stride, as a share of that of one station alone: Hunt 1956, equal rates. */
export const hunt = (between: number): number => (between + 2) / (between + 3)
