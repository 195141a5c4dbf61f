/** How often the test of fit refuses the true family where times are rounded, the short ones missing, and some cut off. */
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { fit as fitOf } from '../../src/statistics/fitting/fit.js'
import { goodness } from '../../src/statistics/fitting/goodness.js'
import type { SimpleLaw } from '../../src/statistics/fitting/law.js'
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

/** Whole minutes, a stop of less than 40 s is not in the log (up to 30 % are not), one of ten is cut off at 4 min if it lasts so long. */
const worn: Omit<Log, 'n'> = {
  from: 40,
  clocks: { what: [{ kind: 'clocked', grain: 60 }], upTo: [1] },
  cuts: { what: [240, Number.POSITIVE_INFINITY], upTo: [0.1, 1] },
}

describe('the test refuses the true family in one of twenty logs: minutes, short ones missing, some cut off', () => {
  const logs = 400
  const refused = new Map<string, number>()

  it.each(laws.map((law) => ({ family: law.family, law })))('$family, 60 times', ({ family, law }) => {
    const stream = random(`size of ${family}`)
    let [weighted, largest, tested] = [0, 0, 0]
    for (let log = 0; log < logs; log++) {
      const sample = drawLog({ ...worn, n: 60 }, law, stream)
      const fitted = fitOf(sample, family)
      if ('why' in fitted) continue
      const found = goodness(sample, fitted.law, stream)
      if (found === null) continue
      tested++
      if (found.weightedGap.pValue <= 0.05) weighted++
      if (found.largestGap.pValue <= 0.05) largest++
    }
    refused.set(family, weighted / tested)
    const line = `${family}: of ${tested} logs A^2 refuses ${weighted}, D ${largest}`
    console.log(line)
    expect(tested).toBeGreaterThan(0.9 * logs)
    // four standard errors of 5 %
    const luck = 4 * Math.sqrt(0.0475 / tested)
    expect(weighted / tested, line).toBeLessThan(0.05 + luck)
    expect(largest / tested, line).toBeLessThan(0.05 + luck)
  })

  it('and all together', () => {
    const mean = [...refused.values()].reduce((sum, each) => sum + each, 0) / laws.length
    // three standard errors of 1600 logs
    expect(Math.abs(mean - 0.05)).toBeLessThan(3 * Math.sqrt(0.0475 / (logs * laws.length)))
  })
})
