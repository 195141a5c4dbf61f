/** Those who work on a queue, as an asker sees them: how many, and how fast each is. */
import type { Presence } from './messages.js'

/** Workers that are named in one line. */
const mostNamed = 4

interface Seen {
  presence: Presence
  /** When it was seen first, and what it had done then. */
  since: number
  before: number
}

export class Workforce {
  private seen = new Map<string, Seen>()
  private readonly strangers = new Set<string>()

  constructor(
    private readonly version: string,
    private readonly say: (text: string) => void,
  ) {}

  /** Takes who is there now. */
  see(present: ReadonlyMap<string, Presence>): void {
    const now = performance.now()
    const seen = new Map<string, Seen>()
    for (const [id, presence] of present) {
      if (presence.is !== 'worker') continue
      if (presence.version !== this.version) this.refuse(id, presence)
      else {
        const { since = now, before = presence.done } = this.seen.get(id) ?? {}
        seen.set(id, { presence, since, before })
      }
    }
    this.seen = seen
  }

  /** One of another version might simulate other shifts: its queue is another. */
  private refuse(id: string, { name, version }: Presence): void {
    if (this.strangers.has(id)) return
    this.strangers.add(id)
    this.say(`the worker ${name} is tapeshift ${version}, this is ${this.version}: it takes no part`)
  }

  get isEmpty(): boolean {
    return this.seen.size === 0
  }

  /** Threads of all of them. */
  get threads(): number {
    return [...this.seen.values()].reduce((sum, { presence }) => sum + presence.threads, 0)
  }

  /** `3 workers, 6 threads: anna 80, bert 71, carl 64 shifts a second`. */
  get told(): string {
    const count = (number: number, word: string) => `${number} ${word}${number === 1 ? '' : 's'}`
    const now = performance.now()
    const rates = [...this.seen.values()]
      .map(({ presence, since, before }) => ({
        name: presence.name,
        rate: (1000 * (presence.done - before)) / Math.max(1, now - since),
      }))
      .sort((a, b) => b.rate - a.rate)
      .slice(0, mostNamed)
      .map(({ name, rate }) => `${name} ${rate.toPrecision(2)}`)
    const named = rates.length === 0 ? '' : `: ${rates.join(', ')} shifts a second`
    return `${count(this.seen.size, 'worker')}, ${count(this.threads, 'thread')}${named}`
  }
}
