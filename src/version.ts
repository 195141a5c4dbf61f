/** Which program it is, and what runs it: both stand in every document. */
import program from '../package.json' with { type: 'json' }

/** The version of the program, from its package. */
export const version: string = program.version

/** The version of Node; in a browser the word for that. */
export const runtime: string =
  (globalThis as { process?: { version?: string } }).process?.version ?? 'a browser'
