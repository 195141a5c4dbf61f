/** What the page says while figures are on their way, and what it leaves out of the sentences of a command. */
import { describe, expect, it } from 'vitest'
import { check } from '../../src/questions/check/study.js'
import { readScenario } from '../../src/scenario/read.js'
import { inPage } from '../../src/try/view/answer/verdict.js'
import { firstWait, lettersIn, nextWait } from '../../src/try/view/answer/waiting.js'

/** A line on which so many kinds of case run. */
const lineOf = (kinds: number) => `
cases:
${Array.from({ length: kinds }, (_, kind) => `  kind-${kind}: {length: ${300 + (kind % 90)} mm, width: 200 mm, height: 200 mm}`).join('\n')}
arrivals: {packing: {time-between: {exponential: {mean: 10 s}}}}
line:
  infeed: {type: conveyor, length: 4 m}
shift: {length: 1 h}
`
const known = (kinds: number) => {
  const text = lineOf(kinds)
  return { text, check: check(readScenario(text)) }
}

describe('while figures are on their way', () => {
  it('a line of few kinds says what is being done, and no more', () => {
    const { text, check: found } = known(2)
    expect(firstWait(text.length, null)).toBe('The first shifts are being simulated.')
    expect(firstWait(text.length, found)).toBe('The first shifts are being simulated.')
    expect(nextWait(text.length)).toBe('Simulating the change …')
  })

  it('one of thousands says that it is being read, then how many kinds there are', () => {
    expect(firstWait(712_680, null)).toBe(
      'The line is being read. Its text and files have 713 thousand letters: this takes some seconds, up to a minute on a slow computer.',
    )
    const { check: found } = known(1001)
    expect(firstWait(712_680, found)).toMatch(
      /^The first shifts are being simulated\. There are 1\D?001 kinds of case: this takes some seconds/,
    )
    expect(nextWait(712_680)).toBe(
      'Simulating the change: to read 713 thousand letters again takes some seconds …',
    )
  })

  it('a CSV file beside the text counts as well', () => {
    expect(lettersIn('title: x', { name: 'a', text: '', files: { 'cases.csv': 'y'.repeat(200_000) } })).toBe(
      200_008,
    )
  })
})

it('sentences of a command name none of its options in the page', () => {
  expect(inPage('Use faster belts. (help: target-above-machine)')).toBe('Use faster belts.')
  expect(inPage('plus-minus is 86 % of that of plain means (--plain).')).toBe(
    'plus-minus is 86 % of that of plain means.',
  )
  expect(inPage('The line (of two) holds.')).toBe('The line (of two) holds.')
})
