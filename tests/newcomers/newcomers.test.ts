/**
 * First hours with the program, as people have them who know the trade and not the program: what they type, the mistakes they make, and the
 * errors that lead on. What is quoted is what comes out; `WRITE_QUOTATIONS=yes` writes it anew.
 */
import { readdirSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { root } from '../manual/examples.js'
import { follow } from '../manual/follow.js'

const stories = readdirSync(path.join(root, 'tests/newcomers')).filter((name) => name.endsWith('.md'))

/** A list of cases as a spreadsheet in half of Europe writes it. All figures are invented. */
function sizes(): string {
  const rows = Array.from({ length: 300 }, (_, index) => {
    const length = 250 + ((index * 37) % 330)
    const width = Math.min(length, 180 + ((index * 53) % 220))
    const height = 120 + ((index * 71) % 280)
    const weight = ((length * width * height) / 4e6).toFixed(1).replace('.', ',')
    return `P${String(index + 1).padStart(3, '0')};${length};${width};${height};${weight};${1 + Math.floor(2000 / (index + 3))}`
  })
  return `SKU;Length;Width;Height;Weight;Orders\n${rows.join('\n')}\n`
}

describe('newcomers', () => {
  it('have four tasks', () => expect(stories).toHaveLength(4))

  it.each(stories)(
    '%s',
    (name) => follow(`tests/newcomers/${name}`, false, { 'sizes.csv': sizes() }),
    300_000,
  )
})
