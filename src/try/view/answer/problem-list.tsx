/** What is wrong with the text as it is now: each problem with its place, its rule and the nearest fix. */
import type { Problem } from '../../../scenario/problems.js'
import { setsIn } from '../../fix-sets.js'
import type { Desk } from '../desk/desk.js'
import { mend } from '../desk/edits.js'
import { Ruled } from '../prose.js'
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
        {problems.slice(0, most).map((each, index) => (
          <li key={`${each.path} ${each.line} ${each.rule}`}>
            <ProblemWords
              desk={desk}
              problem={each}
              isFixSaid={problems.slice(0, index).some(({ fix }) => fix === each.fix)}
            />
          </li>
        ))}
      </ul>
      {problems.length > most ? <p>and {problems.length - most} more.</p> : null}
    </div>
  )
}

/** `line.sealer.belt-speed: must have a unit. Fix: write it like 24 m/min.` */
interface ProblemWordsProps {
  desk: Desk
  problem: Problem
  /** One fix may be that of several problems. */
  isFixSaid: boolean
}

function ProblemWords({ desk, problem, isFixSaid }: ProblemWordsProps) {
  const { path, line, rule, fix } = problem
  return (
    <>
      {path ? <PathButton desk={desk} path={path} /> : line > 0 ? `Line ${line}` : 'The file'}:{' '}
      <Ruled rule={rule} fix={isFixSaid ? '' : fix} />.
      {fix && !isFixSaid && setsIn(fix).length > 0 ? (
        <>
          {' '}
          <button type="button" onClick={() => mend(desk, fix)}>
            Make this change
          </button>
        </>
      ) : null}
    </>
  )
}
