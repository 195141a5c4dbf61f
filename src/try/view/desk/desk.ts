/** What the page is about: the scenario text with its history, what is asked of the worker and told of it, what is looked at. */
import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { Problem } from '../../../scenario/problems.js'
import type { Line } from '../../data.js'
import { type Edited, isRefused, type Refused } from '../../draft/edited.js'
import { begun, edited, type History, redone, undone } from '../../draft/history.js'
import type { Ask, Figures, Pin, Told } from '../../study/messages.js'

type ToldOf<What extends Told['what']> = Extract<Told, { what: What }>

/** Who studies: takes asks, and tells. */
export interface Studier {
  ask(ask: Ask): void
}

/** What is known of the line as it is now; each is kept until it is told anew. */
export interface Known {
  figures: Signal<(Figures & { isDone: boolean }) | null>
  drawn: Signal<Figures | null>
  checked: Signal<ToldOf<'checked'> | null>
  stretch: Signal<ToldOf<'stretch'> | null>
  problems: Signal<readonly Problem[]>
  /** Whether the figures are of the text as it is now. */
  isFresh: Signal<boolean>
  bug: Signal<string>
}

/** After the last change of a text it is asked about, ms: less than anybody takes for a pause. */
const quiet = 60

export class Desk {
  readonly history: Signal<History>
  readonly text: ReadonlySignal<string>
  readonly known: Known = {
    figures: signal(null),
    drawn: signal(null),
    checked: signal(null),
    stretch: signal(null),
    problems: signal([]),
    isFresh: signal(false),
    bug: signal(''),
  }
  readonly pins: Signal<readonly Pin[]> = signal([])
  readonly pinned: Signal<ToldOf<'pinned'> | null> = signal(null)
  /** Path of the part of which the fields are open. */
  readonly chosen = signal('')
  /** Grows when the text changes elsewhere than in the field that is written in. */
  readonly turned = signal(0)
  /** Why the last edit was not made, and of what. */
  readonly refused: Signal<(Refused & { of: string }) | null> = signal(null)
  private asked = 0
  private askedPins = 0
  private timer: ReturnType<typeof setTimeout> | undefined

  constructor(
    readonly line: Line,
    private readonly studier: Studier,
  ) {
    this.history = signal(begun(line.text))
    this.text = computed(() => this.history.value.present.text)
  }

  // --- what people do ---

  /** Makes an edit, or says why it cannot be made; `by` is the path of what it is about. */
  edit(by: string, change: (text: string) => Edited): string | null {
    const made = change(this.text.value)
    if (isRefused(made)) {
      this.refused.value = { ...made, of: by }
      return null
    }
    this.refused.value = null
    this.to(edited(this.history.value, made.text, by, performance.now()))
    return made.name ?? ''
  }

  /** Takes a text as it is. */
  take(text: string, by: string): void {
    this.to(edited(this.history.value, text, by, performance.now()))
    if (by !== 'text') this.turned.value++
  }

  undo(): void {
    this.turn(undone(this.history.value))
  }

  redo(): void {
    this.turn(redone(this.history.value))
  }

  /** Goes on with a history of another time. */
  turn(history: History): void {
    batch(() => {
      this.to(history)
      this.turned.value++
      this.refused.value = null
    })
  }

  private to(history: History): void {
    if (history === this.history.value) return
    const isOther = history.present.text !== this.text.value
    this.history.value = history
    if (isOther) this.askSoon()
  }

  // --- what is asked and told ---

  askSoon(): void {
    this.known.isFresh.value = false
    clearTimeout(this.timer)
    this.timer = setTimeout(() => this.ask(), quiet)
  }

  ask(): void {
    const { line, text } = this
    this.asked = this.askedPins + this.asked + 1
    const home = { name: line.name, files: line.files }
    this.studier.ask({ what: 'try', number: this.asked, home, before: line.text, after: text.value })
  }
}
