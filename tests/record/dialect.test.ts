/** Files of a log as they come: delimiters, encodings, quotes, rows that are too long or too short, and what is no table at all. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { FilesBeside } from '../../src/cli/files.js'
import { readLogOf } from '../../src/cli/rows.js'
import { type Dialect, delimiterOf } from '../../src/record/dialect.js'

const folder = mkdtempSync(path.join(os.tmpdir(), 'tapeshift-dialect-'))
afterAll(() => rmSync(folder, { recursive: true }))

interface Read {
  header: readonly string[]
  rows: [number, ...string[]][]
  dialect: Dialect | null
  fault: string
}

/** What is read of a file that holds `content`. */
function read(content: string | Uint8Array): Read {
  const file = path.join(folder, 'log.csv')
  writeFileSync(file, content)
  const found: Read = { header: [], rows: [], dialect: null, fault: '' }
  try {
    readLogOf(
      file,
      'log.csv',
      {
        header: (names) => {
          found.header = names
        },
        row: (cells, row) => {
          found.rows.push([row, ...cells])
          return true
        },
        written: (dialect) => {
          found.dialect = dialect
        },
      },
      () => {},
    )
  } catch (error) {
    found.fault = (error as Error).message
  }
  return found
}

const latin = (text: string) => Buffer.from(text, 'latin1')

describe('a file of a log', () => {
  it.each([
    ['a,b\n1,2\n', ','],
    ['a;b\n1,5;2\n', ';'],
    ['a\tb\n1\t2\n', '\t'],
    ['"a;1";"b,,,2"\n1;2\n', ';'],
    ['one\n1\n', ','],
    ['a;b\r\n1;2\r\n', ';'],
    ['\n\na;b\n1;2\n', ';'],
  ])('%j is parted by %j', (text, delimiter) => {
    expect(delimiterOf(text)).toBe(delimiter)
    expect(read(text).dialect).toEqual({ delimiter, encoding: 'utf-8' })
    expect(read(text).rows).toHaveLength(1)
  })

  it('rows are counted as a spreadsheet counts them, empty ones too', () => {
    expect(read('a;b\r\n1;2\r\n\r\n3;4').rows).toEqual([
      [2, '1', '2'],
      [4, '3', '4'],
    ])
    expect(read('\n\na;b\n1;2\n').rows).toEqual([[2, '1', '2']])
  })

  it('empty cells between tabs stay where they are', () => {
    expect(read('a\tb\tc\n1\t\t3\n\t\t3\n').rows).toEqual([
      [2, '1', '', '3'],
      [3, '', '', '3'],
    ])
  })

  it.each<[string, Uint8Array, string]>([
    ['UTF-8', Buffer.from('Größe;b\nÄ;2\n'), 'utf-8'],
    ['UTF-8 with its mark', Buffer.from('\ufeffGröße;b\nÄ;2\n'), 'utf-8'],
    ['Latin-1', latin('Größe;b\nÄ;2\n'), 'windows-1252'],
    ['UTF-16', Buffer.from('\ufeffGröße;b\nÄ;2\n', 'utf16le'), 'utf-16le'],
    ['UTF-16 the other way round', Buffer.from('\ufeffGröße;b\nÄ;2\n', 'utf16le').swap16(), 'utf-16be'],
  ])('%s is found', (_, bytes, encoding) => {
    const { header, rows, dialect } = read(bytes)
    expect(header).toEqual(['Größe', 'b'])
    expect(rows).toEqual([[2, 'Ä', '2']])
    expect(dialect).toEqual({ delimiter: ';', encoding })
  })

  it('Latin-1 is found where its first letter beyond ASCII comes late', () => {
    const plain = `a;b\n${'1;2\n'.repeat(100_000)}`
    const { rows, dialect } = read(Buffer.concat([latin(plain), latin('Stau Einläufe;2\n')]))
    expect(dialect?.encoding).toBe('windows-1252')
    expect(rows.at(-1)).toEqual([100_002, 'Stau Einläufe', '2'])
  })

  it('a letter is never cut where a part ends', () => {
    // parts are of 2^18 bytes: the letter of two bytes lies across their border
    const text = `a\n${'x'.repeat(2 ** 18 - 3)}ä\n`
    const { rows, dialect } = read(text)
    expect(rows[0]![1]!.endsWith('xä')).toBe(true)
    expect(dialect?.encoding).toBe('utf-8')
  })

  it('quotes hold delimiters and new lines; a quote within a text is a letter', () => {
    expect(read('a;b\n"x;y\nz";2\n12" box;3\n').rows).toEqual([
      [2, 'x;y\nz', '2'],
      [3, '12" box', '3'],
    ])
  })

  it('rows that are longer or shorter than the header are handed over as they are', () => {
    expect(read('a;b\n1\n1;2;3\n').rows).toEqual([
      [2, '1'],
      [3, '1', '2', '3'],
    ])
  })

  it.each<[string, string | Uint8Array, string]>([
    ['a quote without an end', 'a;b\n"1;2\n3;4\n', 'never closed'],
    ['a line without an end', `a;b\n${'x'.repeat(3_000_000)}`, 'more than a million characters'],
    ['zeros', new Uint8Array(1000), 'not text'],
    ['a workbook', Uint8Array.from([0x50, 0x4b, 3, 4, 20, 0, 6, 0, 10, 0, 0, 0]), 'not text'],
  ])('%s is refused with what it is', (_, content, message) => {
    const { fault } = read(content)
    expect(fault).toContain('log.csv')
    expect(fault).toContain(message)
  })

  it('that is empty has no header', () => {
    expect(read('')).toMatchObject({ header: [], rows: [], fault: '' })
    expect(read('\n\n\n')).toMatchObject({ header: [], rows: [], fault: '' })
  })

  it('beside a record is known by its hash, and none outside its folder is read', () => {
    writeFileSync(path.join(folder, 'log.csv'), 'a;b\n1;2\n')
    const beside = new FilesBeside(folder, 'record')
    const rows: string[][] = []
    const taker = {
      header: () => {},
      row: (cells: readonly string[]) => {
        rows.push([...cells])
        return true
      },
      written: () => {},
    }
    beside.readLog('log.csv', taker)
    expect(rows).toEqual([['1', '2']])
    // SHA-256 of the eight bytes, by sha256sum
    expect(beside.hashes()).toEqual([
      ['log.csv', '403bea5152c251c5bc7ef420d824d191605723f99392e83a0549ad58c6d46291'],
    ])
    expect(() => beside.readLog('../log.csv', taker)).toThrow('outside the folder of the record')
    expect(() => beside.readLog('none.csv', taker)).toThrow('no such file')
  })
})
