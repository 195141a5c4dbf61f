/** The answer in short: in two lines that stay in sight where the page is narrow, and said to those who hear the page. */
import { useSignal, useSignalEffect } from '@preact/signals'
import { printFigure } from '../../../report/format.js'
import type { Figures } from '../../study/messages.js'
import { figuresTold } from '../answer/figures-told.js'
import { screenOf } from '../answer/verdict.js'
import { firstWait, lettersIn, nextWait } from '../answer/waiting.js'
import type { Desk } from '../desk/desk.js'

/** In sight while a field is changed: it says again what the answer says, and is for eyes alone. */
export function Brief({ desk }: { desk: Desk }) {
  return (
    <div class="brief" aria-hidden="true">
      <Words desk={desk} />
    </div>
  )
}

function Words({ desk }: { desk: Desk }) {
  const { checked, figures, drawn, problems, isFresh, bug } = desk.known
  const now = drawn.value ?? figures.value
  const [problem] = isFresh.value ? [] : problems.value
  const letters = lettersIn(desk.text.value, desk.line)
  if (bug.value !== '') return <Trouble word="SOMETHING WENT WRONG" rule={bug.value} />
  if (problem) return <Trouble word="CANNOT BE SIMULATED" rule={problem.rule} />
  if (!now) return <span>{firstWait(letters, checked.value?.check ?? null)}</span>
  const { word, tone } = screenOf(now.after).verdict
  const { value, interval, unit } = printFigure(now.after.measures.throughput, now.after.display)
  return (
    <>
      <span>
        <strong class={`word ${tone}`}>{word}</strong> {value} {interval} {unit}
      </span>
      <span class="difference">{isFresh.value ? changeTold(now) : nextWait(letters)}</span>
    </>
  )
}

const Trouble = ({ word, rule }: { word: string; rule: string }) => (
  <>
    <strong class="word error">{word}</strong>
    <span class="difference">{rule}</span>
  </>
)

/** What the change does, as far as that is known. */
function changeTold(now: Figures): string {
  const [rate] = figuresTold(now)
  if (rate?.difference) return `Change: ${rate.difference.text} ${rate.difference.word}`
  return now.before === now.after ? `${now.shifts} shifts, as it came` : `${now.shifts} shifts of the change`
}

/** So long nothing may change before it is said, ms. */
const rest = 1500

/** Says the answer to those who hear the page: once it has come to rest, and not with every shift. */
export function Announcer({ desk }: { desk: Desk }) {
  const said = useSignal('')
  useSignalEffect(() => {
    const words = wordsOf(desk)
    const timer = setTimeout(() => {
      said.value = words
    }, rest)
    return () => clearTimeout(timer)
  })
  return (
    <p class="unseen" role="status">
      {said.value}
    </p>
  )
}

function wordsOf({ known }: Desk): string {
  const problems = known.problems.value
  if (problems.length > 0) return `This cannot be simulated: ${problems[0]!.rule}.`
  const now = known.drawn.value ?? known.figures.value
  if (!now) return ''
  const { word, text } = screenOf(now.after).verdict
  const [rate] = figuresTold(now)
  const difference = rate?.difference
    ? ` Beside the line as it came: ${rate.difference.text} ${rate.difference.word}.`
    : ''
  return `${word} ${text}${difference}`
}
