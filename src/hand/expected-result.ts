/** The expected output as documents have it. */
import type { Expected } from './expected.js'
import type { LineHand } from './line.js'
import { usualError, usualErrorText } from './usual-error.js'

/** A step from what arrives to what is expected out: good cases a second of working time. */
interface ExpectedLoss {
  /** `spoilt`, `slower`, `entry`, `left`, or a stop: `own`, `blocks` or `starves`. */
  what: 'spoilt' | 'slower' | 'entry' | 'left' | 'own' | 'blocks' | 'starves'
  /** Where it comes from; null where it is of no single piece. */
  piece: string | null
  /** As the result of a run names the stop; null where it is none. */
  stop: string | null
  /** Of jams their kind, where it has a name. */
  jam?: string
  words: string
  lost: number
  /** Of `lost` the part in which a stop waits until somebody is there. */
  waitingForCrew: number
  /** Share of the stops that is felt past all room, and for how long these are, s. */
  felt: number | null
  rest: number | null
}

interface ExpectedResult {
  /** Null where it is not worked out: `why` says so, and `most` is what the line cannot pass. */
  throughput: number | null
  perShift: number | null
  why: string | null
  /** Least of what arrives and of what each piece can do after its stops. */
  most: number
  arriving: number
  /** The piece that sets the pace; null where the arrivals do. */
  pace: string | null
  losses: ExpectedLoss[]
  error: { often: number; within: number; high: number; worst: number; words: string }
}

/** Makes it of a scenario that was worked out; rates in cases/s, times in s. */
export function expectedResult({ output, trouble }: Expected, line: LineHand): ExpectedResult {
  const { often, within, high, worst } = usualError
  const base = {
    most: line.throughput,
    arriving: line.arriving,
    error: { often, within, high, worst, words: usualErrorText },
  }
  if (output === null)
    return { ...base, throughput: null, perShift: null, why: trouble, pace: null, losses: [] }
  const { pace, order } = output
  const single = (what: ExpectedLoss['what'], piece: string | null, words: string, lost: number) => ({
    what,
    piece,
    stop: null,
    words,
    lost,
    waitingForCrew: 0,
    felt: null,
    rest: null,
  })
  const losses: ExpectedLoss[] = [
    single('spoilt', null, 'spoilt, rejected or left open', output.spoilt),
    single('slower', pace, 'slower than the arrivals', output.slower),
    single('entry', order[0] ?? null, 'packers wait until the entrance is clear', output.entry),
    ...output.stops.map(({ stop, effect, lost, share, rest }) => ({
      what: effect,
      piece: stop.piece,
      stop: stop.key,
      ...(stop.jam === null ? {} : { jam: stop.jam }),
      words: stop.words,
      lost,
      waitingForCrew: lost * stop.untilThere,
      felt: share,
      rest,
    })),
    single('left', null, 'still in the line at the end of the shift', output.left),
  ]
  return {
    ...base,
    throughput: output.throughput,
    perShift: output.throughput * line.working,
    why: null,
    pace,
    losses: losses.filter(({ lost }) => lost > 1e-6 * line.arriving),
  }
}
