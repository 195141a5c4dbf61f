/** The story of one case in a few lines: how long it was where, how long of that it stood, and what it stood for. */
import { type StateKey, stateLabel } from '../../catalogue/states.js'
import { inPicturesOf } from '../../kinds/pictures.js'
import type { ShiftEvent } from '../../line/shift-event.js'
import { holdingAt } from '../../pictures/steps.js'
import type { Scenario } from '../../scenario/schema.js'
import { spell } from './events.js'

/** A place where the case was; `at` is a source or a piece. */
interface Stay {
  at: string
  from: number
  to: number
  /** Work on it begins, at a station. */
  served: number | null
}

/** States in which nothing keeps a case. */
const goingOn: ReadonlySet<StateKey> = new Set<StateKey>(['working', 'waiting', 'size-being-set'])
/** Shorter standing is not told, s. */
const least = 0.5
/** Causes that are told of one stay. */
const mostCauses = 2

/** Takes all events of a shift in order and tells the story of case `number`. */
export class CaseStory {
  private readonly stays: Stay[] = []
  private readonly states = new Map<string, [number, StateKey][]>()
  private arrived: ShiftEvent | null = null
  private gone: ShiftEvent | null = null

  constructor(
    private readonly number: number,
    private readonly scenario: Scenario,
  ) {}

  take(event: ShiftEvent): void {
    const { event: what, at, time, state } = event
    if (what === 'state') {
      const all = this.states.get(at)
      if (all) all.push([time, state!])
      else this.states.set(at, [[time, state!]])
    }
    if (event.case !== this.number) return
    const last = this.stays.at(-1)
    if (what === 'arrives') this.arrived = event
    if (what === 'arrives' || what === 'taken')
      this.stays.push({ at, from: time, to: Infinity, served: null })
    if (what === 'taken') last!.to = time
    if (what === 'service-begins') last!.served = time
    if (what === 'leaves' || what === 'spoilt' || what === 'turned-away') {
      this.gone = event
      last!.to = time
    }
  }

  /** The story, where the shift ended at `end`, s. */
  words(end: number): string {
    if (!this.arrived) return ''
    const kind = this.arrived.kind
    const to = this.gone?.time ?? end
    const how = this.gone
      ? endings[this.gone.event as keyof typeof endings](this.gone)
      : 'is still in the line at the end'
    const stays = this.stays.filter(({ from, to: until }) => Math.min(until, end) - from > 0)
    const width = Math.max(...stays.map(({ at }) => this.place(at).length))
    const lines = stays.map((stay) => {
      const own = { ...stay, to: Math.min(stay.to, end) }
      const next = this.stays[this.stays.indexOf(stay) + 1]?.at
      const why = this.standing(own, next)
      return `  ${this.place(stay.at).padEnd(width)}  ${spell(own.to - own.from)}${why}`
    })
    return `\nCase ${this.number} (${kind}) ${how}, ${spell(to - this.arrived.time)} after it arrived:\n${lines.join('\n')}\n`
  }

  private place(at: string): string {
    return at in this.scenario.line ? at : `before the line (${at})`
  }

  /** How long of its stay the case stood, and what for; nothing where it did not. */
  private standing({ at, from, to, served }: Stay, next: string | undefined): string {
    const keys = this.scenario.line[at]
    if (!keys) return next === undefined ? '' : `, waiting for room: ${this.causes(next, from, to)}`
    const { moves, length, speed } = inPicturesOf(keys).movement(keys, this.scenario)
    if (moves === 'accumulating' || moves === 'belt') {
      const stood = to - from - length / speed!
      if (!(stood >= least)) return ''
      // it stands behind others, and longest at the end: for its own piece only where that has a stop
      const own = this.spells(at, from, to).some(([state]) => state !== 'blocked')
      const why = own ? this.causes(at, from, to) : this.causes(next, to - stood, to)
      return `, ${spell(stood)} of that standing: ${why}`
    }
    const queued = served === null ? 0 : served - from
    const parts = [
      ...(queued >= least ? [`${spell(queued)} of that until its turn`] : []),
      ...(this.spells(at, served ?? from, to).length > 0
        ? [`held up: ${this.causes(at, served ?? from, to)}`]
        : []),
    ]
    return parts.map((part) => `, ${part}`).join('')
  }

  /** The spells in [from, to] in which a piece neither works nor waits, by state, the longest first. */
  private spells(at: string, from: number, to: number): [StateKey, number][] {
    const all = this.states.get(at) ?? []
    const inside = all.filter(([time]) => time > from && time < to)
    const first = holdingAt(all, from)
    const steps: [number, StateKey][] = first === undefined ? inside : [[from, first], ...inside]
    const sums = new Map<StateKey, number>()
    for (const [index, [begin, state]] of steps.entries()) {
      const lasts = (steps[index + 1]?.[0] ?? to) - begin
      if (!goingOn.has(state)) sums.set(state, (sums.get(state) ?? 0) + lasts)
    }
    return [...sums].filter(([, lasts]) => lasts >= least).sort((a, b) => b[1] - a[1])
  }

  private causes(at: string | undefined, from: number, to: number): string {
    if (at === undefined) return 'behind others'
    const spells = this.spells(at, from, to).slice(0, mostCauses)
    if (spells.length === 0) return `behind others, ${at} was busy`
    return spells.map(([state, lasts]) => `${at} ${stateLabel(state, ', ')} ${spell(lasts)}`).join('; ')
  }
}

const endings = {
  leaves: ({ as }: ShiftEvent) => `left the line${as === 'good' ? '' : `, ${as}`}`,
  spoilt: () => 'was spoilt and taken out',
  'turned-away': () => 'was turned away',
}
