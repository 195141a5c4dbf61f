/** The public face in Node: the same, and threads to simulate with. */
export * from './index.js'
export { threads } from './shifts/threads/pool.js'
