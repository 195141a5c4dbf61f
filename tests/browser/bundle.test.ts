/** The core runs in a browser: bundled for one, it pulls in nothing of Node; and the arrows between rooms run one way. */

import { fileURLToPath } from 'node:url'
import { createContext, runInContext } from 'node:vm'
import { build } from 'rolldown'
import { beforeAll, describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))
/** Its entry: what a page would use of the core. */
const entry = 'core'
const contents = `
  export { loadScenario } from './src/scenario/load.ts'
  export { jsonSchemaText } from './src/scenario/json-schema.ts'
  export { starterScenario } from './src/scenario/starter.ts'
  export { Line } from './src/line/line.ts'
  export { replicate } from './src/shifts/replicate.ts'
  export { inProcess } from './src/shifts/in-process.ts'
  export { runResult } from './src/questions/run/document.ts'
  export { checkScenario } from './src/hand/check.ts'
  export { cautions } from './src/trade/cautions.ts'`

let code: string
let modules: readonly string[]
let outside: readonly string[]

beforeAll(async () => {
  const { output } = await build({
    cwd: root,
    input: entry,
    plugins: [
      {
        name: 'entry',
        resolveId: (id) => (id === entry ? `${root}/${entry}.ts` : null),
        load: (id) => (id === `${root}/${entry}.ts` ? { code: contents, moduleType: 'ts' } : null),
      },
    ],
    platform: 'browser',
    output: { format: 'iife', name: 'core' },
    write: false,
    logLevel: 'silent',
  })
  const [chunk] = output
  code = chunk.code
  modules = chunk.moduleIds
  outside = chunk.imports
})

describe('the core in a browser', () => {
  it('imports nothing of Node', () => {
    expect(outside).toEqual([])
    expect(modules.some((path) => path.includes('/src/line/'))).toBe(true)
  })

  it('simulates where there is no process, no require and no Buffer', async () => {
    const context = createContext({ console, setTimeout, structuredClone, performance })
    const shown = await runInContext(
      `${code}
      (async () => {
        const { scenario } = core.loadScenario(core.starterScenario)
        const { shifts } = await core.replicate(core.inProcess(), { seed: 'browser', scenario, shifts: 2 })
        return [typeof process, typeof require, shifts.length, shifts[0].values.length > 20]
      })()`,
      context,
    )
    expect([...shown]).toEqual(['undefined', 'undefined', 2, true])
  })
})

describe('a thread that simulates', () => {
  it('loads neither the schema nor what reads files, for it is given scenarios that are read', async () => {
    const { output } = await build({
      cwd: root,
      input: 'src/shifts/work.ts',
      platform: 'node',
      write: false,
      logLevel: 'silent',
    })
    const loaded = output.flatMap((chunk) => (chunk.type === 'chunk' ? chunk.moduleIds : []))
    expect(loaded.some((path) => path.endsWith('/src/line/line.ts'))).toBe(true)
    expect(loaded.filter((path) => /node_modules\/(zod|yaml|js-quantities)\//.test(path))).toEqual([])
  })
})

describe('arrows between rooms', () => {
  const may: Record<string, string[]> = {
    trade: [],
    scenario: ['trade'],
    engine: [],
    line: ['engine', 'scenario', 'trade'],
    study: ['line', 'engine', 'scenario', 'trade'],
    check: ['scenario', 'trade'],
    report: ['study', 'check', 'line', 'engine', 'scenario', 'trade'],
    cli: ['report', 'study', 'check', 'line', 'engine', 'scenario', 'trade'],
  }

  it('run one way, types included', async () => {
    const { readdir, readFile } = await import('node:fs/promises')
    const wrong: string[] = []
    for (const [room, allowed] of Object.entries(may))
      for (const file of await readdir(`${root}/src/${room}`, { recursive: true })) {
        if (!file.endsWith('.ts')) continue
        const text = await readFile(`${root}/src/${room}/${file}`, 'utf8')
        for (const [, target] of text.matchAll(/from '(?:\.\.\/)+([a-z]+)\//g))
          if (target !== room && target! in may && !allowed.includes(target!))
            wrong.push(`${room}/${file} -> ${target}`)
      }
    expect(wrong).toEqual([])
  })

  it('the core names nothing that only Node has, and no clock or chance of its own', async () => {
    const { readdir, readFile } = await import('node:fs/promises')
    const wrong: string[] = []
    for (const room of ['scenario', 'trade', 'engine', 'line', 'study', 'check'])
      for (const file of await readdir(`${root}/src/${room}`, { recursive: true })) {
        if (!file.endsWith('.ts') || file.startsWith('workers')) continue
        const text = await readFile(`${root}/src/${room}/${file}`, 'utf8')
        if (/from 'node:|\bprocess\.|\bBuffer\b|Math\.random|Date\.now|Math\.pow|require\(/.test(text))
          wrong.push(`${room}/${file}`)
      }
    expect(wrong).toEqual([])
  })
})
