/** The demo scenarios as the command line loads them, CSV files beside them included. */

import { readdirSync } from 'node:fs'
import { Readable, Writable } from 'node:stream'
import { fileURLToPath } from 'node:url'
import { loadForCommand } from '../src/cli/scenario.js'
import type { Scenario } from '../src/scenario/schema.js'

export const demoFolder = fileURLToPath(new URL('../scenarios/', import.meta.url))

/** Names of the demos, without their ending. */
export const demos = readdirSync(demoFolder)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => name.slice(0, -5))

/** The scenario of a demo, with changes by path. */
export async function loadDemo(name: string, sets: string[] = []): Promise<Scenario> {
  const nowhere = new Writable({ write: (_chunk, _encoding, done) => done() })
  const { scenario } = await loadForCommand(
    `${name}.yaml`,
    { set: sets },
    {
      stdin: Readable.from([]),
      stdout: nowhere,
      stderr: nowhere,
      env: {},
      cwd: demoFolder,
      onInterrupt: () => () => {},
    },
  )
  return scenario
}
