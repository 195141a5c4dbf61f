/** What is wrong with the text as it is now: each problem with its place, its rule and the nearest fix. */
import type { Problem } from '../../../scenario/problems.js'
import type { Desk } from '../desk/desk.js'
import { Prose } from '../prose.js'
import { PathButton } from './path-button.js'

/** Problems that are told before they are counted. */
const most = 3

export function ProblemList({ desk }: { desk: Desk }) {
  const problems = desk.known.problems.value
  if (problems.length === 0) return null
  return (
    <div class="foremost problems">
      <h2>This cannot be simulated</h2>
      <ul class="plain">
        {problems.slice(0, most).map((each) => (
          <li key={`${each.path} ${each.line} ${each.rule}`}>
            <ProblemWords desk={desk} problem={each} />
          </li>
        ))}
      </ul>
      {problems.length > most ? <p>and {problems.length - most} more.</p> : null}
    </div>
  )
}

/** `line.sealer.belt-speed: must have a unit. Fix: write it like 24 m/min.` */
function ProblemWords({ desk, problem }: { desk: Desk; problem: Problem }) {
  const { path, line, rule, fix } = problem
  return (
    <>
      {path ? <PathButton desk={desk} path={path} /> : line > 0 ? `Line ${line}` : 'The file'}:{' '}
      <Prose text={rule} />
      {fix ? (
        <>
          . Fix: <Prose text={fix} />
        </>
      ) : null}
      .
    </>
  )
}
