/// <reference lib="dom" />
/** Replay of a recorded stretch in a page: the line from above while its cases move, with what is needed to look around in time. */

import { states } from '../catalogue/states.js'
import { has } from '../kinds/traits.js'
import type { Layout } from '../pictures/layout.js'
import { motionOf } from '../pictures/motion.js'
import { clockOf, stopsOf } from '../pictures/stops.js'
import type { Stretch } from '../shifts/stretch.js'
import { countAt, ReplayPicture } from './replay-draw.js'

const speeds = [1, 4, 16, 60]
const usual = 16
/** Seconds of the shift that an arrow key goes on or back, alone and with Shift. */
const stride = { short: 10, long: 60 }
/** Clock, bar and words are written anew after so long, ms: faster nobody reads. */
const wordsEvery = 120
/** Longest step between two pictures, s: after a pause of the browser it goes on where it was. */
const longestStep = 0.25

/**
 * Puts a replay of `stretch` into `root`, in place of what is there. It does not start by itself, which also suits those who
 * want no motion; it ends where the stretch ends. The page needs `replayStyle` and a policy that allows what it has.
 */
export class Replay {
  private time: number
  private speed = usual
  private isPlaying = false
  private before = 0
  private wordsAt = 0
  private picture: ReplayPicture | null = null
  private readonly stops: number[]
  private readonly standing: [number, number][][]
  private readonly canvas = document.createElement('canvas')
  private readonly view = element('div', 'replay-picture', { tabindex: '0', role: 'img' })
  private readonly play = element('button', '', { type: 'button' }, 'Play')
  private readonly onward = element('button', '', { type: 'button' }, 'Next stop')
  private readonly bar: HTMLInputElement
  private readonly clock = element('span', 'replay-clock')
  private readonly status = element('p', 'replay-status')
  private readonly speedButtons: HTMLButtonElement[]

  constructor(
    private readonly root: HTMLElement,
    private readonly layout: Layout,
    private readonly stretch: Stretch,
  ) {
    this.time = stretch.from
    const all = stopsOf(stretch)
    // planned ones come often and surprise nobody
    const unplanned = all.filter(({ kind }) => kind !== 'planned')
    const chosen = unplanned.length > 0 ? unplanned : all
    this.stops = [...new Set(chosen.map(({ from }) => from))].sort((a, b) => a - b)
    this.standing = standingOf(stretch)
    this.speedButtons = speeds.map((speed) => {
      const words = { type: 'button', 'aria-label': `${speed} times as fast as it happens` }
      const made = element('button', '', words, `${speed}×`)
      made.addEventListener('click', () => this.setSpeed(speed))
      return made
    })
    const { from, to } = stretch
    this.bar = element('input', '', {
      ...{ type: 'range', min: String(from), max: String(to), step: '1' },
      'aria-label': 'Time since the start of the shift',
    })
    this.build()
    this.setSpeed(usual)
    this.watch()
  }

  private build(): void {
    const { view, canvas, bar, play, onward } = this
    const names = this.layout.pieces.map(({ name }) => name).join(', ')
    view.setAttribute(
      'aria-label',
      `The line from above, in the direction of travel from left to right: ${names}`,
    )
    view.append(canvas)
    play.addEventListener('click', () => this.toggle())
    onward.addEventListener('click', () => this.toNextStop())
    onward.disabled = this.stops.length === 0
    bar.addEventListener('input', () => this.goTo(Number(bar.value)))
    const group = (label: string) => ({ role: 'group', 'aria-label': label })
    const speedBox = element('span', 'replay-speeds', group('Speed'), ...this.speedButtons)
    const controls = element('div', 'replay-controls', {}, play, speedBox, onward, this.clock)
    const help = `Space plays and pauses; left and right arrows go ${stride.short} s back and on, with Shift ${stride.long} s; up and down change the speed; N goes to the next stop. A dark line along a case is its tape.`
    const box = element(
      ...(['div', 'replay', group('Replay of the line')] as const),
      ...[view, controls, bar, this.status, element('p', 'replay-help', {}, help)],
    )
    box.addEventListener('keydown', (event) => this.key(event))
    this.root.replaceChildren(box)
  }

  /** Works out the motion when the replay is about to be seen, and draws anew when its width or the colours change. */
  private watch(): void {
    const redraw = () => {
      const width = this.view.clientWidth
      if (!this.picture || width === 0) return
      this.picture.fit(width)
      this.show()
    }
    const prepare = () => {
      const { canvas, layout, stretch, standing } = this
      this.picture ??= new ReplayPicture(canvas, layout, stretch, motionOf(stretch, layout), standing)
      redraw()
    }
    new ResizeObserver(redraw).observe(this.view)
    matchMedia('(prefers-color-scheme: dark)').addEventListener('change', redraw)
    const seen = new IntersectionObserver(
      (entries) => {
        if (!entries.some(({ isIntersecting }) => isIntersecting)) return
        seen.disconnect()
        prepare()
      },
      { rootMargin: '400px' },
    )
    seen.observe(this.view)
  }

  // --- what people do ---

