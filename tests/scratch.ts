/** One folder for all that a run of the tests puts into the temporary folder, removed at its end, whatever failed. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'

/** Before the first test begins; what it hands back is done after the last. */
export default function scratch(): () => void {
  const folder = mkdtempSync(path.join(tmpdir(), 'tapeshift-tests-'))
  // the threads and processes that run tests, and what those start, make theirs in it
  process.env.TMPDIR = folder
  return () => rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 })
}
