/** The answer in two lines that stay in sight where the page is narrow, while a field is changed. */
import { printFigure } from '../../../report/format.js'
import { figuresTold } from '../answer/figures-told.js'
import { screenOf } from '../answer/verdict.js'
import type { Desk } from '../desk/desk.js'

/** It says again what the answer says, and is for eyes alone. */
export function Brief({ desk }: { desk: Desk }) {
  const { figures, drawn, problems, isFresh } = desk.known
  const now = drawn.value ?? figures.value
  if (!now) return <div class="brief" aria-hidden="true" />
  const { word, tone } = screenOf(now.after).verdict
  const { value, interval, unit } = printFigure(now.after.measures.throughput, now.after.display)
  const [rate] = figuresTold(now)
  const [problem] = isFresh.value ? [] : problems.value
  if (problem)
    return (
      <div class="brief" aria-hidden="true">
        <strong class="word error">CANNOT BE SIMULATED</strong>
        <span class="difference">{problem.rule}</span>
      </div>
    )
  return (
    <div class="brief" aria-hidden="true">
      <span>
        <strong class={`word ${tone}`}>{word}</strong> {value} {interval} {unit}
      </span>
      <span class="difference">
        {rate?.difference
          ? `Change: ${rate.difference.text} ${rate.difference.word}`
          : `${now.shifts} shifts, as it came`}
      </span>
    </div>
  )
}
