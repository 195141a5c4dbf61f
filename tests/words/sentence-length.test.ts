/** Texts that people read by default are short: no sentence has more than 25 words. What a word is stands in `sentences.ts`. */
import { readdirSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { starterScenario } from '../../src/scenario/starter.js'
import { call } from '../cli/in-process.js'
import { root } from '../manual/examples.js'
import { sentencesOf, tooLong, wordsIn } from './sentences.js'

const demos = readdirSync(path.join(root, 'scenarios')).filter((name) => name.endsWith('.yaml'))

describe('words of a sentence', () => {
  it.each([
    ['The line holds.', 3],
    // a figure with its unit and its plus-minus
    ['HOLDS the target of 9 cases/min: 9.166 ± 0.017 cases/min on average.', 8],
    ['The target is reached in 92 % (87 to 95 %) of the shifts.', 9],
    ['It takes 7 h 15 min.', 3],
    ['Cases cost -1.06 (-1.14 to -0.91) EUR.', 3],
    // what is joined by a hyphen
    ['2-inch tape, low-tape warning', 4],
  ])('%j: %d', (sentence, count) => expect(wordsIn(sentence)).toHaveLength(count))

  it('are told apart from the words before rows, tables, and references to the file', () => {
    expect(
      sentencesOf(`A line

HOLDS it.

Warnings  1. A gap is too
             small. Fix: more. (line.a.speed, line 3; help: gap)
          2. Also: it is cold.
Designs, best first; target 9 cases/min
design   target     cases/min
base     holds    8.28 ± 0.11
Limit     None.
All tables: --full.
`),
    ).toEqual([
      'A line',
      'HOLDS it.',
      'A gap is too small.',
      'Fix: more.',
      'Also: it is cold.',
      'None.',
      'All tables: --full.',
    ])
  })
})

describe('no sentence of more than 25 words', () => {
  it.each(demos)('in the check of %s', async (demo) => {
    const { out } = await call(['check', path.join(root, 'scenarios', demo)])
    expect(sentencesOf(out).length).toBeGreaterThan(8)
    expect(tooLong(out)).toEqual([])
  })

  it('in the check of the starter', async () => {
    expect(tooLong((await call(['check', '-'], { stdin: starterScenario })).out)).toEqual([])
  })
})
