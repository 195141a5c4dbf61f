/** Stops and running times as samples: exact, rounded as the clock of the log rounds, or cut off. */
import { type Sample, type Seen, sampleFrom } from '../statistics/fitting/sample.js'
import type { CleanRecord, LoggedStop } from './record.js'
import { lengthOf } from './spans.js'

/** Lengths of stops. One that was cut off early is longer than what the log shows at all: nothing shorter would be in it. */
export const sampleOfStops = (
  stops: readonly LoggedStop[],
  { roundedTo, lengths, seenFrom }: Pick<CleanRecord, 'roundedTo' | 'lengths' | 'seenFrom'>,
): Sample =>
  sampleFrom(
    stops.map((stop): Seen => {
      const seconds = lengthOf(stop)
      if (stop.isCutOff) return { over: Math.max(seconds, seenFrom) }
      if (roundedTo === 0) return { at: seconds }
      if (lengths === 'clocked') return { clocked: seconds, grain: roundedTo }
      return { between: [Math.max(0, seconds - roundedTo / 2), seconds + roundedTo / 2] }
    }),
    seenFrom,
  )

/** Running times: those that ended with a stop, on a clock of some grain, and those that had not ended. */
export const sampleOfRuns = (ended: readonly number[], left: readonly number[], grain: number): Sample =>
  sampleFrom(
    [
      ...ended.map((seconds): Seen => (grain === 0 ? { at: seconds } : { clocked: seconds, grain })),
      ...left.filter((seconds) => seconds > 0).map((seconds): Seen => ({ over: seconds })),
    ],
    0,
  )
