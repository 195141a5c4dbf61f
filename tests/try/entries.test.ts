/** Entries more and fewer in a text, by hand on small texts; the rest of a text stays as it was, to the letter. */
import { describe, expect, it } from 'vitest'
import { readScenario } from '../../src/scenario/read.js'
import { starterScenario } from '../../src/scenario/starter.js'
import { addLike, addToList, removeEntry } from '../../src/try/draft/entries.js'
import { setValue, unsetValue } from '../../src/try/draft/values.js'
import { exampleFor, examples } from '../../src/try/fields/examples.js'
import { setsIn, withSets } from '../../src/try/fix-sets.js'

const text = (edited: ReturnType<typeof addLike>): string => {
  expect(edited).not.toHaveProperty('rule')
  return (edited as { text: string }).text
}

describe('an entry more or fewer', () => {
  const small = `cases: {box: {size: 400 x 300 x 250 mm}}
arrivals:
  table: {rate: 5 cases/min} # by hand
`
  it('stands behind all others under a name of its own', () => {
    const once = addLike(small, 'arrivals', 'table')
    expect(once).toMatchObject({ text: `${small}  table 2: {rate: 5 cases/min}\n`, name: 'table 2' })
    // of the second one the third, not "table 2 2"
    expect(addLike(text(once), 'arrivals', 'table 2')).toMatchObject({ name: 'table 3' })
    expect(text(addLike(small, 'cases', 'box'))).toContain('box 2: {size: 400 x 300 x 250 mm}')
  })

  it('goes without a trace, but for the last one', () => {
    const two = text(addLike(small, 'arrivals', 'table'))
    expect(removeEntry(two, 'arrivals', 'table 2')).toMatchObject({ text: small })
    expect(removeEntry(small, 'arrivals', 'table')).toMatchObject({ rule: 'it is the only one' })
    expect(removeEntry(small, 'arrivals', 'desk')).toMatchObject({ rule: 'there is no `desk`' })
  })

  it('comes an hour later in a list of times of the shift', () => {
    const shift = 'shift: {length: 8 h, breaks: [{at: 2 h, for: 15 min}]}\n'
    const longer = 'shift: {length: 8 h, breaks: [{at: 2 h, for: 15 min}, {at: 3 h, for: 15 min}]}\n'
    expect(addToList(shift, 'shift.breaks')).toMatchObject({ text: longer })
    expect(text(addToList(shift.replace('2 h', '90 min'), 'shift.breaks'))).toContain('{at: 150 min, for')
    expect(addToList('shift: {length: 8 h}\n', 'shift.breaks')).toMatchObject({
      rule: 'there is no list yet',
    })
  })

  it('can be read in the line that `tapeshift new` writes', () => {
    for (const [room, name] of [
      ['cases', 'small'],
      ['arrivals', 'packing'],
      ['crew', 'operators'],
    ] as const)
      expect(() => readScenario(text(addLike(starterScenario, room, name)))).not.toThrow()
    expect(() => readScenario(text(addToList(starterScenario, 'shift.breaks')))).not.toThrow()
  })
})

describe('an example to begin with', () => {
  const paths = [
    ...['shift.breaks', 'crew.operators.breaks', 'crew.operators.other-work', 'line.infeed.planned'],
    ...['line.palletiser.by-hour', 'arrivals.packing.by-hour.cases', 'tape.applies-at', 'site.temperature'],
  ]
  it.each(paths)('of %s can be read', (path) => {
    const without = path.startsWith('arrivals')
      ? text(unsetValue(starterScenario, 'arrivals.packing.time-between'))
      : starterScenario
    // people have a pace, machines have none
    const byPeople = path.endsWith('r.by-hour')
      ? text(setValue(without, 'line.palletiser.run-by', 'people'))
      : without
    expect(() => readScenario(text(setValue(byPeople, path, exampleFor(path)!)))).not.toThrow()
  })

  it('is of one of these fields, each', () => {
    expect(new Set(paths.map(exampleFor))).toEqual(new Set(Object.values(examples)))
    expect(exampleFor('line.sealer.speeds')).toBeNull()
  })
})

describe('values that a fix names', () => {
  const fix =
    'another tape width, or heads that take it: line.sealer.heads.top.takes=[36 mm, 72 mm]; line.sealer.heads.bottom.takes=[36 mm, 72 mm]'
  it('are found where it ends with them', () => {
    expect(setsIn(fix)).toEqual([
      { path: 'line.sealer.heads.top.takes', value: '[36 mm, 72 mm]' },
      { path: 'line.sealer.heads.bottom.takes', value: '[36 mm, 72 mm]' },
    ])
    expect(setsIn('write it like `24 m/min`')).toEqual([])
    expect(setsIn('line.sealer.bed=2 m; or a shorter case')).toEqual([])
    expect(setsIn('')).toEqual([])
  })

  it('make a text that can be read of one that could not', () => {
    const wide = text(setValue(starterScenario, 'tape.width', '72 mm'))
    let said = ''
    try {
      readScenario(wide)
    } catch (error) {
      said = String(Object(error).problems?.[0]?.fix)
    }
    expect(setsIn(said)).toHaveLength(2)
    expect(() => readScenario(text(withSets(wide, setsIn(said))))).not.toThrow()
    expect(
      withSets(wide, [
        { path: 'line.none.x', value: '1' },
        { path: 'tape.width', value: '48 mm' },
      ]),
    ).toHaveProperty('rule')
  })
})
