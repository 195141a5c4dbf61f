/** The workers' end: one that studies, others that simulate for it. */
import type { Executor } from '../../shifts/executor.js'
import { type Brought, bring, type Results, Simulator, type Task, taken } from '../../shifts/work.js'
import type { Role } from './client.js'
import type { Ask, Told } from './messages.js'
import { Tryout } from './tryout.js'

/** What a worker has of itself. */
interface Own {
  onmessage: ((event: MessageEvent) => void) | null
  postMessage(told: Told): void
}

/** Waits to be told which worker this is, and becomes it. */
export function serve(own: Own): void {
  own.onmessage = ({ data }: MessageEvent<Role>) => {
    if (data.role === 'simulator') return simulate(data.port)
    const tryout = new Tryout(overPorts(data.simulators), (told) => own.postMessage(told))
    own.onmessage = ({ data: ask }: MessageEvent<Ask>) => void tryout.take(ask)
  }
}

/** Does the tasks that come by `port`, one after the other. */
export function simulate(port: MessagePort): void {
  const simulator = new Simulator()
  port.onmessage = ({ data }: MessageEvent<Task>) => port.postMessage(bring(simulator, data))
}

/** One who simulates at the other end of a port: one task at a time. */
interface Lane {
  port: MessagePort
  take: ((brought: Brought) => void) | null
}

/** An executor of those who simulate at the other ends of `ports`. */
export function overPorts(ports: readonly MessagePort[]): Executor {
  const waiting: { task: Task; take: (brought: Brought) => void }[] = []
  const lanes: Lane[] = ports.map((port) => ({ port, take: null }))
  const next = (lane: Lane): void => {
    const asked = waiting.shift()
    lane.take = asked?.take ?? null
    if (asked) lane.port.postMessage(asked.task)
  }
  for (const lane of lanes)
    lane.port.onmessage = ({ data }: MessageEvent<Brought>) => {
      const { take } = lane
      next(lane)
      take?.(data)
    }
  return {
    size: ports.length,
    async work<Asked extends Task>(task: Asked) {
      const brought = await new Promise<Brought>((take) => {
        waiting.push({ task, take })
        const free = lanes.find((lane) => lane.take === null)
        if (free) next(free)
      })
      return taken(brought) as Results<Asked>
    },
    close: async () => {
      for (const { port } of lanes) port.close()
    },
  }
}
