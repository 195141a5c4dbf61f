/** Edits of a text, worked by hand: what is not changed keeps its place, its comments and its form. */
import { describe, expect, it } from 'vitest'
import { addNewPiece, movePiece, putSideBySide, removePiece } from '../../src/try/draft/line.js'
import { setValue, unsetValue } from '../../src/try/draft/values.js'

const text = `# two pieces
title: A line   # as it hangs on the door

cases:
  small: {length: 300 mm, width: 200 mm, height: 200 mm}   # the only one
arrivals:
  packing: {rate: 5 cases/min}
line:
  # from the tables
  infeed: {type: conveyor, length: 6 m, speed: 18 m/min}   # rollers
  sealer:
    type: sealer
    belt-speed: 20 m/min   # measured
    jams:
      chance: 0.5 %        # of a week
      clear: 90 s
    # what the plate says
    bed: 1.8 m
  outfeed: {type: conveyor, carries: belt, length: 3 m}
crew:
  operator:
    does: [jams, roll-change]

shift:
  length: 8 h
  breaks: [{at: 2 h, for: 15 min}, {at: 4 h, for: 30 min}]
money:
  currency: EUR
  capital: {line.sealer: 24000 EUR, line.infeed: 600 EUR/m}
`

/** The text with single lines exchanged; an empty list takes the line out. */
const withLines = (changes: Record<string, string | string[]>) =>
  text
    .split('\n')
    .flatMap((line) => changes[line] ?? line)
    .join('\n')

describe('a value', () => {
  it('is exchanged where it stands, and the comment behind it stays', () => {
    expect(setValue(text, 'line.sealer.belt-speed', '22 m/min')).toMatchObject({
      text: withLines({ '    belt-speed: 20 m/min   # measured': '    belt-speed: 22 m/min   # measured' }),
    })
    expect(setValue(text, 'line.infeed.speed', '15 m/min')).toMatchObject({
      text: text.replace('speed: 18 m/min', 'speed: 15 m/min'),
    })
  })

  it('that was not given comes behind those that were', () => {
    expect(setValue(text, 'line.sealer.minimum-gap', '250 mm')).toMatchObject({
      text: withLines({ '    bed: 1.8 m': ['    bed: 1.8 m', '    minimum-gap: 250 mm'] }),
    })
    expect(setValue(text, 'tape.leg', '60 mm')).toMatchObject({ text: `${text}tape: {leg: 60 mm}\n` })
  })

  it('of several parts, of a list and of a price is one too', () => {
    expect(setValue(text, 'line.sealer.jams.clear', '{lognormal: {mean: 80 s, cv: 0.8}}')).toMatchObject({
      text: text.replace('clear: 90 s', 'clear: {lognormal: {mean: 80 s, cv: 0.8}}'),
    })
    expect(setValue(text, 'shift.breaks.1.for', '20 min')).toMatchObject({
      text: text.replace('30 min', '20 min'),
    })
    expect(setValue(text, 'money.capital.line.sealer', '26000 EUR')).toMatchObject({
      text: text.replace('24000', '26000'),
    })
  })

  it('goes back to the default, and takes the map with it that it leaves empty', () => {
    expect(unsetValue(text, 'line.sealer.bed')).toMatchObject({ text: withLines({ '    bed: 1.8 m': [] }) })
    expect(unsetValue(text, 'line.infeed.speed')).toMatchObject({
      text: text.replace(', speed: 18 m/min', ''),
    })
    expect(unsetValue(`${text}tape: {leg: 60 mm}\n`, 'tape.leg')).toMatchObject({ text })
  })

  it('that the format does not have is refused with the nearest name', () => {
    expect(setValue(text, 'line.sealer.belt-sped', '22 m/min')).toEqual({
      rule: '`belt-sped` does not exist in `line.sealer`',
      fix: 'did you mean `belt-speed`?',
    })
    expect(setValue(text, 'line.packer.time', '4 s')).toMatchObject({
      rule: '`packer` does not exist in `line`',
    })
  })

  it('that a reference brings to two places is changed at one, and written out at the other', () => {
    const shared = text.replace('length: 6 m', 'length: &long 6 m').replace('length: 3 m', 'length: *long')
    const made = setValue(shared, 'line.outfeed.length', '4 m')
    expect(made).toMatchObject({ text: shared.replace('length: *long', 'length: 4 m') })
    expect(setValue(shared, 'line.infeed.length', '4 m')).toMatchObject({
      text: shared.replace('&long 6 m', '&long 4 m').replace('*long', '6 m'),
    })
  })
})

describe('a piece', () => {
  it('comes behind another with the least that it needs', () => {
    const made = addNewPiece(text, 'conveyor', 'sealer')
    expect(made).toMatchObject({
      name: 'conveyor',
      text: withLines({ '    bed: 1.8 m': ['    bed: 1.8 m', '  conveyor: {type: conveyor, length: 4 m}'] }),
    })
  })

  it('goes, and its price with it', () => {
    expect(removePiece(text, 'infeed')).toMatchObject({
      text: withLines({
        '  infeed: {type: conveyor, length: 6 m, speed: 18 m/min}   # rollers': [],
        '  capital: {line.sealer: 24000 EUR, line.infeed: 600 EUR/m}': '  capital: {line.sealer: 24000 EUR}',
      }),
    })
  })

  it('moves with the comments above it, and its price stays', () => {
    const lines = text.split('\n')
    const [from, to] = [
      lines.indexOf('  # from the tables'),
      lines.indexOf('  outfeed: {type: conveyor, carries: belt, length: 3 m}'),
    ]
    const moved = [
      ...lines.slice(0, from),
      ...lines.slice(from + 2, to + 1),
      ...lines.slice(from, from + 2),
      ...lines.slice(to + 1),
    ]
    expect(movePiece(text, 'infeed', 'outfeed')).toMatchObject({ text: moved.join('\n') })
    expect(movePiece(moved.join('\n'), 'infeed', null)).toMatchObject({ text })
  })

  it('stands side by side with others like it', () => {
    const two = setValue(text, 'line.outfeed.side-by-side', '2')
    expect(putSideBySide(text, 'outfeed', 2)).toEqual(two)
    expect(putSideBySide((two as { text: string }).text, 'outfeed', 1)).toMatchObject({ text })
  })
})
