/** The demo lines: one invented plant, each with its question, and between them every key and every choice of the format. */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { z } from 'zod'
import { scenarioSchema } from '../../src/scenario/schema.js'
import { starterScenario } from '../../src/scenario/starter.js'
import { fillDefaults } from '../../src/scenario/walk.js'

const folder = new URL('../../scenarios/', import.meta.url)
const names = readdirSync(folder).filter((name) => name.endsWith('.yaml'))
const texts = new Map(names.map((name) => [name, readFileSync(new URL(name, folder), 'utf8')]))

/** Every key, and every word that is a value, of the texts, variants included. */
function used(of: readonly string[]): { keys: Set<string>; words: Set<string> } {
  const keys = new Set<string>()
  const words = new Set<string>()
  const walk = (node: unknown): void => {
    if (Array.isArray(node)) for (const item of node) walk(item)
    else if (typeof node === 'object' && node !== null)
      for (const [key, value] of Object.entries(node)) {
        for (const step of key.split('.')) keys.add(step)
        walk(value)
      }
    else words.add(String(node))
  }
  for (const text of of) {
    const tree: unknown = parse(text)
    // a default that no demo names is used all the same
    fillDefaults(scenarioSchema, tree)
    walk(tree)
  }
  return { keys, words }
}

/** Every key and every closed choice of the format. */
function known(): { keys: Set<string>; words: Set<string> } {
  const keys = new Set<string>()
  const words = new Set<string>()
  const walk = (node: unknown): void => {
    if (typeof node !== 'object' || node === null) return
    const { properties, enum: choices, const: only } = node as Record<string, unknown>
    for (const key of Object.keys((properties as object) ?? {})) keys.add(key)
    for (const word of (choices as unknown[]) ?? []) words.add(String(word))
    if (only !== undefined) words.add(String(only))
    for (const value of Object.values(node)) walk(value)
  }
  walk(z.toJSONSchema(scenarioSchema, { io: 'input', unrepresentable: 'any' }))
  return { keys, words }
}

describe('demo scenarios', () => {
  it('are ten, of one owner, and say first what question they answer', () => {
    expect(names).toHaveLength(10)
    for (const text of texts.values()) {
      const [schema, question] = text.split('\n')
      expect(schema).toBe('# yaml-language-server: $schema=./scenario.schema.json')
      expect(question).toMatch(/^# Question: .+\?$/)
      expect((parse(text) as { title: string }).title).toMatch(/^Lindmoor (soap works|pet food)/)
    }
  })

  it('and the starter use every key of the format', () => {
    const { keys } = used([...texts.values(), starterScenario])
    expect([...known().keys].filter((key) => !keys.has(key))).toEqual([])
  })

  it('use every choice of the format but units, flutes and walls of little note', () => {
    const { words } = used([...texts.values()])
    const small = new Set([
      ...['m', 'cm', 'um', 'in', 'ft', 'yd'],
      's',
      'min',
      'h',
      'ms',
      'd',
      'wk',
      'yr',
      'A',
      'B',
      'C',
      'E',
      'F',
      'EB',
      'BC',
      'triple',
    ])
    expect([...known().words].filter((word) => !words.has(word) && !small.has(word))).toEqual([])
  })
})
