/** Where no line is given: a choice of lines to start from, or a file of one's own. */
import { useSignal } from '@preact/signals'
import { cautionLine } from '../../../trade/cautions.js'
import type { Line, Start } from '../../data.js'

/** A scenario has at most so many characters. */
const mostText = 1_000_000

export function Starts({ starts, open }: { starts: readonly Start[]; open: (line: Line) => void }) {
  const told = useSignal('')
  const read = async (files: FileList | null) => {
    const all = [...(files ?? [])]
    const scenario = all.find(({ name }) => /\.ya?ml$/i.test(name)) ?? all[0]
    if (!scenario) return
    if (scenario.size > 4 * mostText) {
      told.value = `${scenario.name} is too large for a scenario: put recorded values into a CSV file beside it.`
      return
    }
    const beside = await Promise.all(
      all.filter((each) => each !== scenario).map(async (each) => [each.name, await each.text()] as const),
    )
    open({ name: scenario.name, text: await scenario.text(), files: Object.fromEntries(beside) })
  }
  return (
    <main class="starts">
      <h1>Try a case sealing line</h1>
      <p>
        Choose a line that is like yours. The page simulates its shifts at once: change a value, and see
        whether the line still holds its target. Nothing leaves your computer.
      </p>
      <div class="cards">
        {starts.map((start) => (
          <div key={start.name} class="next">
            <h2>{start.title}</h2>
            <p>{start.about}</p>
            <p>
              <button type="button" onClick={() => open(start)}>
                Open<span class="unseen"> {start.title}</span>
              </button>
            </p>
          </div>
        ))}
        <div class="card">
          <h2>A file of your own</h2>
          <p>A scenario in YAML; choose the CSV files that it names with it.</p>
          <p>
            <label>
              <span class="unseen">Scenario file, with its CSV files</span>
              <input
                type="file"
                multiple
                accept=".yaml,.yml,.csv"
                onChange={({ currentTarget }) => void read(currentTarget.files)}
              />
            </label>
          </p>
          <p role="status">{told.value}</p>
        </div>
      </div>
      <p class="caution">
        <strong>Safety.</strong> {cautionLine}
      </p>
    </main>
  )
}
