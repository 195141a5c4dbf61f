/** The queue of one server with exponential times that the slow checks share, and what is exactly known of it. */
import { birthDeath, type Chain } from './markov.js'
import { scenarioOf } from './studies.js'

/** Arrivals and services at random, 1/s. */
export const arrivalRate = 0.5
export const serviceRate = 1

/** Beyond 60 in the queue lies less than 1e-18 of the time. */
export const queueChain: Chain = birthDeath(arrivalRate, serviceRate, 60)
export const inQueue = (state: number): number => state
export const isServing = (state: number): number => (state > 0 ? 1 : 0)

/**
 * Length of a shift, s. The t interval falls short of its confidence by the skewness of a shift's mean: with skewness g
 * and excess k of one shift, n shifts at 95 % cover about 0.95 + 0.229 (0.07 k - 1.08 g^2) / n (Edgeworth expansion of the
 * t statistic: Hall, The Bootstrap and Edgeworth Expansion, 1992, sec. 2.6, from memory). That it is skewness which costs
 * coverage is Law's point too: Simulation Modeling and Analysis, ch. 9 (from memory). The chain gives g and k exactly: of
 * 400 s 1.26 and 3.7, of 1000 s 0.81 and 1.5. For 30 shifts to fall short by half a point, which is the standard
 * error of the coverage, a shift must last 1000 s.
 */
export const shiftLength = 1000

/** The queue as a scenario; `length` in s, `shift` other keys of the shift. */
export const queueScenario = (length: number, shift = '') =>
  scenarioOf(
    `{street: {time-between: {exponential: {mean: ${1 / arrivalRate} s}}, when-full: queue}}`,
    `{desk: {type: station, time: {exponential: {mean: ${1 / serviceRate} s}}, waiting-room: unlimited}}`,
    `${length} s`,
    shift,
  )
