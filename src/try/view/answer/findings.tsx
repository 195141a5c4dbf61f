/** What the check finds: the worst first, each with what it rests on and the nearest fix. */
import type { FindingResult } from '../../../questions/check/document.js'
import type { Desk } from '../desk/desk.js'
import { Prose } from '../prose.js'

const words = { error: 'Error', warning: 'Warning', note: 'To know' } as const
const tones = { error: 'error', warning: 'warning', note: 'plain' } as const

export function Findings({ desk, findings }: { desk: Desk; findings: readonly FindingResult[] }) {
  if (findings.length === 0) return <p>The check finds nothing to say.</p>
  return (
    <ul class="findings">
      {findings.map(({ code, severity, path, message, fix, basis }) => (
        <li key={`${code} ${path}`}>
          <strong class={`word ${tones[severity]}`}>{words[severity]}</strong>{' '}
          {path ? (
            <button type="button" class="quiet" onClick={() => open(desk, path)}>
              {path}
            </button>
          ) : null}{' '}
          <Prose text={message} />
          {fix ? (
            <>
              {' '}
              Fix: <Prose text={fix} />.
            </>
          ) : null}{' '}
          <span class="note">Basis: {basis}.</span>
        </li>
      ))}
    </ul>
  )
}

/** Opens the fields of the part that a path leads to. */
function open(desk: Desk, path: string): void {
  const [room = '', name] = path.split('.')
  const isEntry = ['line', 'cases', 'arrivals', 'crew'].includes(room) && name !== undefined
  desk.chosen.value = isEntry ? `${room}.${name}` : ['target', 'title', 'display'].includes(room) ? '' : room
}
