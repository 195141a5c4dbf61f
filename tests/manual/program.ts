/** The program and its manual, for tests that look at what they say. */
import { PassThrough } from 'node:stream'
import { manualOfProgram } from '../../src/cli/described.js'
import { programOf } from '../../src/cli/program.js'

const stream = new PassThrough()

export const program = programOf(
  {
    ...{ stdin: stream, stdout: stream, stderr: stream, env: {}, cwd: '.' },
    onInterrupt: () => () => {},
  },
  () => {},
)

export const manual = manualOfProgram(program)
