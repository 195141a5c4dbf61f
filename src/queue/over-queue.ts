/** All that a command needs of a queue, in one part that is loaded where one is asked for. */
export { readAddress } from './address.js'
export { QueueExecutor } from './executor.js'
export { asRefusal, joined } from './server.js'
export { QueueWorker } from './worker.js'
