/** The line of two exponential stations, the first one saturated, that the slow checks share, and what is exactly known of it. */
import { birthDeath, type Chain } from './markov.js'

/**
 * Length of a shift, s, some 150 services. Counts of so many are all but normal: a Poisson count of them has skewness
 * 0.08, and shifts of the cases held 0.2 (by the chain), which costs less coverage than can be seen here.
 */
export const shiftLength = 200

/** Cases that have room between the stations. */
export const room = 2

/**
 * Cases past the first station, with `between` that have room before the second: at most those, one in work and one that is done
 * and stands on the first, which then works no more. Both work at rate 1.
 */
export const twoStations = (between: number): Chain => birthDeath(1, 1, between + 2)

/** 1 while the second station works, by the cases past the first. */
export const isWorking = (past: number): number => (past > 0 ? 1 : 0)
/** Cases at the second station: what is done but stands on the first is not yet there. */
export const held = (past: number): number => Math.min(past, room + 1)

/** Output of the line in its stride, as a share of that of one station alone: Hunt 1956, equal rates. */
export const hunt = (between: number): number => (between + 2) / (between + 3)
