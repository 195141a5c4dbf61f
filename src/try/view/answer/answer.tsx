/** The answer: does the line hold its target, its figures beside those of the line as it came, and what limits it. */
import { useComputed } from '@preact/signals'
import { counted } from '../../../report/format.js'
import type { Said } from '../../../report/screen.js'
import { type Figures, isExact } from '../../study/messages.js'
import type { Desk } from '../desk/desk.js'
import { Prose, Sentences } from '../prose.js'
import { type Difference, figuresTold, type Told } from './figures-told.js'
import { ProblemList } from './problem-list.js'
import { saidOf, screenOf } from './verdict.js'
import { firstWait, lettersIn, nextWait } from './waiting.js'

/** Heads of the sentences that stand below the figures, with their words on the page. */
const heads: Readonly<Record<string, string>> = {
  Errors: 'What the check calls an error',
  Prices: 'What the cost leaves out',
  Limit: 'What limits the line',
  Next: 'What to try next',
}

export function Answer({ desk }: { desk: Desk }) {
  const { checked, figures, drawn, problems, isFresh, bug } = desk.known
  const shown = useComputed(() => drawn.value ?? figures.value)
  const screen = useComputed(() => (shown.value ? screenOf(shown.value.after) : null))
  const isOld = useComputed(() => !isFresh.value && problems.value.length > 0)
  return (
    <section id="answer" class={`answer tried${isOld.value ? ' old' : ''}`} aria-label="The answer">
      {bug.value ? (
        <p class="foremost">
          Something went wrong: {bug.value}. Undo the last change, or save the file and load the page again.
        </p>
      ) : null}
      <ProblemList desk={desk} />
      {/* of a text that cannot be simulated nothing holds: what is wrong with it stands in the place of the verdict */}
      <p class="verdict" hidden={isOld.value || (bug.value !== '' && !screen.value)}>
        {screen.value ? (
          <>
            <strong class={`word ${screen.value.verdict.tone}`}>{screen.value.verdict.word}</strong>
            {screen.value.verdict.text.startsWith(':') ? '' : ' '}
            <Prose text={screen.value.verdict.text} />
          </>
        ) : (
          firstWait(lettersIn(desk.text.value, desk.line), checked.value?.check ?? null)
        )}
      </p>
      {shown.value ? <Tiles figures={shown.value} /> : <div class="looked" />}
      <p class="note progress">{progressOf(desk)}</p>
      {screen.value
        ? Object.entries(heads).map(([head, title]) => (
            <Card key={head} said={saidOf(screen.value!, head)} title={title} />
          ))
        : null}
    </section>
  )
}

function Card({ said, title }: { said: Said | null; title: string }) {
  if (!said) return null
  return (
    <div class={`card ${said.tone ?? ''}`}>
      <h2>{title}</h2>
      <Sentences lines={said.lines} isOrdered={said.head === 'Next'} />
    </div>
  )
}

/** The figures of the line, each in its own place, so that nothing jumps while they change. */
function Tiles({ figures }: { figures: Figures }) {
  return (
    <dl class="looked">
      {figuresTold(figures).map((told) => (
        <Tile key={told.measure} told={told} />
      ))}
    </dl>
  )
}

function Tile({ told: { measure, label, now, before, difference, note } }: { told: Told }) {
  return (
    <div class="tile" data-measure={measure}>
      <dt>{label}</dt>
      <dd class="now">
        <span class="value">{now.value}</span> <span class="plus-minus">{now.interval}</span>{' '}
        <span class="unit">{now.unit}</span>
      </dd>
      <dd class="came">{before === null ? note : `as it came ${before}`}</dd>
      <dd class="difference">{difference ? <DifferenceWords {...difference} /> : null}</dd>
    </div>
  )
}

/** A difference, and whether it is shown. */
export const DifferenceWords = ({ text, word, tone }: Difference) => (
  <>
    <span class="n">{text}</span> {word ? <strong class={`word ${tone}`}>{word}</strong> : null}
  </>
)

/** How many shifts the figures are of, and whether more are coming. */
function progressOf({ known, isChanged, text, line }: Desk): string {
  const { figures, drawn, isFresh, problems } = known
  const now = figures.value
  if (!now) return ''
  if (!isFresh.value)
    return problems.value.length > 0
      ? 'These figures are of the last text that could be simulated.'
      : nextWait(lettersIn(text.value, line))
  const shifts = `${counted(now.shifts, 'simulated shift')}${isChanged.value ? ' of each, on the same random numbers' : ''}`
  if (!now.isDone) return `${shifts}; more are coming, and plus-minus narrows.`
  if (drawn.value) return `${shifts}, and draws of the inputs.`
  return isExact(now) ? `${shifts}.` : `${shifts}. Draws of the inputs are on their way; they take longer.`
}
