/** Any sequence of edits: the text can be read, comments elsewhere stay, it says what it is to say, and undo brings back each letter. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Edited } from '../../src/try/draft/edited.js'
import { begun, edited, redone, restored, stored, undone } from '../../src/try/draft/history.js'
import { addNewPiece, movePiece, pieceNames, putSideBySide, removePiece } from '../../src/try/draft/line.js'
import { newKinds } from '../../src/try/draft/new-pieces.js'
import { setValue, unsetValue } from '../../src/try/draft/values.js'
import { treeOf } from '../../src/try/draft/yaml-text.js'
import { demo } from './demos.js'

const pick = (all: readonly string[], number: number): string => all[number % all.length]!
const paths = [
  'tape.leg',
  'line.sealer.belt-speed',
  'line.infeed.length',
  'shift.run-out',
  'crew.operator.people',
  'site',
]
const values = ['3', '60 mm', '{guess: 90 s, between: [60 s, 150 s]}', '"a # text"', '[1, 2]', 'null']

/** An edit by four numbers. */
function edit(text: string, [what, a, b, c]: readonly [number, number, number, number]): Edited {
  const names = pieceNames(treeOf(text)!)
  switch (what) {
    case 0:
      return setValue(text, pick(paths, a), pick(values, b))
    case 1:
      return unsetValue(text, pick(paths, a))
    case 2:
      return addNewPiece(text, newKinds[a % newKinds.length]!, pick(names, b))
    case 3:
      return names.length > 1 ? removePiece(text, pick(names, a)) : { text }
    case 4:
      return movePiece(text, pick(names, a), c % 4 === 0 ? null : pick(names, b))
    default:
      return putSideBySide(text, pick(names, a), 1 + (b % 3))
  }
}

/** Comments in lines of their own outside the line and its parts. */
const commentsIn = (text: string) => text.split('\n').filter((line) => /^#/.test(line))

describe('any edits', () => {
  it('leave a text that can be read, with its comments, and are undone to the letter', () => {
    const { text } = demo('tape-choice.yaml')
    const step = fc.tuple(fc.nat(5), fc.nat(20), fc.nat(20), fc.nat(20))
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 8 }), (steps) => {
        let history = begun(text)
        const texts = [text]
        for (const [at, one] of steps.entries()) {
          const made = edit(history.present.text, one)
          if (!('text' in made)) continue
          history = edited(history, made.text, String(at), at * 5000)
          if (made.text !== texts.at(-1)) texts.push(made.text)
          expect(treeOf(made.text)).not.toBeNull()
          expect(commentsIn(made.text)).toEqual(commentsIn(text))
        }
        const end = restored(stored(history))!
        let back = end
        for (const before of texts.slice(0, -1).reverse()) {
          back = undone(back)
          expect(back.present.text).toBe(before)
        }
        for (const after of texts.slice(1)) {
          back = redone(back)
          expect(back.present.text).toBe(after)
        }
      }),
      { numRuns: 25, seed: 1 },
    )
  })
})

describe('quick edits of one field', () => {
  it('are one, those of another field or after a pause are not', () => {
    const [a, b] = [edited(begun('0'), '1', 'x', 0), edited(begun('0'), '1', 'x', 0)]
    expect(edited(a, '2', 'x', 300).past).toHaveLength(1)
    expect(edited(b, '2', 'y', 300).past).toHaveLength(2)
    expect(edited(b, '2', 'x', 3000).past).toHaveLength(2)
    expect(restored('{"past": 3}')).toBeNull()
  })
})
