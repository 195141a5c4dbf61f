/** The line from above in the page: its cases move, and each piece opens its fields. */
import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import type { Layout } from '../../../pictures/layout.js'
import type { Stretch } from '../../../shifts/stretch.js'
import { type Instant, LinePlayer, type Place, speeds, usualSpeed } from './player.js'

interface LineViewProps {
  layout: Layout
  stretch: Stretch
  /** Name of the piece of which the fields are open. */
  chosen: string | null
  choose: (piece: string) => void
}

const isStill = () => matchMedia('(prefers-reduced-motion: reduce)').matches

/** Seconds of the shift that the keys of time go back and on. */
const stride = 10

export function LineView({ layout, stretch, chosen, choose }: LineViewProps) {
  const box = useRef<HTMLDivElement>(null)
  const canvas = useRef<HTMLCanvasElement>(null)
  const player = useRef<LinePlayer | null>(null)
  const places = useSignal<readonly Place[]>([])
  const now = useSignal<Instant>({ time: stretch.from, clock: '', doing: [], held: 0 })
  const isPlaying = useSignal(false)
  const speed = useSignal(usualSpeed)
  const play = (on: boolean) => {
    isPlaying.value = on
    if (on) player.current?.play()
    else player.current?.pause()
  }
  useEffect(() => {
    const made = new LinePlayer(
      canvas.current!,
      (instant) => {
        now.value = instant
      },
      (found) => {
        places.value = found
      },
    )
    player.current = made
    return whileSeen(box.current!, made, play)
  }, [])
  useEffect(() => {
    player.current?.take(layout, stretch)
    player.current?.fit(box.current!.clientWidth)
  }, [layout, stretch])
  const hit = ({ offsetX, offsetY }: MouseEvent) => player.current?.pieceAt(offsetX, offsetY) ?? null
  return (
    <section class="line" aria-label="The line from above, in the direction of travel from left to right">
      <div class="line-picture" ref={box}>
        <canvas
          ref={canvas}
          aria-hidden="true"
          onClick={(event) => {
            const met = hit(event)
            if (met) choose(met)
          }}
        />
        {places.value.map(({ name, left, top, width, height }, index) => (
          <button
            type="button"
            key={name}
            class="piece"
            aria-label={`${name}: ${now.value.doing[index] ?? ''}`}
            aria-pressed={name === chosen}
            title={name}
            style={{ left, top, width, height }}
            onClick={() => choose(name)}
          />
        ))}
      </div>
      <div class="line-controls">
        <button type="button" onClick={() => play(!isPlaying.value)}>
          {isPlaying.value ? 'Pause' : 'Play'}
        </button>
        <label class="speed">
          <span class="unseen">Speed</span>
          <select
            value={String(speed.value)}
            onChange={({ currentTarget }) => {
              speed.value = Number(currentTarget.value)
              player.current!.speed = speed.value
            }}
          >
            {speeds.map((each) => (
              <option key={each} value={each}>
                {each}× as fast
              </option>
            ))}
          </select>
        </label>
        <button type="button" disabled={player.current?.hasStops !== true} onClick={() => player.current?.toNextStop()}>
          Next stop
        </button>
        <input
          type="range"
          aria-label="Time since the start of the shift"
          aria-valuetext={now.value.clock}
          min={stretch.from}
          max={stretch.to}
          step={stride}
          value={now.value.time}
          onInput={({ currentTarget }) => {
            play(false)
            player.current?.goTo(Number(currentTarget.value))
          }}
        />
        <span class="clock">
          {now.value.clock} · {now.value.held} in the line
        </span>
      </div>
    </section>
  )
}

/** Fits the picture, and lets it move while it is seen and nobody asks for stillness. */
function whileSeen(box: HTMLElement, player: LinePlayer, play: (on: boolean) => void): () => void {
  const fit = () => player.fit(box.clientWidth)
  const sized = new ResizeObserver(fit)
  sized.observe(box)
  const dark = matchMedia('(prefers-color-scheme: dark)')
  dark.addEventListener('change', fit)
  const still = matchMedia('(prefers-reduced-motion: reduce)')
  const stop = () => still.matches && play(false)
  still.addEventListener('change', stop)
  if (!isStill()) play(true)
  return () => {
    player.pause()
    sized.disconnect()
    dark.removeEventListener('change', fit)
    still.removeEventListener('change', stop)
  }
}
