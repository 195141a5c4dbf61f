/** What keeps a study from going on: told once, and given up after so long. */

/** Without a server, with one that takes nothing in, or with nobody who works there is no progress. */
export type TroubleKind = 'server' | 'full' | 'workers'

interface Lasting {
  from: number
  message: string
  isSaid: boolean
}

export class Trouble {
  private readonly lasting = new Map<TroubleKind, Lasting>()

  /** `patience`: ms; `say` is told what begins and what is over. */
  constructor(
    private readonly patience: number,
    private readonly say: (text: string) => void,
  ) {}

  /** Is called as often as it is met; it is told where it was met twice, for much is over before anybody could read of it. */
  meets(kind: TroubleKind, message: string): void {
    const known = this.lasting.get(kind)
    if (!known) {
      this.lasting.set(kind, { from: performance.now(), message, isSaid: false })
      return
    }
    known.message = message
    if (!known.isSaid) this.say(`${message}: waiting`)
    known.isSaid = true
  }

  ends(kind: TroubleKind): void {
    if (this.lasting.get(kind)?.isSaid) this.say('the queue works again')
    this.lasting.delete(kind)
  }

  /** What has lasted longer than anybody wants to wait; null where nothing has. */
  get tooLong(): string | null {
    const now = performance.now()
    return [...this.lasting.values()].find(({ from }) => now - from > this.patience)?.message ?? null
  }
}
