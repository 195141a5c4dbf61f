/** Whatever is done to a scenario, it is refused with findings, or checked to the end without a number that is none. */
import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parse, stringify } from 'yaml'
import { check } from '../../src/index.js'
import { checkText } from '../../src/questions/check/report.js'
import { ScenarioError } from '../../src/scenario/problems.js'
import { readScenario } from '../../src/scenario/read.js'
import { smallLine } from '../cli/in-process.js'
import { expectTried } from '../tried.js'
import { attack, changes, spoiltText, spoiltTree } from './mutate.js'

/** Short enough to be checked in no time. */
const short = smallLine.replace(
  'study:',
  'money: {currency: EUR, shifts: 480 per yr, life: 10 yr, interest: 6 %, capital: {line.sealer: 24000 EUR}}\nstudy:',
)
const demos = readdirSync('scenarios')
  .filter((name) => name.endsWith('.yaml') && !name.startsWith('recorded'))
  .map((name) => readFileSync(`scenarios/${name}`, 'utf8'))
const trees = demos.map((text) => parse(text) as unknown)

let tried = 0

/** Reads, checks and prints it; what is refused has findings. */
function checked(text: string): void {
  tried++
  let read: ReturnType<typeof readScenario>
  try {
    read = readScenario(text)
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error
    expect(error.problems.length).toBeGreaterThan(0)
    for (const { rule } of error.problems) expect(rule).not.toMatch(/undefined|NaN|\[object/)
    // biome-ignore lint/suspicious/noControlCharactersInRegex: what must not reach a terminal
    expect(error.message).not.toMatch(/[\u0000-\u0009\u001b]/)
    return
  }
  const printed = checkText(check(read), { width: 100, bold: (each) => each })
  expect(printed.split('\n').filter((line) => /\b(?:NaN|Infinity|undefined)\b|\[object/.test(line))).toEqual(
    [],
  )
}

describe('a spoilt scenario', () => {
  it('by its keys and values', async () => {
    await attack(
      fc.property(fc.nat(trees.length - 1), changes, (demo, all) => {
        checked(stringify(spoiltTree(trees[demo], all)))
      }),
      50,
    )
  })

  it('that is short, often', async () => {
    const tree: unknown = parse(short)
    expect(() => readScenario(short)).not.toThrow()
    await attack(
      fc.property(changes, (all) => checked(stringify(spoiltTree(tree, all)))),
      400,
    )
  })

  it('by its letters', async () => {
    await attack(
      fc.property(fc.nat(demos.length - 1), changes, (demo, all) => {
        checked(spoiltText(demos[demo]!, all))
      }),
      50,
    )
  })

  it('each is counted', () => expectTried('mutants of scenarios', tried))
})
