/** Progress of a long study: a bar on a terminal, a plain line now and then elsewhere. */
import { SingleBar } from 'cli-progress'
import type { Extent, Progress } from '../shifts/simulation.js'
import type { Io } from './io.js'

/** Milliseconds between two plain lines. */
const plainEvery = 10_000

const silent: Progress = { update: () => {}, stop: () => {} }

/** Progress of a study on standard error. */
export function startProgress(
  { total, known, isOpen, counts }: Extent,
  io: Io,
  isQuiet: boolean,
  /** Who simulates elsewhere, and how fast. */
  workersTold: (() => string) | null = null,
): Progress {
  if (isQuiet) return silent
  const started = Date.now()
  const rate = (worked: number) => worked / Math.max(0.001, (Date.now() - started) / 1000)
  // a search rules most designs out, and nobody can tell how many
  const isSearch = isOpen && counts !== 'shifts'
  const left = (done: number, free: number) =>
    isSearch
      ? ''
      : `, ${isOpen ? 'at most ' : ''}${timeLeft((total - done) / Math.max(1e-9, rate(done - free)))} left`
  const workers = () => (workersTold ? ` (${workersTold()})` : '')
  const most = isOpen ? `at most ${total}` : String(total)
  if (io.stderr.isTTY && io.env.TERM !== 'dumb') {
    const bar = new SingleBar({
      stream: io.stderr as NodeJS.WritableStream,
      format: `simulating  {bar}  {value} of ${most} ${counts}, {rate}{left}{workers}`,
      barCompleteChar: '=',
      barIncompleteChar: ' ',
      hideCursor: true,
      clearOnComplete: true,
      fps: 8,
    })
    bar.start(total, known, { rate: '- a second', left: '', workers: '' })
    return {
      update: (done, free) =>
        bar.update(done, {
          rate: rateText(rate(done - free)),
          left: left(done, free),
          workers: workers(),
        }),
      stop: () => bar.stop(),
    }
  }
  let said = started
  return {
    update: (done, free) => {
      if (Date.now() - said < plainEvery) return
      said = Date.now()
      const [verb, more] =
        counts === 'shifts' ? ['simulated', ''] : ['done with', ` ${done - free} by simulating,`]
      io.stderr.write(
        `${verb} ${done} of ${most} ${counts},${more} ${rateText(rate(done - free))}${left(done, free)}${workers()}\n`,
      )
    },
    stop: () => {},
  }
}

/** `210 a second`, `2.4 a second`, `12 a minute`, `0.5 an hour`. */
function rateText(perSecond: number): string {
  const words = (rate: number) => rate.toFixed(rate < 9.95 ? 1 : 0)
  if (perSecond >= 0.95) return `${words(perSecond)} a second`
  return perSecond >= 0.95 / 60 ? `${words(perSecond * 60)} a minute` : `${words(perSecond * 3600)} an hour`
}

/** `12 s`, `4 min`, `3 h`. */
function timeLeft(seconds: number): string {
  if (seconds < 100) return `${Math.ceil(seconds)} s`
  return seconds < 6000 ? `${Math.round(seconds / 60)} min` : `${Math.round(seconds / 3600)} h`
}
