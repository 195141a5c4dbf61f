/** Designs that stand on the server for the tasks that need them. */
import type { Piece, Sent } from './designs.js'
import type { Transport } from './transport.js'

/** They stand there for so long, s, and are put there again after half of it. */
const standFor = 3600
/** And so many at once. */
const mostDesigns = 512

const nameOf = ({ sort, hash }: Piece): string => `${sort}:${hash}`

export class Standing {
  /** When each design or part was put there, oldest first. */
  private readonly since = new Map<string, number>()

  /** `needed`: those that tasks are waiting for. */
  constructor(private readonly needed: () => Iterable<Sent>) {}

  /** Puts a design there, where it is not. */
  async put({ pieces }: Sent, transport: Transport): Promise<void> {
    for (const piece of pieces) {
      const name = nameOf(piece)
      const now = performance.now()
      const since = this.since.get(name)
      if (since !== undefined && now - since < 500 * standFor) continue
      await transport.put(name, piece.sealed(), standFor)
      this.since.delete(name)
      this.since.set(name, now)
      if (this.since.size > mostDesigns) await this.tidyUp(transport)
    }
  }

  /** It cannot be relied on that a design is there. */
  forget({ pieces }: Sent): void {
    for (const piece of pieces) this.since.delete(nameOf(piece))
  }

  /** Takes all of them away. */
  async clear(transport: Transport): Promise<void> {
    await transport.drop([...this.since.keys()])
    this.since.clear()
  }

  /** Those that were put there first, and that no task asks for, are done with. */
  private async tidyUp(transport: Transport): Promise<void> {
    const needed = new Set([...this.needed()].flatMap(({ pieces }) => pieces.map(nameOf)))
    const old = [...this.since.keys()].filter((name) => !needed.has(name)).slice(0, mostDesigns / 2)
    for (const name of old) this.since.delete(name)
    await transport.drop(old)
  }
}
