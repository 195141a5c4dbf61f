/** Carries messages within this process, as a server would, so that a test can alter or lose them on the way. */
import type { Presence } from '../../src/queue/messages.js'
import type { Transport, Whereabouts } from '../../src/queue/transport.js'

/** May alter what is carried; null: it is lost. */
export type OnTheWay = (what: 'task' | 'kept', name: string, bytes: Uint8Array) => Uint8Array | null

export class Post {
  private readonly kept = new Map<string, Uint8Array>()
  private readonly tasks = new Map<string, Uint8Array>()
  private readonly there = new Map<string, Presence>()
  private readonly listeners: ((id: string) => void)[] = []
  private act: ((id: string, task: Uint8Array) => Promise<void>) | null = null
  /** Tasks of which nothing is said any more, as where each worker that takes them ends. */
  readonly givenUp = new Set<string>()
  isPoisoned: (id: string) => boolean = () => false

  constructor(private readonly onTheWay: OnTheWay = (_, __, bytes) => bytes) {}

  /** One end of it. */
  end(): Transport {
    return {
      put: async (name, bytes) => {
        const there = this.onTheWay('kept', name, bytes)
        if (there) this.kept.set(name, there)
      },
      get: async (name) => this.kept.get(name) ?? null,
      fetch: async (name) => {
        const bytes = this.kept.get(name) ?? null
        this.kept.delete(name)
        return bytes
      },
      drop: async (names) => {
        for (const name of names) this.kept.delete(name)
      },
      add: async (id, task) => {
        const there = this.onTheWay('task', id, task)
        if (there && !this.tasks.has(id)) this.tasks.set(id, there)
        setImmediate(() => this.work(id))
      },
      whereIs: async (id): Promise<Whereabouts> =>
        this.givenUp.has(id) ? 'failed' : this.tasks.has(id) ? 'waits' : 'nowhere',
      remove: async (id) => {
        this.tasks.delete(id)
        this.givenUp.delete(id)
      },
      onDone: async (listener) => void this.listeners.push(listener),
      take: async (_, act) => {
        this.act = act
      },
      appear: async (id, presence) => void this.there.set(id, presence),
      present: async () => this.there,
      close: async () => {},
    }
  }

  private async work(id: string): Promise<void> {
    const task = this.tasks.get(id)
    if (!task || !this.act || this.givenUp.has(id)) return
    if (this.isPoisoned(id)) this.givenUp.add(id)
    else {
      await this.act(id, task)
      this.tasks.delete(id)
    }
    for (const listener of this.listeners) listener(id)
  }
}
