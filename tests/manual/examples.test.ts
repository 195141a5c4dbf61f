/**
 * The README and the manual keep their word: their commands run as they stand, and what they quote is what comes out.
 * `WRITE_QUOTATIONS=yes` writes the quotations anew; what is marked `slow` is followed by `npm run test:studies`.
 */
import { existsSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { loadScenario } from '../../src/scenario/load.js'
import { fencesOf, files, textOf } from './examples.js'
import { follow, program } from './follow.js'

const withExamples = files.filter((file) => fencesOf(textOf(file)).some(({ language }) => language === 'sh'))

describe('examples', () => {
  it('are in the README and in most guides, and asked of the built program', () => {
    expect(withExamples).toContain('README.md')
    expect(withExamples.length).toBeGreaterThan(12)
    expect(existsSync(program), 'npm run build').toBe(true)
  })

  it.each(withExamples)('of %s run, and print what is quoted', (file) => follow(file, false), 300_000)

  it('of scenarios load', () => {
    const whole = files
      .flatMap((file) => fencesOf(textOf(file)))
      .filter(({ language, marks }) => language === 'yaml' && !marks.includes('fragment'))
    expect(whole.length).toBeGreaterThanOrEqual(2)
    for (const { text } of whole) expect(Object.keys(loadScenario(text).scenario.line)).toContain('sealer')
  })
})
