/** The change of a design in the words of the command line, which makes the same design of the file as it came. */
import { describe, expect, it } from 'vitest'
import { parse, stringify } from 'yaml'
import { readScenario } from '../../src/scenario/read.js'
import { changesBetween } from '../../src/try/changes.js'
import { repeating, saidChange } from '../../src/try/command.js'
import { addNewPiece, movePiece, putSideBySide, removePiece } from '../../src/try/draft/line.js'
import { setValue, unsetValue } from '../../src/try/draft/values.js'
import { treeOf } from '../../src/try/draft/yaml-text.js'
import { pinName, pinned } from '../../src/try/pins.js'
import { demo } from './demos.js'

const { text, ...home } = demo('soap-works.yaml')
const edited = (...edits: ((text: string) => { text: string } | { rule: string; fix: string })[]): string =>
  edits.reduce((now, edit) => {
    const made = edit(now)
    if (!('text' in made)) throw new Error(made.rule)
    return made.text
  }, text)

describe('a change', () => {
  it('of values is one `--set` each; what is taken back is set to its default', () => {
    const after = edited(
      (now) => setValue(now, 'line.sealer.belt-speed', '22 m/min'),
      (now) => setValue(now, 'line.sealer.jams.clear', '{gamma: {mean: 80 s, cv: 1}}'),
      (now) => unsetValue(now, 'tape.leg'),
    )
    expect(saidChange(text, after, home)?.sets).toEqual([
      'line.sealer.belt-speed=22 m/min',
      'line.sealer.jams.clear={gamma: {mean: 80 s, cv: 1}}',
    ])
  })

  it('of pieces is `add` and `remove`, as a variant has them', () => {
    const after = edited(
      (now) => addNewPiece(now, 'inspect', 'sealer'),
      (now) => removePiece(now, 'infeed'),
      (now) => setValue(now, 'line.sealer.belt-speed', '22 m/min'),
    )
    expect(saidChange(text, after, home, 'short')).toEqual({
      sets: [
        'add.inspection={after: sealer, type: inspect, time: 1 s, chance: 1 %}',
        'line.sealer.belt-speed=22 m/min',
        'remove=infeed',
      ],
      variant: `variants:
  short:
    add:
      inspection: {after: sealer, type: inspect, time: 1 s, chance: 1 %}
    set:
      line.sealer.belt-speed: 22 m/min
    remove: [infeed]
`,
    })
  })

  it('makes the same scenario by options, or where variants of the file contradict them by a variant', () => {
    const texts = [
      edited((now) => setValue(now, 'shift.breaks.1.for', '20 min')),
      edited((now) => putSideBySide(now, 'sealer', 2)),
      edited((now) =>
        setValue(now, 'money.capital.line.sealer', '{guess: 24000 EUR, between: [20000 EUR, 30000 EUR]}'),
      ),
      edited((now) => movePiece(now, 'outfeed', 'infeed')),
      edited((now) => unsetValue(now, 'line.sealer.breakdowns')),
    ]
    const made = texts.map((after) => {
      const { sets, variant } = saidChange(text, after, home)!
      const withVariant = stringify({ ...parse(text), ...parse(variant) })
      const read = sets
        ? readScenario(text, { set: sets })
        : readScenario(withVariant, { variant: 'changed' })
      const byText = readScenario(after)
      expect({ ...read.scenario, variants: null }).toEqual({ ...byText.scenario, variants: null })
      expect(Object.keys(read.scenario.line)).toEqual(Object.keys(byText.scenario.line))
      return sets ? 'options' : 'variant'
    })
    // one of its variants gives the sealer other heads: a sealer as a whole would take them back
    expect(made).toEqual(['options', 'options', 'options', 'variant', 'variant'])
  })

  it('that leaves out a part of the file cannot be said', () => {
    expect(changesBetween(treeOf(text)!, { ...treeOf(text)!, closure: undefined })).toBeNull()
  })
})

it('the command that repeats an answer names seed and shifts', () => {
  const answered = { made: { seed: 'a', shifts: 200 }, evidence: ['a count'] }
  expect(repeating('line 2.yaml', answered, ['tape.leg=60 mm'])).toBe(
    "tapeshift run 'line 2.yaml' --set 'tape.leg=60 mm' --shifts 200 --seed a --inputs fixed",
  )
})

describe('a pin', () => {
  it('has a name that a variant may have, and that no other has', () => {
    expect(pinName([], '2 sealers!')).toBe('sealers')
    expect(pinName([], 'base')).toBe('base 2')
    expect(pinName([], '<b>')).toBe('b')
    expect(pinName([{ name: 'long', text: '' }], 'long')).toBe('long 2')
    expect(pinName([{ name: 'design 1', text: '' }], '')).toBe('design 2')
    expect(pinned(pinned([], 'a', 'x'), 'a', 'x')).toEqual([{ name: 'a', text: 'x' }])
  })
})
