/** A future event list as textbooks have it: a binary heap of events, each with a closure that says what happens. */

/** Something that will happen, unless it is cancelled first. */
export interface Pending {
  readonly time: number
  readonly turn: number
  readonly sequence: number
  readonly action: () => void
  isCancelled: boolean
}

/** Times are rounded to whole nanoseconds, so that what coincides by the rules of a line coincides in the heap too. */
const perSecond = 1e9

/** Rounding that must not make a time later, or a length longer, than it is. */
export const hair = 1e-9

function isBefore(a: Pending, b: Pending): boolean {
  if (a.time !== b.time) return a.time < b.time
  if (a.turn !== b.turn) return a.turn < b.turn
  return a.sequence < b.sequence
}

export class Simulation {
  now = 0
  /** Events that happened. */
  events = 0
  private scheduled = 0
  private readonly heap: Pending[] = []

  /** Has `action` happen at `time`, s; of what happens at one time the lowest `turn` is first, then what was scheduled first. */
  schedule(time: number, turn: number, action: () => void): Pending {
    const event: Pending = {
      time: Math.max(this.now, Math.round(time * perSecond) / perSecond),
      turn,
      sequence: this.scheduled++,
      action,
      isCancelled: false,
    }
    this.push(event)
    return event
  }

  /** Lets everything happen up to and including `end`, s. */
  run(end: number): void {
    while (this.heap.length > 0 && this.heap[0]!.time <= end) {
      const event = this.pop()
      if (event.isCancelled) continue
      this.now = event.time
      this.events++
      event.action()
    }
    this.now = end
  }

  private push(event: Pending): void {
    const { heap } = this
    let place = heap.length
    heap.push(event)
    while (place > 0) {
      const parent = (place - 1) >> 1
      if (!isBefore(event, heap[parent]!)) break
      heap[place] = heap[parent]!
      place = parent
    }
    heap[place] = event
  }

  private pop(): Pending {
    const { heap } = this
    const first = heap[0]!
    const last = heap.pop()!
    if (heap.length === 0) return first
    let place = 0
    for (;;) {
      let child = 2 * place + 1
      if (child >= heap.length) break
      if (child + 1 < heap.length && isBefore(heap[child + 1]!, heap[child]!)) child++
      if (!isBefore(heap[child]!, last)) break
      heap[place] = heap[child]!
      place = child
    }
    heap[place] = last
    return first
  }
}
