/// <reference lib="dom" />
/** Replay of a recorded stretch in a page: the line from above while its cases move, with what is needed to look around in time. */

import { states } from '../catalogue/states.js'
import { has } from '../kinds/traits.js'
import type { Layout } from '../pictures/layout.js'
import { type Move, motionOf } from '../pictures/motion.js'
import { countAt, type Standing, standingOf } from '../pictures/standing.js'
import { clockOf } from '../pictures/stops.js'
import type { Stretch } from '../shifts/stretch.js'
import { Playhead, speeds, usualSpeed } from './playhead.js'
import { ReplayPicture } from './replay-draw.js'

/** Seconds of the shift that an arrow key goes on or back, alone and with Shift. */
const stride = { short: 10, long: 60 }
/**
 * Puts a replay of `stretch` into `root`, in place of what is there. It does not start by itself, which also suits those who
 * want no motion; it ends where the stretch ends. The page needs `replayStyle` and a policy that allows what it has.
 */
export class Replay {
  private readonly playhead: Playhead
  /** At first without cases, of which the motion is worked out when somebody is about to see it. */
  private picture: ReplayPicture
  private readonly standing: Standing
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
    this.playhead = new Playhead({
      ...{ box: root, draw: () => this.picture.draw(this.playhead.time), tell: () => this.tell() },
      ended: () => this.pause(),
    })
    this.playhead.take(stretch, stretch.from)
    this.standing = standingOf(stretch)
    this.picture = this.pictureOf([])
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
    this.setSpeed(usualSpeed)
    this.watch()
  }

  private build(): void {
    const { view, canvas, bar, play, onward, playhead } = this
    const names = this.layout.pieces.map(({ name }) => name).join(', ')
    view.setAttribute(
      'aria-label',
      `The line from above, in the direction of travel from left to right: ${names}`,
    )
    view.append(canvas)
    play.addEventListener('click', () => this.toggle())
    onward.addEventListener('click', () => playhead.toNextStop())
    onward.disabled = playhead.stops.length === 0
    bar.addEventListener('input', () => playhead.goTo(Number(bar.value)))
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

  private pictureOf(moves: readonly Move[]): ReplayPicture {
    const { canvas, layout, stretch, standing } = this
    return new ReplayPicture(canvas, layout, stretch, moves, standing)
  }

  /** Works out the motion when the replay is about to be seen, and draws anew when its width or the colours change. */
  private watch(): void {
    const redraw = () => {
      const width = this.view.clientWidth
      if (width === 0) return
      this.picture.fit(width)
      this.playhead.show()
    }
    const prepare = () => {
      this.picture = this.pictureOf(motionOf(this.stretch, this.layout))
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
    if (this.playhead.isPlaying) this.pause()
    else {
      this.playhead.play()
      this.status.setAttribute('aria-live', 'off')
      this.play.textContent = 'Pause'
    }
  }

  private pause(): void {
    this.playhead.pause()
    this.status.setAttribute('aria-live', 'polite')
    this.play.textContent = 'Play'
    this.playhead.show()
  }

  private setSpeed(speed: number): void {
    this.playhead.speed = speed
    for (const [index, each] of this.speedButtons.entries())
      each.setAttribute('aria-pressed', String(speeds[index] === speed))
  }

  private key(event: KeyboardEvent): void {
    const { key, target, shiftKey, ctrlKey, altKey, metaKey } = event
    // buttons and the bar have keys of their own
    if (ctrlKey || altKey || metaKey || (key === ' ' && target instanceof HTMLButtonElement)) return
    const { playhead, stretch } = this
    const by = shiftKey ? stride.long : stride.short
    const faster = (more: number) => {
      const place = speeds.indexOf(playhead.speed) + more
      this.setSpeed(speeds[Math.max(0, Math.min(speeds.length - 1, place))]!)
    }
    const keys: Record<string, () => void> = {
      ' ': () => this.toggle(),
      ArrowRight: () => playhead.goTo(playhead.time + by),
      ArrowLeft: () => playhead.goTo(playhead.time - by),
      ArrowUp: () => faster(1),
      ArrowDown: () => faster(-1),
      Home: () => playhead.goTo(stretch.from),
      End: () => playhead.goTo(stretch.to),
      n: () => playhead.toNextStop(),
      N: () => playhead.toNextStop(),
    }
    if (!Object.hasOwn(keys, key)) return
    keys[key]!()
    event.preventDefault()
  }

  // --- pictures ---

  /** Clock, bar and the line in words. */
  private tell(): void {
    const { time } = this.playhead
    const clock = clockOf(time, true)
    this.clock.textContent = `${clock} into the shift`
    this.bar.value = String(time)
    this.bar.setAttribute('aria-valuetext', clock)
    const words = this.inWords()
    if (this.status.textContent !== words) this.status.textContent = words
  }

  private inWords(): string {
    const { stretch, layout, picture } = this
    const { time } = this.playhead
    const count = picture.countOn(time)
    const doing = layout.pieces.flatMap((piece, index) => {
      const state = picture.stateOf(index, time)
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
    return `${count} ${count === 1 ? 'case' : 'cases'} on the line. ${parts.length > 0 ? `${parts.join('; ')}.` : 'Nothing stands.'}`
  }
}

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
