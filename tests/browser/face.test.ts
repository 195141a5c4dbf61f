/** The public face in a browser: bundled for one it asks for nothing of Node, and gives the same numbers as in Node. */
import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { createContext, runInContext } from 'node:vm'
import { chromium } from 'playwright-core'
import { build } from 'rolldown'
import { beforeAll, describe, expect, it } from 'vitest'
import * as face from '../../src/index.js'
import { demoFolder } from '../demo.js'
import { askAll, partingOf, plainLine } from '../face/questions.js'

const root = fileURLToPath(new URL('../..', import.meta.url))
const executable = '/usr/bin/chromium'
const text = readFileSync(path.join(demoFolder, 'tape-choice.yaml'), 'utf8')
/** The face and what is asked of it, as one script. */
const contents = `
  import * as face from './src/index.ts'
  import { askAll, partingOf, plainLine } from './tests/face/questions.ts'
  globalThis.askAll = (text) => askAll(face, text)`

let code: string
let modules: readonly string[]
let outside: readonly string[]

beforeAll(async () => {
  const entry = path.join(root, 'face.ts')
  const { output } = await build({
    cwd: root,
    input: 'face',
    plugins: [
      {
        name: 'entry',
        resolveId: (id) => (id === 'face' ? entry : null),
        load: (id) => (id === entry ? { code: contents, moduleType: 'ts' } : null),
      },
    ],
    platform: 'browser',
    output: { format: 'iife', name: 'face', codeSplitting: false },
    write: false,
    logLevel: 'silent',
  })
  const [chunk] = output
  code = chunk.code
  modules = chunk.moduleIds
  outside = chunk.imports
})

describe('the public face in a browser', () => {
  it('imports nothing of Node', () => {
    expect(outside).toEqual([])
    expect(modules.some((file) => file.includes('/src/line/'))).toBe(true)
  })

  it('works where there is no process, no require and no Buffer', async () => {
    const own = { console, setTimeout, structuredClone, performance, btoa, TextEncoder, AbortController }
    const context = createContext({ ...own, text })
    const told = await runInContext(
      `${code}; askAll(text).then((told) => JSON.stringify([typeof process, typeof require, told.throughput]))`,
      context,
    )
    const line = face.loadScenario(text)
    const { document } = await face.run(line, { shifts: 6 })
    expect(JSON.parse(told)).toEqual(['undefined', 'undefined', document.measures.throughput])
  })

  it.runIf(existsSync(executable) || process.env.CI)('gives the same numbers in chromium', async () => {
    const browser = await chromium.launch({
      executablePath: executable,
      args: ['--no-sandbox', '--disable-gpu'],
    })
    try {
      const page = await browser.newPage()
      await page.addScriptTag({ content: code })
      type Told = Awaited<ReturnType<typeof askAll>>
      const inBrowser = (scenario: string) =>
        page.evaluate(
          (asked) => (globalThis as unknown as { askAll: (text: string) => Promise<Told> }).askAll(asked),
          scenario,
        )
      // tape-choice draws from laws that need logarithms and exponentials: events that coincide keep their order
      for (const scenario of [plainLine, text]) {
        const [here, there] = [await askAll(face, scenario), await inBrowser(scenario)]
        const keys = Object.keys(here) as (keyof Told)[]
        expect(Object.keys(there)).toEqual(keys)
        expect(here.documents.map(({ command }) => command)).toEqual(['run', 'compare', 'size', 'sweep'])
        // intervals ask the machine for logarithms, which engines round otherwise in the last binary digit
        expect(keys.flatMap((key) => partingOf(here[key], there[key], 1e-12) ?? [])).toEqual([])
      }
    } finally {
      await browser.close()
    }
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
    expect(loaded.some((file) => file.endsWith('/src/line/line.ts'))).toBe(true)
    expect(loaded.filter((file) => /node_modules\/(zod|yaml|js-quantities)\//.test(file))).toEqual([])
  })
})
