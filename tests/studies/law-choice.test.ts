/** Laws chosen from simulated logs: how often the true family is the one that is chosen, or among those that are told to be as likely. */
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { choose } from '../../src/statistics/fitting/choose.js'
import { fit as fitOf } from '../../src/statistics/fitting/fit.js'
import { goodness } from '../../src/statistics/fitting/goodness.js'
import { families, type SimpleLaw } from '../../src/statistics/fitting/law.js'
import { drawLog, type Log } from '../../src/statistics/fitting/log.js'
import { seedOf } from '../slow/studies.js'

const laws: SimpleLaw[] = [
  { family: 'exponential', mean: 200 },
  { family: 'weibull', shape: 1.5, scale: 200 },
  { family: 'gamma', shape: 2.5, scale: 80 },
  { family: 'lognormal', location: 5, spread: 0.8 },
]

const random = (purpose: string): Stream => {
  const stream = new Stream('laws', purpose)
  stream.begin(seedOf(0), 0)
  return stream
}

const exact: Omit<Log, 'n'> = { from: 0, clocks: { what: [{ kind: 'exact' }], upTo: [1] }, cuts: null }

describe('the true family is chosen, or told to be as likely, in nine of ten logs or more', () => {
  // the test refuses it in one of twenty, so that 95 % is the most that there can be. Two standard errors of 90 % are off for luck
  it.each(
    laws.flatMap((law) =>
      [
        { n: 20, logs: 200 },
        { n: 50, logs: 200 },
        { n: 200, logs: 100 },
      ].map((size) => ({ family: law.family, law, ...size })),
    ),
  )('$family, $n times', ({ law, n, logs }) => {
    const stream = random(`choice of ${law.family} from ${n}`)
    let [found, told] = [0, 0]
    for (let log = 0; log < logs; log++) {
      const sample = drawLog({ ...exact, n }, law, stream)
      const candidates = families.flatMap((family) => {
        const fitted = fitOf(sample, family)
        return 'why' in fitted ? [] : [{ fit: fitted, goodness: goodness(sample, fitted.law, stream) }]
      })
      const { chosen, alike } = choose(candidates)
      const named = chosen === null ? [] : [chosen, ...alike]
      if (named.some((each) => each.fit.law.family === law.family)) found++
      told += named.length
    }
    const line = `${law.family}, ${n} times: named in ${found} of ${logs}, among ${(told / logs).toFixed(1)}`
    console.log(line)
    expect(found / logs, line).toBeGreaterThan(0.9 - 2 * Math.sqrt(0.09 / logs))
    // naming all would be no choice. An exponential law is one of Weibull's and of gamma's as well, so that three cannot be told apart by any number of times
    if (n === 200) expect(told / logs, line).toBeLessThan(law.family === 'exponential' ? 3.2 : 2.2)
  })
})
