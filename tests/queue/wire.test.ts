/** Values travel to the last bit; what is no value of ours is refused. */
import { describe, expect, it } from 'vitest'
import { received, Sending } from '../../src/queue/designs.js'
import { fromBytes, toBytes } from '../../src/queue/wire.js'
import type { Scenario } from '../../src/scenario/schema.js'
import { loadDemo } from '../demo.js'

const there = (value: unknown) => fromBytes(toBytes(value))

describe('a value travels', () => {
  it.each([
    ['what JSON alters', [Number.NaN, -0, 0, Infinity, -Infinity, 1e-320, 0.1 + 0.2, Number.MAX_VALUE]],
    ['what it has no word for', { a: undefined, b: [undefined, null], c: {} }],
    [
      'rows of numbers',
      {
        times: new Float64Array([1, Number.NaN, -0]),
        kinds: new Uint16Array([7, 65535]),
        none: new Float64Array(0),
      },
    ],
    ['keys like the tag', { $: 'NaN', $$: 1, $a: { $: 2 } }],
    ['texts of all letters', '\u0000\u001b "ä" 𝔘\n'],
  ])('%s', (_, value) => {
    expect(there(value)).toStrictEqual(value)
  })

  it('to the last bit', () => {
    const row = there(new Float64Array([-0, Number.NaN])) as Float64Array
    expect([Object.is(row[0], -0), Number.isNaN(row[1])]).toEqual([true, true])
    expect(Object.is(there(-0), -0)).toBe(true)
  })

  it.each([[() => 1], [new Map()], [Symbol('a')], [1n], [new Date(0)]])(
    'and nothing but data: %s',
    (value) => {
      expect(() => toBytes({ value })).toThrow(TypeError)
    },
  )

  it('a key that would reach the prototype of all objects is refused', () => {
    const bytes = toBytes({ aaaaaaaaa: 1 })
    const text = new TextDecoder().decode(bytes).replace('aaaaaaaaa', '__proto__')
    expect(() => fromBytes(new TextEncoder().encode(text))).toThrow('no data has')
  })
})

describe('a scenario travels', () => {
  const sent = async (scenario: Scenario) => {
    const { hash, pieces } = new Sending().of(scenario)
    const server = new Map(pieces.map((piece) => [piece.hash, piece.sealed()]))
    return {
      pieces,
      scenario: await received(hash, async (piece) => server.get(piece.hash) ?? null),
      server,
      hash,
    }
  }

  it.each(['soap-works', 'tape-choice', 'recorded-day', 'made-to-measure'])('%s', async (name) => {
    const scenario = await loadDemo(name)
    expect((await sent(scenario)).scenario).toStrictEqual(scenario)
  })

  it('with long lists apart, once for all designs that have them', async () => {
    const scenario = await loadDemo('soap-works')
    const times = Float64Array.from({ length: 5000 }, (_, index) => index / 3)
    const first = { ...scenario, times } as unknown as Scenario
    const second = { ...first, title: 'another' }
    const sending = new Sending()
    const parts = [first, second].map((each) => sending.of(each).pieces.filter(({ sort }) => sort === 'part'))
    expect(parts.map(([part]) => part!.hash)).toEqual([parts[0]![0]!.hash, parts[0]![0]!.hash])
    expect((await sent(first)).scenario).toStrictEqual(first)
  })

  it('or not at all: a part that is missing, or another in its place', async () => {
    const scenario = await loadDemo('soap-works')
    const { hash, server } = await sent(scenario)
    expect(await received(hash, async () => null)).toBe(null)
    const other = new Sending().of({ ...scenario, title: 'another' }).pieces.at(-1)!
    server.set(hash, other.sealed())
    await expect(received(hash, async (piece) => server.get(piece.hash) ?? null)).rejects.toThrow(
      'as it was sent',
    )
  })
})
