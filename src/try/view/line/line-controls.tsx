/** What moves the picture of the line: on and off, how fast, and where in the recorded stretch. */
import { useState } from 'preact/hooks'
import { type Playhead, speeds, usualSpeed } from '../../../page/playhead.js'
import type { Stretch } from '../../../shifts/stretch.js'
import type { Instant } from './player.js'

interface LineControlsProps {
  playhead: Playhead
  isPlaying: boolean
  play: (on: boolean) => void
  now: Instant
  stretch: Stretch
}

/** Seconds of the shift that the keys of time go back and on. */
const stride = 10

export function LineControls({ playhead, isPlaying, play, now, stretch }: LineControlsProps) {
  const [speed, setSpeed] = useState(usualSpeed)
  const isEmpty = stretch.to <= stretch.from
  return (
    <div class="line-controls">
      <button type="button" disabled={isEmpty} onClick={() => play(!isPlaying)}>
        {isPlaying ? 'Pause' : 'Play'}
      </button>
      <label class="speed">
        <span class="unseen">Speed</span>
        <select
          value={String(speed)}
          onChange={({ currentTarget }) => {
            playhead.speed = Number(currentTarget.value)
            setSpeed(playhead.speed)
          }}
        >
          {speeds.map((each) => (
            <option key={each} value={each}>
              {each}× as fast
            </option>
          ))}
        </select>
      </label>
      <button
        type="button"
        disabled={playhead.stops.length === 0}
        onClick={() => {
          play(false)
          playhead.toNextStop()
        }}
      >
        Next stop
      </button>
      <input
        type="range"
        aria-label="Time since the start of the shift"
        aria-valuetext={now.clock}
        min={stretch.from}
        max={stretch.to}
        step={stride}
        value={now.time}
        disabled={isEmpty}
        onInput={({ currentTarget }) => {
          play(false)
          playhead.goTo(Number(currentTarget.value))
        }}
      />
      <span class="clock">
        {isEmpty ? 'A shift is being recorded …' : `${now.clock} · ${now.onLine} on the line`}
      </span>
    </div>
  )
}
