/** The line from above in the page: its cases move, and each piece opens its fields. */
import { useSignal } from '@preact/signals'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { Layout } from '../../../pictures/layout.js'
import type { Move } from '../../../pictures/motion.js'
import type { Stretch } from '../../../shifts/stretch.js'
import { LineControls } from './line-controls.js'
import { type Instant, LinePlayer, type Place } from './player.js'

interface LineViewProps {
  layout: Layout
  stretch: Stretch
  moves: readonly Move[]
  /** Name of the piece of which the fields are open. */
  chosen: string | null
  /** The name that a piece has in the file: there those that stand side by side have one. */
  fileName: (piece: string) => string
  choose: (piece: string) => void
}

export function LineView({ layout, stretch, moves, chosen, fileName, choose: open }: LineViewProps) {
  // the canvas is listened to once, and the names of pieces change
  const named = useRef(open)
  named.current = (piece) => open(fileName(piece))
  const choose = (piece: string) => named.current(piece)
  const box = useRef<HTMLDivElement>(null)
  const canvas = useRef<HTMLCanvasElement>(null)
  const player = useSignal<LinePlayer | null>(null)
  const [places, setPlaces] = useState<readonly Place[]>([])
  const [now, setNow] = useState<Instant>({ time: stretch.from, clock: '', doing: [], onLine: 0 })
  const isPlaying = useSignal(false)
  const play = (on: boolean) => {
    isPlaying.value = on
    if (on) player.value?.playhead.play()
    else player.value?.playhead.pause()
  }
  useEffect(() => {
    const made = new LinePlayer(canvas.current!, setNow, setPlaces)
    player.value = made
    return whileShown(box.current!, canvas.current!, { player: made, play, choose })
  }, [])
  useEffect(() => {
    player.value?.take(layout, stretch, moves)
    player.value?.fit(box.current!.clientWidth)
    // what had nothing to play before begins
    if (isPlaying.value) player.value?.playhead.play()
  }, [stretch])
  return (
    <section class="line" aria-label="The line from above, in the direction of travel from left to right">
      <div class="line-picture" ref={box}>
        <canvas ref={canvas} />
        {places.map(({ name, left, top, width, height }, index) => (
          <button
            type="button"
            key={name}
            class="piece"
            aria-label={`${name}: ${now.doing[index] ?? ''}`}
            aria-pressed={fileName(name) === chosen}
            title={name}
            style={boxOf(left, top, width, height)}
            onClick={() => choose(name)}
          />
        ))}
      </div>
      {player.value ? (
        <LineControls
          playhead={player.value.playhead}
          isPlaying={isPlaying.value}
          {...{ play, now, stretch }}
        />
      ) : null}
    </section>
  )
}

const boxOf = (left: number, top: number, width: number, height: number) => ({
  ...{ left: `${left}px`, top: `${top}px` },
  ...{ width: `${width}px`, height: `${height}px` },
})

interface Shown {
  player: LinePlayer
  play: (on: boolean) => void
  choose: (piece: string) => void
}

/** Fits the picture, lets it move unless somebody asks for stillness, and takes clicks on what is drawn. */
function whileShown(
  box: HTMLElement,
  canvas: HTMLCanvasElement,
  { player, play, choose }: Shown,
): () => void {
  const ends = new AbortController()
  const { signal } = ends
  const fit = () => player.fit(box.clientWidth)
  const sized = new ResizeObserver(fit)
  sized.observe(box)
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', fit, { signal })
  const still = matchMedia('(prefers-reduced-motion: reduce)')
  const move = () => play(!still.matches)
  still.addEventListener('change', move, { signal })
  const meet = ({ offsetX, offsetY }: MouseEvent) => {
    const met = player.pieceAt(offsetX, offsetY)
    if (met !== null) choose(met)
  }
  // the buttons over the pieces do the same for keys
  canvas.addEventListener('click', meet, { signal })
  // it starts with the first stretch that it is given
  queueMicrotask(move)
  return () => {
    ends.abort()
    player.playhead.pause()
    sized.disconnect()
  }
}
