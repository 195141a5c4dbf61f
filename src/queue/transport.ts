/** What carries messages between askers and workers: a server that both reach. `server` is the one that there is. */
import type { Presence } from './messages.js'

/** Where a task is. `failed`: given up, for those who took it ended again and again. */
export type Whereabouts = 'waits' | 'failed' | 'nowhere'

/** All of it may throw an `Error` with the words of the server, or wait as long as the server is away. */
export interface Transport {
  /** Keeps bytes under a name, for so many seconds. */
  put(name: string, bytes: Uint8Array, seconds: number): Promise<void>
  get(name: string): Promise<Uint8Array | null>
  /** Brings bytes and keeps them no longer. */
  fetch(name: string): Promise<Uint8Array | null>
  drop(names: readonly string[]): Promise<void>
  /** Puts a task into the queue; one that is there stands as it is. */
  add(id: string, task: Uint8Array): Promise<void>
  whereIs(id: string): Promise<Whereabouts>
  /** Takes a task that nobody does out of the queue. */
  remove(id: string): Promise<void>
  /** Calls `listener` with each task that somebody has done. */
  onDone(listener: (id: string) => void): Promise<void>
  /** Takes tasks, so many at once, until it is closed; `act` never throws but where its answer could not be kept. */
  take(atOnce: number, act: (id: string, task: Uint8Array) => Promise<void>): Promise<void>
  /** Says that somebody is there, for some seconds. */
  appear(id: string, presence: Presence): Promise<void>
  /** Who is there, by their ids. */
  present(): Promise<Map<string, Presence>>
  /** Ends what is in hand, then all. */
  close(): Promise<void>
}

/** How often somebody says that he is there, ms, and for how long that is believed, s. */
export const presenceEvery = 2000
export const presenceFor = 10
