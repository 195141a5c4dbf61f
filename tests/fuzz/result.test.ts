/** Whatever is done to a saved result, it is refused at its place, or its report is made without a number that is none. */
import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { compare, loadScenario, type ResultDocument, run, size, sweep, toPage } from '../../src/index.js'
import { chartsOf } from '../../src/questions/charts-of-document.js'
import { faultIn } from '../../src/questions/shape-of-document.js'
import { smallLine } from '../cli/in-process.js'
import { expectTried } from '../tried.js'
import { attack, changes, spoiltTree } from './mutate.js'

const documents: ResultDocument[] = []

beforeAll(async () => {
  const line = loadScenario(
    smallLine
      .replace('jams: {chance: 1 %,', 'belt-speed: 20 m/min, jams: {chance: 1 %,')
      .replace('1 h}', '10 min}'),
  )
  const short = { shifts: 4 }
  const vary = ['line.infeed.length=4..8/2 m']
  const made = [
    await run(line, short),
    await compare(line, { ...short, whatIf: ['long: line.infeed.length=12 m'] }),
    await size(line, { choose: ['line.infeed.length=4 m,6 m'], holds: ['3 cases/min in 50 % of shifts'] }),
    await sweep(line, { ...short, vary }),
    await sweep(line, { ...short, vary: [...vary, 'line.sealer.belt-speed=20..24/4 m/min'] }),
    await sweep(line, { ...short, each: true, vary }),
  ]
  // as a file has it
  for (const { document } of made) documents.push(JSON.parse(JSON.stringify(document)))
}, 120_000)

/** What cannot be told from the document alone and ends a report all the same is known as these. */
const isOfParts = (error: unknown) => error instanceof TypeError || error instanceof RangeError

let tried = 0

function reported(document: ResultDocument): void {
  const fault = faultIn(document, document.command)
  if (fault !== null) {
    expect(fault).toMatch(/^`.+` must be ./)
    expect(fault).not.toMatch(/undefined|\[object/)
    return
  }
  let page: string
  try {
    page = toPage(document)
    chartsOf(document)
  } catch (error) {
    if (isOfParts(error)) return
    throw error
  }
  const text = page.replace(/<script[\s\S]*/, '')
  expect(text.split('\n').filter((row) => /\b(?:NaN|Infinity)\b/.test(row))).toEqual([])
}

describe('a saved result', () => {
  it('as it was made is whole', () => {
    expect(documents.map((document) => faultIn(document, document.command))).toEqual(
      documents.map(() => null),
    )
    for (const document of documents) reported(document)
  })

  it('that is spoilt', async () => {
    await attack(
      fc.property(fc.nat(documents.length - 1), changes, (index, all) => {
        tried++
        const document = spoiltTree(documents[index]!, all)
        reported({
          ...document,
          format: 'tapeshift-result/1',
          command: documents[index]!.command,
        } as ResultDocument)
      }),
      250,
    )
  })

  it('each is counted', () => expectTried('mutants of results', tried))
})
