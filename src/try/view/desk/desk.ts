/** What the page is about: the scenario text with its history, what is asked of the worker and told of it, what is looked at. */
import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { Problem } from '../../../scenario/problems.js'
import type { Line } from '../../data.js'
import { type Edited, isRefused, type Refused } from '../../draft/edited.js'
import { begun, edited, type History, redone, undone } from '../../draft/history.js'
import { mostForFields, quickText } from '../../draft/lengths.js'
import { type Tree, treeOf } from '../../draft/yaml-text.js'
import { cameAs } from '../../pins.js'
import type { Study } from '../../study/client.js'
import { type Ask, type Figures, isExact, type Pin, type Told } from '../../study/messages.js'

type ToldOf<What extends Told['what']> = Extract<Told, { what: What }>

/** After the last change of a text it is asked about, ms: less than anybody takes for a pause. */
const quiet = 60
/** After the last key in a long text what was typed is taken, ms: to read it takes longer than people take from key to key. */
const pause = 400

export class Desk {
  readonly history: Signal<History>
  readonly text: ReadonlySignal<string>
  /** What it says; null where it cannot be read, or is too long to be read here. */
  readonly tree: ReadonlySignal<Tree | null>
  /** Whether it is another than that of the line as it came. */
  readonly isChanged: ReadonlySignal<boolean>
  /** What is known of the line as it is now; each is kept until it is told anew. */
  readonly known = {
    figures: signal<(Figures & { isDone: boolean }) | null>(null),
    drawn: signal<Figures | null>(null),
    checked: signal<ToldOf<'checked'> | null>(null),
    stretch: signal<ToldOf<'stretch'> | null>(null),
    problems: signal<readonly Problem[]>([]),
    /** Whether the figures are of the text as it is now. */
    isFresh: signal(false),
    bug: signal(''),
  }
  readonly pins: Signal<readonly Pin[]> = signal([])
  /** Why kept designs cannot be compared. */
  readonly pinFault = signal('')
  readonly pinned: Signal<ToldOf<'pinned'> | null> = signal(null)
  /** Path of the part of which the fields are open; null before anybody chooses one. */
  readonly chosen: Signal<string | null> = signal(null)
  /** Grows when the text changes elsewhere than in the field that is written in. */
  readonly turned = signal(0)
  /** Why the last edit was not made, and of what. */
  readonly refused: Signal<(Refused & { of: string }) | null> = signal(null)
  private number = 0
  /** What was asked last. */
  private asked: Ask['what'] = 'try'
  private timer: ReturnType<typeof setTimeout> | undefined
  /** What was typed last and is not taken yet, and of what it is. */
  private typed: { by: string; take: () => void; timer: ReturnType<typeof setTimeout> } | null = null
  /** What the last edit made, which need not be read again. */
  private made: { text: string; tree: Tree } | null = null
  private readonly study: Study

  constructor(
    readonly line: Line,
    studied: (tell: (told: Told) => void) => Study,
  ) {
    this.history = signal(begun(line.text))
    this.text = computed(() => this.history.value.present.text)
    this.tree = computed(() => this.read(this.text.value))
    this.isChanged = computed(() => this.text.value !== line.text)
    this.study = studied((told) => this.hear(told))
  }

  // --- what people do ---

  /** Does what somebody types at once; of a long text when they pause, or turn to anything else. */
  whenTyped(by: string, take: () => void): void {
    if (this.typed?.by !== by) this.settle()
    clearTimeout(this.typed?.timer)
    this.typed = { by, take, timer: setTimeout(() => this.settle(), pause) }
    if (this.text.value.length <= quickText) this.settle()
  }

  /** Takes what was typed and is not taken yet. */
  settle(): void {
    const { typed } = this
    this.typed = null
    clearTimeout(typed?.timer)
    typed?.take()
  }

