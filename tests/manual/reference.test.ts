/** Everything that may be asked for has its place in the reference: commands, options, keys, measures, states, findings, files. */
import { describe, expect, it } from 'vitest'
import { figuresAt } from '../../src/answers/figure-at.js'
import { entryAt } from '../../src/catalogue/measures.js'
import { ofLine } from '../../src/catalogue/of-line.js'
import { codes } from '../../src/hand/finding.js'
import { made, written } from '../../src/manual/topics.js'
import type { RunResult } from '../../src/questions/run/document.js'
import { jsonSchemaText } from '../../src/scenario/json-schema.js'
import { call } from '../cli/in-process.js'
import { demoFolder } from '../demo.js'
import { manual, program } from './program.js'

const entriesIn = (name: string) =>
  manual.references.find((each) => each.name === name)!.groups.flatMap(({ entries }) => entries)

const namesIn = (name: string) => new Set(entriesIn(name).map((each) => each.name))

/** Names of properties wherever they stand in a JSON Schema. */
function propertiesOf(schema: unknown, found = new Set<string>()): Set<string> {
  if (typeof schema !== 'object' || schema === null) return found
  for (const [key, value] of Object.entries(schema)) {
    if (key === 'properties' && !Array.isArray(value))
      for (const name of Object.keys(value as object)) found.add(name)
    propertiesOf(value, found)
  }
  return found
}

describe('the reference', () => {
  it('has each topic once, and none called as a command is', () => {
    const names = manual.topics.map(({ name }) => name)
    expect(new Set(names).size).toBe(names.length)
    expect(names).toEqual([...Object.keys(written), ...made])
    expect(names.filter((name) => program.commands.some((command) => command.name() === name))).toEqual([])
  })

  it('has every key of the format, as editors know it', () => {
    const steps = new Set([...namesIn('keys')].flatMap((name) => name.split('.')))
    // a guess is a form of values, and stands in the background
    const keys = [...propertiesOf(JSON.parse(jsonSchemaText()))].filter(
      (key) => !['guess', 'between'].includes(key),
    )
    expect(keys.length).toBeGreaterThan(150)
    expect(keys.filter((key) => !steps.has(key) && key !== 'type')).toEqual([])
  })

  it.each([
    ['line.PIECE.belt-speed', 'Default: `24 m/min`, from memory, low confidence'],
    ['line.PIECE.jams.chance', 'Must be given'],
    ['shift.length', 'Default: `8 h`, common practice, no source'],
    ['tape.price', 'such as `42 EUR/roll`'],
    ['LAW.lognormal.cv', 'tandard deviation / mean (coefficient of variation)'],
    ['crew.CREW.people', 'a whole number from 1 to 1000'],
    ['line.PIECE.roll-change.low-tape-warning', '`none`, or a length, such as `400 mm`'],
  ])('says of %s what the schema says', (name, words) => {
    expect(
      entriesIn('keys')
        .find((each) => each.name === name)!
        .says.join('\n'),
    ).toContain(words)
  })

  it('has the keys of several kinds once, and those of a kind with its name', () => {
    const jams = entriesIn('keys').filter(({ name }) => name === 'line.PIECE.jams.chance')
    expect(jams).toHaveLength(1)
    expect(entriesIn('keys').find(({ name }) => name === 'line.PIECE.belt-speed')!.of).toBe('sealer')
  })

  it('has every figure that demos print', async () => {
    const names = namesIn('measures')
    const places = new Set<string>()
    for (const demo of ['soap-works', 'gift-corner', 'parcel-corner', 'tape-choice', 'two-sealers']) {
      const { out, err } = await call(
        ['run', `${demo}.yaml`, '--json', '--no-files', '--shifts', '2', '--workers', '1', '--anyway'],
        { cwd: demoFolder },
      )
      expect(out, err).not.toBe('')
      for (const [path] of figuresAt(JSON.parse(out) as RunResult)) places.add(entryAt(path).place)
    }
    expect(places.size).toBeGreaterThan(60)
    const named = (place: string) => {
      if (place.includes('.states.')) return namesIn('states').has(place)
      return names.has(place.replace(/^measures\./, '').replace('NAME.measures.', 'NAME.'))
    }
    expect([...places].filter((place) => !named(place))).toEqual([])
    expect(Object.keys(ofLine).filter((key) => !names.has(key))).toEqual([])
  }, 60_000)

  it('has every finding with its rule', () => {
    expect([...namesIn('findings')]).toEqual(Object.keys(codes))
    for (const { says } of entriesIn('findings')) expect(says.join('')).toMatch(/\w+ \w+/)
  })

  it('has every option of every command', () => {
    const all = entriesIn('commands')
    for (const command of program.commands)
      for (const { long } of command.options)
        expect(
          all.some(({ name, of }) => name.split(' ')[0] === long && of!.split(', ').includes(command.name())),
          `${command.name()} ${long}`,
        ).toBe(true)
  })

  it('has every exit code', () => {
    expect([...namesIn('exit-codes')]).toEqual(['0', '1', '2', '3', '4', '5', '6', '130'])
  })
})
