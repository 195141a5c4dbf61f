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
    ['gift-corner', file('gift-corner.yaml')],
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

describe('the forms of evidence', () => {
  const validate = new Ajv2020({ strict: false }).compile(JSON.parse(jsonSchemaText()) as object)
  const withSealer = (jams: unknown, more: object = {}) => {
    const tree = parse(file('soap-works.yaml')) as { line: { sealer: object } }
    tree.line.sealer = { ...tree.line.sealer, jams, ...more }
    return validate(tree)
  }
  const law = { lognormal: { mean: '85 s', cv: 0.8, from: 40 } }

  it.each([
    ['counts', { chance: '36 in 40000 cases', clear: '18 in 640 h' }],
    [
      'guesses',
      {
        chance: { guess: '1 %', between: ['0.5 %', '2 %'] },
        clear: { guess: '9 s', between: ['5 s', '20 s'] },
      },
    ],
    ['a guess of a number', { chance: '1 %', clear: '9 s', 'tape-factor': { guess: 1, between: [0.5, 2] } }],
    ['observations behind a law', { chance: '0 in 4000 strips', clear: law }],
    [
      'a mixture',
      {
        chance: '1 %',
        clear: {
          mixture: [
            { share: '30 in 40 stops', law },
            { share: '25 %', law: '4 min' },
          ],
        },
      },
    ],
  ])('accepts %s', (_, jams) => expect(withSealer(jams)).toBe(true))

  it.each([
    ['a count of something else', { chance: '36 in 40000 boxes', clear: '9 s' }],
    ['a count of cases for a time', { chance: '1 %', clear: '18 in 640 cases' }],
    ['a guess with one end', { chance: '1 %', clear: { guess: '9 s', between: ['5 s'] } }],
    ['a guess of another dimension', { chance: '1 %', clear: { guess: '9 m', between: ['5 m', '20 m'] } }],
    [
      'a mixture in a mixture',
      {
        chance: '1 %',
        clear: {
          mixture: [
            { share: '50 %', law: { mixture: [] } },
            { share: '50 %', law },
          ],
        },
      },
    ],
  ])('refuses %s', (_, jams) => expect(withSealer(jams)).toBe(false))
})

interface Tree {
  line: { infeed: Record<string, string> & { length: string; type: string } }
}
