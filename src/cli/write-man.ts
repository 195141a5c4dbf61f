/** Writes the manual page beside the bundled program: a step of the build. */
import { PassThrough } from 'node:stream'
import { fileURLToPath } from 'node:url'
import { manPage } from '../manual/man.js'
import { described, manualOfProgram } from './described.js'
import { writeWhole } from './files.js'
import { programOf } from './program.js'

const stream = new PassThrough()
const io = {
  ...{ stdin: stream, stdout: stream, stderr: stream, env: {}, cwd: '.' },
  onInterrupt: () => () => {},
}
const program = programOf(io, () => {})
await writeWhole(
  fileURLToPath(new URL('../man/tapeshift.1', import.meta.url)),
  manPage(described(program), manualOfProgram(program).topics),
)
