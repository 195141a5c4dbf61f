/** `tapeshift new`: the starter runs as it stands, explains each key, and overwrites nothing. */
import { readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { jsonSchemaText } from '../../src/scenario/json-schema.js'
import { scenarioSchema } from '../../src/scenario/schema.js'
import { starterScenario } from '../../src/scenario/starter.js'
import { call } from './in-process.js'

describe('tapeshift new', () => {
  it('writes a scenario that runs, and the schema that its first line names', async () => {
    const { code, out, cwd } = await call(['new', 'line.yaml'])
    expect(code).toBe(0)
    expect(out).toContain('Simulate it: tapeshift run line.yaml')
    expect(readFileSync(path.join(cwd, 'scenario.schema.json'), 'utf8')).toBe(jsonSchemaText())
    const run = await call(['run', 'line.yaml', '--shifts', '3', '--no-files', '--workers', '1'], { cwd })
    expect(run.code).toBe(0)
    expect(run.out).toContain('My sealing line')
  })

  it('refuses to overwrite: 5', async () => {
    const { cwd } = await call(['--help'])
    writeFileSync(path.join(cwd, 'line.yaml'), 'mine')
    const { code, err } = await call(['new', 'line.yaml'], { cwd })
    expect(code).toBe(5)
    expect(err).toContain('cannot write')
    expect(readFileSync(path.join(cwd, 'line.yaml'), 'utf8')).toBe('mine')
  })

  it('says a word on every key of the format', () => {
    const schema = z.toJSONSchema(scenarioSchema, { io: 'input', unrepresentable: 'any' })
    const keys = new Set<string>()
    const collect = (node: unknown): void => {
      if (typeof node !== 'object' || node === null) return
      const { properties } = node as { properties?: Record<string, unknown> }
      for (const key of Object.keys(properties ?? {})) keys.add(key)
      for (const value of Object.values(node)) collect(value)
    }
    collect(schema)
    const unsaid = [...keys].filter(
      (key) => !starterScenario.includes(`${key}:`) && !starterScenario.includes(key),
    )
    expect(unsaid).toEqual([])
  })
})
