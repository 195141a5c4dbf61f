/** The JSON Schema beside the demos: current, itself valid, and of one mind with the loader. */
import { readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { jsonSchemaText } from '../../src/scenario/json-schema.js'
import { starterScenario } from '../../src/scenario/starter.js'

const file = (name: string) => readFileSync(new URL(`../../scenarios/${name}`, import.meta.url), 'utf8')

describe('JSON Schema', () => {
  it('in scenarios/ is the one that the code generates (else: npm run schema)', () => {
    expect(file('scenario.schema.json')).toBe(jsonSchemaText())
  })

  const validate = new Ajv2020({ strict: false }).compile(JSON.parse(jsonSchemaText()) as object)

  it.each([
    ['soap-works', file('soap-works.yaml')],
    ['refill-hall', file('refill-hall.yaml')],
    ['starter', starterScenario],
  ])('accepts %s', (_, text) => {
    validate(parse(text))
    expect(validate.errors).toBeNull()
  })

  it.each([
    ['a missing unit', { 'line.infeed': 1 }, (tree: Tree) => (tree.line.infeed.length = 9 as never)],
    ['an unknown unit', {}, (tree: Tree) => (tree.line.infeed.length = '9 parsec')],
    ['an unknown key', {}, (tree: Tree) => (tree.line.infeed.lenght = '9 m')],
    ['an unknown type', {}, (tree: Tree) => (tree.line.infeed.type = 'conveyer')],
  ])('refuses %s', (_, __, change) => {
    const tree = parse(file('soap-works.yaml')) as Tree
    change(tree)
    expect(validate(tree)).toBe(false)
  })
})

interface Tree {
  line: { infeed: Record<string, string> & { length: string; type: string } }
}
