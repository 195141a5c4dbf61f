/** Pages of results in which every text is markup that would run: none of it comes out as markup. */
import { beforeAll, describe, expect, it } from 'vitest'
import { compare, loadScenario, type ResultDocument, run, size, sweep, toPage } from '../../src/index.js'
import { faultIn } from '../../src/questions/shape-of-document.js'
import { smallLine } from '../cli/in-process.js'
import { expectTried } from '../tried.js'

const evils = [
  '<script>alert(1)</script>',
  '</script><img src=x onerror=alert(2)>',
  '"><svg onload=alert(3)>',
  "' onmouseover='alert(4)",
  ']]><!--<b>',
  '\u202e</title><style>*{display:none}',
]
/** Raw, each would be markup. */
const raw = ['<script>alert', '<img src=x', '<svg onload', '<b>', '<style>*{', '<!--<b>']

const documents: ResultDocument[] = []

beforeAll(async () => {
  const line = loadScenario(smallLine.replace('1 h}', '10 min}'))
  const short = { shifts: 4 }
  const vary = ['line.infeed.length=4..8/2 m']
  for (const { document } of [
    await run(line, short),
    await compare(line, { ...short, whatIf: ['long: line.infeed.length=12 m'] }),
    await size(line, { choose: ['line.infeed.length=4 m,6 m'], holds: ['3 cases/min in 50 % of shifts'] }),
    await sweep(line, { ...short, vary }),
    await sweep(line, { ...short, each: true, vary }),
  ])
    documents.push(JSON.parse(JSON.stringify(document)))
}, 120_000)

type Tree = Record<string, unknown>

/** Calls `visit` with every text of a tree: what holds it, its key, and its sort, which is where it stands, names and numbers of places left out. */
function eachText(node: object, visit: (holder: Tree, key: string, sort: string) => void, above = ''): void {
  for (const [key, value] of Object.entries(node)) {
    const sort = Array.isArray(node) ? above : `${above.split('.').at(-1)}.${key}`
    if (typeof value === 'object' && value !== null) eachText(value, visit, sort)
    else if (typeof value === 'string') visit(node as Tree, key, sort)
  }
}

/** Sorts of text that may be any, as far as the shape of the document goes. */
function freeSorts(document: ResultDocument): Set<string> {
  const made = structuredClone(document)
  const may = new Map<string, boolean>()
  eachText(made, (holder, key, sort) => {
    if (may.get(sort) === false || key === 'command' || key === 'format') return
    const value = holder[key]
    if (!may.has(sort)) {
      holder[key] = `${value} ${evils[0]}`
      may.set(sort, faultIn(made, made.command) === null)
    }
    holder[key] = value
  })
  return new Set([...may].filter(([, is]) => is).map(([sort]) => sort))
}

/** The document with `evil` behind every text of these sorts. */
function spoilt(document: ResultDocument, sorts: ReadonlySet<string>, evil: string): ResultDocument {
  const made = structuredClone(document)
  eachText(made, (holder, key, sort) => {
    if (sorts.has(sort)) holder[key] = `${holder[key]} ${evil}`
  })
  return made
}

/** How often it stands in a text. */
const count = (text: string, part: string) => text.split(part).length - 1

describe('a page of hostile text', () => {
  let tried = 0

  it.each([0, 1, 2, 3, 4])('of document %d', (index) => {
    const document = documents[index]!
    const sorts = freeSorts(document)
    expect(sorts.size).toBeGreaterThan(10)
    const usual = toPage(document)
    for (const evil of evils) {
      const page = toPage(spoilt(document, sorts, evil))
      tried++
      for (const each of raw) expect(count(page, each), each).toBe(count(usual, each))
    }
  })

  it('each is counted', () => expectTried('pages of hostile text', tried))
})
