/** The page's end of the study: workers made of the page's own script, one that studies and as many as the machine has cores that simulate. */
import type { Ask, Told } from './messages.js'

/** Answers what is asked, the last ask alone. */
export interface Study {
  ask(ask: Ask): void
  close(): void
}

/** What a worker is told first: which of the two it is, and how it speaks with the other. */
export type Role =
  | { role: 'study'; simulators: readonly MessagePort[] }
  | { role: 'simulator'; port: MessagePort }

/** Simulators at most: more hardly make a study faster, and each holds the program once more. */
const mostSimulators = 8

/** Starts the workers; `script` is the text of the page's program, `tell` is given what is told. */
export function startStudy(script: string, tell: (told: Told) => void): Study {
  const address = URL.createObjectURL(new Blob([script], { type: 'text/javascript' }))
  const count = Math.max(1, Math.min(mostSimulators, navigator.hardwareConcurrency || 1))
  const studying = new Worker(address)
  const simulators = Array.from({ length: count }, () => ({
    worker: new Worker(address),
    channel: new MessageChannel(),
  }))
  for (const { worker, channel } of simulators)
    worker.postMessage({ role: 'simulator', port: channel.port1 } satisfies Role, [channel.port1])
  const ports = simulators.map(({ channel }) => channel.port2)
  studying.postMessage({ role: 'study', simulators: ports } satisfies Role, ports)
  studying.onmessage = ({ data }: MessageEvent<Told>) => tell(data)
  let number = 0
  const broken = ({ message }: ErrorEvent) => tell({ what: 'bug', number, message })
  for (const worker of [studying, ...simulators.map((each) => each.worker)]) worker.onerror = broken
  return {
    ask(ask) {
      number = ask.number
      studying.postMessage(ask)
    },
    close() {
      for (const { worker } of simulators) worker.terminate()
      studying.terminate()
      URL.revokeObjectURL(address)
    },
  }
}
