/** Says the answer to those who hear the page: once it has come to rest, and not with every shift. */
import { useSignal, useSignalEffect } from '@preact/signals'
import { figuresTold } from '../answer/figures-told.js'
import { screenOf } from '../answer/verdict.js'
import type { Desk } from '../desk/desk.js'

/** So long nothing may change before it is said, ms. */
const rest = 1500

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