  private toggle(): void {
    if (this.isPlaying) this.pause()
    else {
      if (this.time >= this.stretch.to) this.time = this.stretch.from
      this.isPlaying = true
      this.before = performance.now()
      this.status.setAttribute('aria-live', 'off')
      this.play.textContent = 'Pause'
      requestAnimationFrame(this.step)
    }
  }

  private pause(): void {
    this.isPlaying = false
    this.status.setAttribute('aria-live', 'polite')
    this.play.textContent = 'Play'
    this.show()
  }

  private setSpeed(speed: number): void {
    this.speed = speed
    for (const [index, each] of this.speedButtons.entries())
      each.setAttribute('aria-pressed', String(speeds[index] === speed))
  }

  private goTo(time: number): void {
    this.time = Math.min(Math.max(time, this.stretch.from), this.stretch.to)
    this.show()
  }

  /** After the last stop the first one comes again. */
  private toNextStop(): void {
    const next = this.stops.find((time) => time > this.time + 1e-6) ?? this.stops[0]
    if (next !== undefined) this.goTo(next)
  }

  private key(event: KeyboardEvent): void {
    const { key, target, shiftKey, ctrlKey, altKey, metaKey } = event
    // buttons and the bar have keys of their own
    if (ctrlKey || altKey || metaKey || (key === ' ' && target instanceof HTMLButtonElement)) return
    const by = shiftKey ? stride.long : stride.short
    const faster = (more: number) => {
      const place = speeds.indexOf(this.speed) + more
      this.setSpeed(speeds[Math.max(0, Math.min(speeds.length - 1, place))]!)
    }
    const keys: Record<string, () => void> = {
      ' ': () => this.toggle(),
      ArrowRight: () => this.goTo(this.time + by),
      ArrowLeft: () => this.goTo(this.time - by),
      ArrowUp: () => faster(1),
      ArrowDown: () => faster(-1),
      Home: () => this.goTo(this.stretch.from),
      End: () => this.goTo(this.stretch.to),
      n: () => this.toNextStop(),
      N: () => this.toNextStop(),
    }
    if (!Object.hasOwn(keys, key)) return
    keys[key]!()
    event.preventDefault()
  }

  // --- pictures ---

  private readonly step = (now: number): void => {
    if (!this.isPlaying || !this.root.isConnected) return
    this.time += Math.min(longestStep, Math.max(0, now - this.before) / 1000) * this.speed
    this.before = now
    if (this.time >= this.stretch.to) {
      this.time = this.stretch.to
      this.pause()
      return
    }
    this.picture?.draw(this.time)
    if (now - this.wordsAt >= wordsEvery) this.tell(now)
    requestAnimationFrame(this.step)
  }

  private show(): void {
    this.picture?.draw(this.time)
    this.tell(performance.now())
  }

  /** Clock, bar and the line in words. */
  private tell(now: number): void {
    this.wordsAt = now
    const clock = clockOf(this.time, true)
    this.clock.textContent = `${clock} into the shift`
    this.bar.value = String(this.time)
    this.bar.setAttribute('aria-valuetext', clock)
    const words = this.inWords()
    if (this.status.textContent !== words) this.status.textContent = words
  }

  private inWords(): string {
    const { stretch, layout, time, picture } = this
    const held = countAt(stretch.held, time)
    const doing = layout.pieces.flatMap((piece, index) => {
      const state = picture?.stateOf(index, time) ?? 'waiting'
      const isPlain =
        state === 'working' || state === 'waiting' || (state === 'blocked' && !has(piece, 'tapes'))
      return isPlain ? [] : [`${piece.name}: ${states[state].short.replace(': ', ', ')}`]
    })
    const sources = stretch.sources.flatMap(({ name, whenFull }, source) => {
      const count = countAt(this.standing[source]!, time)
      if (count === 0) return []
      return [whenFull === 'queue' ? `${count} of ${name} on the floor` : `${name} waits for room`]
    })
    const isBreak = stretch.breaks.some(([begin, end]) => begin <= time && time < end)
    const parts = [...(isBreak ? ['break'] : []), ...doing, ...sources]
    return `${held} ${held === 1 ? 'case' : 'cases'} in the line. ${parts.length > 0 ? `${parts.join('; ')}.` : 'Nothing stands.'}`
  }
}

/** Of each source how many of its cases stand before the line, from each instant on at which that changes. */
export const standingOf = ({ sources, cases }: Stretch): [number, number][][] =>
  sources.map((_, source) => {
    const changes = cases.flatMap(({ came, path }): [number, number][] => {
      const taken = path[0]?.[1] ?? Infinity
      const isWaiting = came[0] === source && taken > came[1]
      return isWaiting ? [came[1], taken].map((time, by) => [time, 1 - 2 * by]) : []
    })
    changes.sort((a, b) => a[0] - b[0] || b[1] - a[1])
    let count = 0
    return changes.map(([time, by]): [number, number] => {
      count += by
      return [time, count]
    })
  })

/** An element with a class, if any, its attributes, and what is in it. */
function element<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  className: string,
  attributes: Record<string, string> = {},
  ...inside: (Node | string)[]
): HTMLElementTagNameMap[Name] {
  const made = document.createElement(name)
  if (className !== '') made.className = className
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value)
  made.append(...inside)
  return made
}
