/** The figures of the line: each as it is now, as it came, and the difference, in its own place, so that nothing jumps while they change. */
import type { Figures } from '../../study/messages.js'
import { figuresTold, type Told } from './figures-told.js'

export function Tiles({ figures }: { figures: Figures }) {
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
      <dd class="difference">
        {difference ? (
          <>
            <span class="n">{difference.text}</span>{' '}
            {difference.word ? <strong class={`word ${difference.tone}`}>{difference.word}</strong> : null}
          </>
        ) : null}
      </dd>
    </div>
  )
}
