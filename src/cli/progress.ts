/** Progress of a long study: a bar on a terminal, a plain line now and then elsewhere. */
import { SingleBar } from 'cli-progress'
import type { Io } from './io.js'

/** Told of shifts done; `stop` clears the line. */
export interface Progress {
  update(done: number): void
  stop(): void
}

/** Milliseconds between two plain lines. */
const plainEvery = 10_000

const silent: Progress = { update: () => {}, stop: () => {} }

/** Progress towards `total` shifts on standard error. */
export function startProgress(total: number, io: Io, isQuiet: boolean): Progress {
  if (isQuiet) return silent
  const started = Date.now()
  const rate = (done: number) => done / Math.max(0.001, (Date.now() - started) / 1000)
  if (io.stderr.isTTY && io.env.TERM !== 'dumb') {
    const bar = new SingleBar({
      stream: io.stderr as NodeJS.WritableStream,
      format: 'simulating  {bar}  {value} of {total} shifts, {rate} a second, {left} s left',
      barCompleteChar: '=',
      barIncompleteChar: ' ',
      hideCursor: true,
      clearOnComplete: true,
      fps: 8,
    })
    const payload = (done: number) => ({
      rate: rate(done).toFixed(0),
      left: Math.ceil((total - done) / Math.max(1e-9, rate(done))),
    })
    bar.start(total, 0, { rate: '-', left: '-' })
    return { update: (done) => bar.update(done, payload(done)), stop: () => bar.stop() }
  }
  let said = started
  return {
    update: (done) => {
      if (Date.now() - said < plainEvery) return
      said = Date.now()
      io.stderr.write(`simulated ${done} of ${total} shifts, ${rate(done).toFixed(0)} a second\n`)
    },
    stop: () => {},
  }
}
