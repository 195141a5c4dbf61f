/** What the check finds: the worst first, each with what it rests on and the nearest fix. */
import type { FindingResult } from '../../../questions/check/document.js'
import type { Desk } from '../desk/desk.js'
import { Prose } from '../prose.js'
import { PathButton } from './path-button.js'

const words = { error: 'Error', warning: 'Warning', note: 'To know' } as const
const tones = { error: 'error', warning: 'warning', note: 'plain' } as const

export function Findings({ desk, findings }: { desk: Desk; findings: readonly FindingResult[] }) {
  if (findings.length === 0) return <p>The check finds nothing to say.</p>
  return (
    <ul class="findings">
      {findings.map(({ code, severity, path, message, fix, basis }) => (
        <li key={`${code} ${path}`}>
          <strong class={`word ${tones[severity]}`}>{words[severity]}</strong>{' '}
          {path ? <PathButton desk={desk} path={path} /> : null} <Prose text={message} />
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
