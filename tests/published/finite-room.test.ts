/** A waiting room with an end: cases that find it full are turned away. */
import { describe, it } from 'vitest'
import { expectAround, simulate } from './run.js'

/** `places` is the number of cases that fit in all, in work and waiting: the K of the textbooks. */
const finite = (lambda: number, time: string, servers: number, places: number, hours: number) =>
  simulate({
    arrivals: `{street: {time-between: {exponential: {mean: ${1 / lambda} s}}, when-full: turn-away}}`,
    line: `{counter: {type: station, time: ${time}, servers: ${servers}, waiting-room: ${places - servers}}}`,
    // such a queue forgets its empty start within some K^2 services: nothing against these hours
    length: `${hours} h`,
    shifts: 12,
  })

describe('M/M/1/K and M/M/c/K', () => {
  // p_n by balance, the loss is p_K, and by PASTA (Wolff, Operations Research 30 (1982) 223-231) it is also
  // the share of time full. Kleinrock, Queueing Systems, vol. 1 (1975), ch. 3 (from memory).
  it.each([
    // Rios Insua et al. (2004), ex. 10.7 and 10.12, by way of the tests of an R package of queueing formulas
    { lambda: 5, mu: 5.714, servers: 1, places: 15, loss: 0.01913443, held: 4.858888, wait: 0.8157259 },
    { lambda: 3, mu: 0.25, servers: 15, places: 15, loss: 0.08572925, held: 10.97125, wait: null },
    // by way of the tests of an Octave package of queueing formulas
    { lambda: 50, mu: 10, servers: 4, places: 6, loss: 0.293543, held: null, wait: null },
    { lambda: 3, mu: 2, servers: 2, places: 5, loss: 0.08511384, held: 2.005954, wait: 0.2308576 },
    // lambda = mu: every p_n is 1/11
    { lambda: 1, mu: 1, servers: 1, places: 10, loss: 1 / 11, held: 5, wait: null },
    // p_K = (1 - rho) rho^K / (1 - rho^(K + 1))
    { lambda: 0.9, mu: 1, servers: 1, places: 5, loss: 0.1260226, held: 2.194782, wait: null },
    { lambda: 0.9, mu: 1, servers: 1, places: 10, loss: 0.05081373, held: 3.969441, wait: null },
  ])('lambda $lambda, mu $mu, $servers servers, $places places', async (given) => {
    const { lambda, mu, servers, places, loss, held, wait } = given
    const result = await finite(lambda, `{exponential: {mean: ${1 / mu} s}}`, servers, places, 60 / lambda)
    const { measures } = result.equipment.counter!
    expectAround(result.arrivals.street!['turned-away'], loss, 0.05)
    expectAround(measures['share-full'], loss, 0.05)
    if (held !== null) expectAround(measures.held, held, 0.02)
    if (wait !== null) expectAround(measures.wait, wait, 0.02)
    // what is not turned away leaves
    expectAround(result.measures.throughput, lambda * (1 - loss), 0.01)
  })
})

describe('M/D/1/K: constant service, a finite room', () => {
  // computed exactly from the published model: the chain at departures, loss = 1 - 1 / (rho + pi_0);
  // Gross and Harris, Fundamentals of Queueing Theory, M/G/1/K (from memory)
  it.each([
    // one place: Erlang's loss formula, rho / (1 + rho), whatever the law of service
    { rho: 0.8, places: 1, loss: 0.4444444, held: 0.4444444, hours: 25 },
    { rho: 0.8, places: 2, loss: 0.1995703, held: 0.8399141, hours: 25 },
    { rho: 0.8, places: 5, loss: 0.0352904, held: 1.705349, hours: 50 },
    { rho: 0.9, places: 5, loss: null, held: 2.1247, hours: 25 },
    { rho: 0.5, places: 2, loss: 0.09627448, held: null, hours: 25 },
    { rho: 0.5, places: 3, loss: 0.02724216, held: null, hours: 50 },
    { rho: 1, places: 2, loss: 0.2689414, held: null, hours: 25 },
    { rho: 1, places: 10, loss: 0.05084746, held: null, hours: 50 },
    { rho: 1.2, places: 5, loss: 0.1991467, held: null, hours: 25 },
  ])('rho $rho, $places places', async ({ rho, places, loss, held, hours }) => {
    const result = await finite(rho, '1 s', 1, places, hours)
    if (loss !== null) {
      expectAround(result.arrivals.street!['turned-away'], loss, 0.03)
      expectAround(result.equipment.counter!.measures['share-full'], loss, 0.03)
      expectAround(result.measures.throughput, rho * (1 - loss), 0.01)
    }
    if (held !== null) expectAround(result.equipment.counter!.measures.held, held, 0.01)
  })

  it('one place: the loss depends on the mean of the service only', async () => {
    // Erlang's loss formula is insensitive to the law of service; Sevast'yanov (1957) (from memory)
    for (const time of ['{gamma: {mean: 1 s, cv: 2}}', '{uniform: {low: 0 s, high: 2 s}}']) {
      const result = await finite(0.8, time, 1, 1, 25)
      expectAround(result.arrivals.street!['turned-away'], 0.4444444, 0.01)
    }
  })
})
