/** The page says what the terminal says: the same tables in the same order with the same words and numbers; and what only the page has. */
import { describe, expect, it } from 'vitest'
import { entryAt } from '../../src/catalogue/measures.js'
import { reportPage } from '../../src/page/html.js'
import { chartsOf, type ResultDocument } from '../../src/questions/charts-of-document.js'
import { reportOf } from '../../src/questions/report-of-document.js'
import type { Report } from '../../src/report/report.js'
import { sections } from '../../src/report/sections.js'
import { terminalReport } from '../../src/report/terminal.js'
import { call } from '../cli/in-process.js'
import { demoFolder, demos } from '../demo.js'
import { saidRows } from './said.js'

async function documentOf(command: string, demo: string, ...more: string[]): Promise<ResultDocument> {
  const argv = [command, `${demo}.yaml`, '--json', '--no-files', '--workers', '1', ...more]
  const { code, out, err } = await call(argv, { cwd: demoFolder })
  expect(code, err).toBe(0)
  return JSON.parse(out) as ResultDocument
}

const text = (html: string) =>
  html
    .replace(/<[^>]*>/g, '')
    .replace(/&#(\d{3,});/g, (_, letter: string) => String.fromCodePoint(Number(letter)))
    .replace(
      /&(amp|lt|gt|quot|#39);/g,
      (_, name: string) => ({ amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" })[name]!,
    )

/** Tables of a page: titles, heads and rows as a reader sees them. */
const tablesOf = (page: string) =>
  [
    ...page.matchAll(
      /<table[^>]*><caption class="unseen">(.*?)<\/caption><thead>(.*?)<\/thead><tbody>(.*?)<\/tbody>/gs,
    ),
  ].map(([, title, head, body]) => ({
    title: text(title!),
    columns: [...head!.matchAll(/<th[^>]*>(.*?)<\/th>/g)].map(([, cell]) => text(cell!)),
    rows: [...body!.matchAll(/<tr>(.*?)<\/tr>/g)].map(([, row]) =>
      [...row!.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/g)].map(([, cell]) => text(cell!)),
    ),
  }))

/** Wide enough for every table. */
const style = { bold: (words: string) => words, width: 100_000 }
const words = (line: string) =>
  line
    .split(/ {2,}/)
    .map((cell) => cell.trim())
    .filter((cell) => cell !== '')

describe.each([
  ['run', 'parcel-corner'],
  ['run', 'refill-hall'],
  ['compare', 'tape-choice'],
])('%s of %s', async (command, demo) => {
  const document = await documentOf(command, demo, '--shifts', '10')
  const report: Report = reportOf(document)
  const page = reportPage(report, [], { document })
  const onPage = tablesOf(page)
  const lines = terminalReport(report, style).split('\n')

  it('has the same tables on the page and in the terminal', () => {
    const titles = report.tables.map(({ title }) => title)
    // those behind a chart come first in their section; all stand there once
    const common = titles.map((title) => onPage.filter((each) => each.title === title)[0]!)
    expect(onPage.filter(({ title }) => titles.includes(title))).toHaveLength(titles.length)
    let at = 0
    for (const { title, columns, rows } of common) {
      at = lines.indexOf(title, at)
      expect(at, title).toBeGreaterThan(0)
      const end = lines.indexOf('', at)
      const shown = lines.slice(at + 1, end).map(words)
      const head = shown.findIndex(
        (cells) => cells.join('|') === columns.filter((cell) => cell !== '').join('|'),
      )
      expect(head, title).toBeGreaterThanOrEqual(0)
      expect(shown.slice(head + 1)).toEqual(rows.map((row) => row.filter((cell) => cell !== '')))
    }
  })

  it('keeps the order of sections for tables and charts', () => {
    const order = Object.keys(sections)
    const places = report.tables.map(({ section }) => order.indexOf(section!))
    expect(places).toEqual([...places].sort((a, b) => a - b))
    for (const { section } of chartsOf(document)) expect(order).toContain(section)
  })

  it('opens with the sentences of the first screen in the terminal: verdict, steps, limit, what it rests on, safety', () => {
    const { screen, tiles } = report.front!
    const said = (head: string) =>
      screen!.parts.flatMap((each) => ('head' in each && each.head === head ? each.lines : []))
    const next = said('Next')
    expect(next.length).toBeGreaterThan(0)
    // common practice, no source: nothing may reward a hasty hand in a machine
    expect(next.join(' ')).not.toMatch(/faster clearing|clear (jams )?(faster|quicker)/)
    const answer = page.slice(page.indexOf('id="answer"'), page.indexOf('class="folds"'))
    const told = [
      report.question!,
      `${screen!.verdict.word}${screen!.verdict.text.startsWith(':') ? '' : ' '}${screen!.verdict.text}`,
      ...next,
      ...said('Limit'),
      ...said('Basis'),
      ...said('Safety'),
    ].map((each) => each.replaceAll('`', ''))
    const order = told.map((each) => text(answer).indexOf(each))
    expect(order).toEqual([...order].sort((a, b) => a - b))
    expect(order[0]).toBeGreaterThan(0)
    expect(tiles).toHaveLength(4)
    for (const { value } of tiles) expect(value).toMatch(/^\d/)
  })

  it('folds all else, under headings that ask, with ids that links may name', () => {
    const folds = [...page.matchAll(/<details class="fold[^"]*" id="([a-z]+)"><summary><h2>(.*?)<\/h2>/g)]
    expect(folds.length).toBeGreaterThan(8)
    expect(new Set(folds.map(([, id]) => id)).size).toBe(folds.length)
    expect(page).not.toMatch(/<details[^>]* open/)
    for (const [, id] of page.matchAll(/href="#([a-z]+)"/g)) expect(page).toContain(` id="${id}"`)
  })

  it('explains every measure that it shows', () => {
    expect(report.definitions!.rows.filter(([, , meaning]) => meaning === '')).toEqual([])
    expect(report.definitions!.rows.length).toBeGreaterThan(20)
  })

  it('lets paths be broken after their dots, and no number', () => {
    expect(page.includes('measures.<wbr>throughput')).toBe(true)
    expect(/>\d[\d.]*<wbr>/.test(page)).toBe(false)
  })

  it('has every caution in full', () => {
    for (const caution of report.cautions) expect(text(page)).toContain(caution)
  })
})

describe('the study checklist', () => {
  // STRESS-DES (Monks and others, Journal of Simulation 13 (2019), table 1; from memory): six groups of 3, 5, 4, 3, 4 and 1 items
  it('has all items of the guideline, and marks what only the reader can tell', async () => {
    const told = reportOf(await documentOf('run', 'refill-hall', '--shifts', '2')).checklist!
    const bare = reportOf(await documentOf('run', 'two-sealers', '--shifts', '2')).checklist!
    const count = (group: string) => saidRows(told).filter(([item]) => item!.startsWith(`${group}: `)).length
    const groups = ['Objectives', 'Logic', 'Data', 'Experiments', 'Implementation', 'Code']
    expect(groups.map(count)).toEqual([3, 5, 4, 3, 4, 1])
    const open = (table: typeof told, item: string) => saidRows(table).find(([name]) => name === item)![2]
    for (const item of ['Objectives: purpose', 'Data: sources of data', 'Trust: validation']) {
      expect(open(told, item)).toBe('')
      expect(open(bare, item)).toMatch(/^To fill in: /)
    }
  })
})

describe('meanings', () => {
  it.each(demos)('of %s: no measure without one', async (demo) => {
    const report = reportOf(await documentOf('run', demo, '--shifts', '2'))
    expect(report.definitions!.rows.filter(([, , meaning]) => meaning === '')).toEqual([])
  })

  it('of a measure that nobody knows: none', () => {
    expect(entryAt(['measures', 'songs']).meaning).toBe('')
  })
})
