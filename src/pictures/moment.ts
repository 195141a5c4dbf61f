/** The moment of a recorded stretch that a picture shows: some minutes around its longest queue, where single cases can be told apart. */
import type { Stretch } from '../shifts/stretch.js'
import { fullest } from './finding.js'
import { holdingAt } from './steps.js'

/** How long the moment is, s, and the share of it before the line is fullest: what led to it is seen, and how it goes back. */
const moment = { length: { wide: 300, narrow: 120 }, before: 0.6 }

/** The five minutes of a stretch, in a narrow picture two, around the instant at which most cases are in the line; a shorter stretch as it is. */
export function momentOf(stretch: Stretch, width: keyof typeof moment.length = 'wide'): Stretch {
  const length = Math.min(moment.length[width], stretch.to - stretch.from)
  const wanted = fullest(stretch).time - moment.before * length
  const from = Math.min(Math.max(stretch.from, wanted), stretch.to - length)
  const to = from + length
  const until = <Row extends readonly [number, unknown]>(rows: Row[]): Row[] =>
    rows.filter(([time]) => time <= to)
  const known = (time: number | null) => (time !== null && time <= to ? time : null)
  return {
    ...stretch,
    from,
    to,
    cases: stretch.cases
      .filter(({ came }) => came[1] <= to)
      .map(({ path, belts, held, lost, ...each }) => {
        const entered = path.filter(([, begin]) => begin <= to)
        const isWhole = entered.length === path.length && known(path.at(-1)?.[2] ?? null) !== null
        return {
          ...each,
          // most are over by then: those stay as they are
          path: entered.map((step): [number, number, number | null] =>
            step[2] === known(step[2]) ? step : [step[0], step[1], null],
          ),
          ...(belts ? { belts: belts.map(known) } : {}),
          ...(held
            ? {
                held: held
                  .filter(([, begin]) => begin <= to)
                  .map(([at, begin, end]): [number, number, number | null] => [at, begin, known(end)]),
              }
            : {}),
          ...(lost && isWhole ? { lost } : {}),
        }
      }),
    states: stretch.states.map(until),
    drives: stretch.drives.map(until),
    breaks: stretch.breaks
      .filter(([begin, end]) => begin < to && end > from)
      .map(([begin, end]) => [Math.max(begin, from), Math.min(end, to)]),
    held: [
      [from, holdingAt(stretch.held, from) ?? 0],
      ...until(stretch.held).filter(([time]) => time > from),
    ],
  }
}
