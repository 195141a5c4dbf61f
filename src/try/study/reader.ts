/** Reads the texts of a study, each once. */
import { type ReadScenario, readScenario } from '../../scenario/read.js'
import { besideOf } from './beside.js'
import type { Home } from './messages.js'

/** What was read and is still known: the line as it came, the one before the last change, a few pins. */
const mostRead = 12

export class Reader {
  private readonly known = new Map<string, ReadScenario>()
  private home: Home | null = null

  /** The scenario of `text`. Throws `ScenarioError`. */
  read(text: string, home: Home): ReadScenario {
    if (this.home && !isSame(home, this.home)) this.known.clear()
    this.home = home
    const read = this.known.get(text) ?? readScenario(text, { name: home.name }, besideOf(home.files))
    this.known.delete(text)
    this.known.set(text, read)
    if (this.known.size > mostRead) this.known.delete(this.known.keys().next().value!)
    return read
  }
}

/** Sent files are others each time: they are the same by what they hold. */
function isSame(one: Home, other: Home): boolean {
  const names = Object.keys(one.files)
  return (
    one.name === other.name &&
    names.length === Object.keys(other.files).length &&
    names.every((name) => one.files[name] === other.files[name])
  )
}