  /** Makes an edit, or says why it cannot be made; `by` is the path of what it is about. */
  edit(by: string, change: (text: string) => Edited): string | null {
    this.settle()
    const made = change(this.text.value)
    if (isRefused(made)) {
      this.refused.value = { ...made, of: by }
      return null
    }
    this.refused.value = null
    if (made.tree) this.made = { text: made.text, tree: made.tree }
    this.to(edited(this.history.value, made.text, by, performance.now()))
    return made.name ?? ''
  }

  /** Takes a text as it is. */
  take(text: string, by: string): void {
    this.settle()
    this.to(edited(this.history.value, text, by, performance.now()))
    if (by !== 'text') this.turned.value++
  }

  undo(): void {
    this.settle()
    this.turn(undone(this.history.value))
  }

  redo(): void {
    this.settle()
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

  private read(text: string): Tree | null {
    if (text.length > mostForFields) return null
    return this.made?.text === text ? this.made.tree : treeOf(text)
  }

  private to(history: History): void {
    if (history === this.history.value) return
    const isOther = history.present.text !== this.text.value
    this.history.value = history
    if (isOther) this.askSoon()
  }

  // --- what is asked and told ---

  private askSoon(): void {
    this.known.isFresh.value = false
    // what is still told of the text before is not of this one
    this.number++
    clearTimeout(this.timer)
    this.timer = setTimeout(() => this.ask(), quiet)
  }

  /** Asks about the line as it came and as it is now. */
  ask(): void {
    const { line, text } = this
    this.study.ask({ ...this.begin('try'), before: line.text, after: text.value })
  }

  /** Ends the study. */
  close(): void {
    clearTimeout(this.timer)
    this.study.close()
  }

  /** Asks for a table of the kept designs beside the line as it came. */
  askPins(): void {
    this.settle()
    const base = { name: cameAs, text: this.line.text }
    this.pinFault.value = ''
    this.study.ask({ ...this.begin('pins'), pins: [base, ...this.pins.value] })
  }

  private begin<const What extends Ask['what']>(what: What) {
    // what is asked now is asked of the text as it is now
    clearTimeout(this.timer)
    this.asked = what
    const { name, files } = this.line
    return { what, number: ++this.number, home: { name, files } }
  }

  /** What is told of an ask before the last one is of no use any more. */
  private hear(told: Told): void {
    if (told.number !== this.number) return
    batch(() => this.keep(told))
  }

  private keep(told: Told): void {
    const { known } = this
    known.bug.value = ''
    switch (told.what) {
      case 'problems':
        this.keepProblems(told)
        break
      case 'checked':
        // what is as it was is not told anew
        if (known.problems.value.length > 0) known.problems.value = []
        known.checked.value = told
        break
      case 'figures':
        known.figures.value = told
        known.drawn.value = null
        known.isFresh.value = true
        break
      case 'stretch':
        known.stretch.value = told
        break
      case 'drawn':
        known.drawn.value = told
        break
      case 'pinned':
        this.pinned.value = told
        if (told.isDone) this.goOn()
        break
      case 'bug':
        known.bug.value = told.message
    }
  }

  /** Problems of the text are told beside it; those of a kept design where it stands. */
  private keepProblems({ of, problems }: ToldOf<'problems'>): void {
    const words = problems.map(({ path, rule }) => `${path ? `${path}: ` : ''}${rule}`).join('; ')
    if (this.asked === 'pins') {
      this.pinFault.value = `${of} cannot be simulated: ${words}.`
      this.goOn()
    } else if (of === 'after') this.known.problems.value = problems
    else this.known.bug.value = `the line as it came cannot be simulated: ${words}`
  }

  /** Asks again for what the comparison of kept designs cut off. */
  private goOn(): void {
    const { isFresh, figures, drawn } = this.known
    const now = isFresh.value ? figures.value : null
    const isWhole = now?.isDone && (drawn.value !== null || isExact(now))
    if (!isWhole) this.ask()
  }
}
