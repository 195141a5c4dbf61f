/** Chart of the warm-up: the cases in the line from an empty start, with the cut that was found. */
import { max } from 'simple-statistics'
import { durationText } from '../../report/format.js'
import { axisTime, numbers } from '../../report/marks/axis.js'
import { type Chart, chartOf } from '../../report/marks/chart.js'
import { line } from '../../report/marks/line.js'
import { nameBeside, ruleUp, shade } from '../../report/marks/rule.js'
import type { RunResult } from './document.js'

/** The averaged series and its cut; null where every shift starts empty and is counted in full. */
export function settlingChart(result: RunResult): Chart | null {
  const { warmUp, shift } = result
  if (warmUp === null) return null
  const { at, cases, cut, runs, countFrom, isSettled } = warmUp
  const end = at.at(-1)!
  const time = axisTime(end)
  const isCut = shift.start === 'steady'
  const top = Math.max(1, max(cases) * 1.15)
  return chartOf(result, {
    name: 'settling',
    section: 'figures',
    title: isCut
      ? `Warm-up: counted from ${durationText(countFrom)} on`
      : isSettled
        ? `From empty the line reaches a steady state after ${durationText(cut)}`
        : 'The line does not reach a steady state in this time',
    subtitle: `Cases in the line and in front of it, mean of ${runs} runs from empty. Cut by MSER-5 at ${durationText(cut)}${isCut && countFrom > cut ? ', counted from the next whole shift' : ''}.`,
    alt: `Cases in the line from an empty start, mean of ${runs} runs of ${durationText(end)}: ${isSettled ? `MSER-5 cuts at ${durationText(cut)}` : 'MSER-5 finds no cut in the first half'}.`,
    mayNarrow: true,
    gap: 16,
    height: { all: 340 },
    type: 'line',
    axes: {
      x: numbers({
        title: `${time.word} since the start`,
        min: 0,
        max: end / time.unit,
        most: 12,
        isPlain: true,
      }),
      y: numbers({
        title: 'cases',
        min: 0,
        max: top,
        most: 7,
        isInside: true,
        decimals: top < 5 ? 1 : 0,
      }),
    },
    marks: [
      line(
        'cases in the line',
        cases.map((y, index) => ({ x: at[index]! / time.unit, y })),
        { borderWidth: 1.6, borderJoinStyle: 'round' },
      ),
      // what is not counted
      isCut && shade('x', null, countFrom / time.unit),
      ruleUp(cut / time.unit),
      nameBeside(cut / time.unit, 'MSER-5 cut', 14),
    ],
  })
}
