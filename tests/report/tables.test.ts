/** Tables with words: no line runs over the terminal, and words stand to the left wherever a table is shown. */
import { describe, expect, it } from 'vitest'
import { reportPage } from '../../src/page/html.js'
import type { CheckResult } from '../../src/questions/check/document.js'
import { checkText } from '../../src/questions/check/report.js'
import { reportOf } from '../../src/questions/report-of-document.js'
import type { RunResult } from '../../src/questions/run/document.js'
import { runReport } from '../../src/questions/run/report.js'
import { runTables } from '../../src/questions/run/tables.js'
import { cellText, figures, words } from '../../src/report/cell.js'
import type { Table } from '../../src/report/report.js'
import { tableText } from '../../src/report/table-text.js'
import { terminalReport } from '../../src/report/terminal.js'
import { call } from '../cli/in-process.js'
import { demoFolder } from '../demo.js'

const styleOf = (width: number) => ({ bold: (text: string) => text, width })

const set = (table: Table, width: number) => tableText(table, 'metric', styleOf(width), { gap: 2, margin: 0 })

const tooLong = (text: string, width: number) => text.split('\n').filter((line) => line.length > width)

async function documentOf<Result>(...argv: string[]): Promise<Result> {
  const { code, out, err } = await call([...argv, '--json'], { cwd: demoFolder })
  expect(code, err).toBe(0)
  return JSON.parse(out) as Result
}

describe('a table with words', () => {
  const table: Table = {
    title: 'Stops',
    note: '',
    columns: [...words('piece'), ...figures('minutes'), ...words('why')],
    rows: [
      ['sealer', '12', 'the tape ran out and nobody was there to see it'],
      ['loader', '3', 'n-o-s-p-a-c-e-t-o-b-r-e-a-k-a-t'],
    ],
  }

  it('breaks words into lines and leaves numbers to the right', () => {
    expect(set(table, 40)).toBe(
      [
        'Stops',
        'piece   minutes  why',
        'sealer       12  the tape ran out and',
        '                 nobody was there to see',
        '                 it',
        'loader        3  n-o-s-p-a-c-e-t-o-b-r-e',
        '                 -a-k-a-t',
      ].join('\n'),
    )
  })

  it('puts words below where too little room is left for them', () => {
    expect(set(table, 34).split('\n').slice(1, 8)).toEqual([
      'piece   minutes',
      'sealer       12',
      'loader        3',
      '',
      'piece   why',
      'sealer  the tape ran out and',
      '        nobody was there to see it',
    ])
  })

  it('keeps to the width even where names leave no room', () => {
    const name = 'a-name-that-is-longer-than-any-name-on-a-floor'
    const wide = {
      ...table,
      columns: [...words('piece'), ...figures(name), ...words('why')],
      rows: [[name, '12', name]],
    }
    expect(tooLong(set(wide, 40), 40)).toEqual([])
  })
})

describe('the report of a run', async () => {
  const result = await documentOf<RunResult>(
    'run',
    'soap-works.yaml',
    '--shifts',
    '20',
    '--workers',
    '1',
    '--no-files',
  )

  it.each([80, 100, 120])('made from the document alone fits a terminal of %i columns', (width) => {
    const text = terminalReport(runReport(result), styleOf(width))
    expect(text).toMatch(/^ Good cases a shift +packing is blocked/m)
    expect(tooLong(text, width)).toEqual([])
  })

  it('sets the words of the page to the left', () => {
    const page = reportPage(reportOf(result), [])
    expect(page).toMatch(/<td class="words"[^>]*>packing is blocked/)
    expect(page).toContain('<th scope="col" class="words">why</th>')
    expect(page).toContain('<th scope="col">difference</th>')
    expect(page).toContain('.words { text-align: left; }')
  })
})

describe('the report of a check', () => {
  it.each([80, 100, 120])('fits a terminal of %i columns', async (width) => {
    const result = await documentOf<CheckResult>('check', 'refill-hall.yaml')
    expect(tooLong(checkText(result, styleOf(width)), width)).toEqual([])
  })
})

describe('failures and repairs', () => {
  it('are told of all that may break down, sealer or not, in hours, with their number where they are few', async () => {
    const argv = ['run', 'two-sealers.yaml', '--no-files', '--shifts', '2', '--workers', '1']
    const result = await documentOf<RunResult>(...argv)
    const { rows } = runTables(result).find(({ title }) => title === 'Failures and repairs')!
    expect(rows.map(([name]) => name)).toEqual(['fast', 'lane-heavy'])
    const { mean, few } = result.equipment['lane-heavy']!.effectiveness!.MTBF!
    const told = `${(mean! / 3600).toFixed(2)} h (${few!.events} event${few!.events === 1 ? '' : 's'})`
    expect(cellText(rows[1]![1], 'metric')).toBe(told)
  })
})
