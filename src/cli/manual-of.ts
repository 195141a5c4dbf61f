/** The manual of this program: its written topics lie beside it, packed together. */
import { existsSync, readFileSync } from 'node:fs'
import { brotliDecompressSync } from 'node:zlib'
import type { Command } from 'commander'
import { type Manual, manualOf, type Written } from '../manual/topics.js'
import { described } from './described.js'

/** Beside the bundled program, texts by their names; of one that is run from its sources, where they are written. */
const packed = new URL('./manual.json.br', import.meta.url)
const texts = new URL('../manual/texts/', import.meta.url)

/** All topics. */
export function manualOfProgram(program: Command): Manual {
  const all = existsSync(packed)
    ? (JSON.parse(brotliDecompressSync(readFileSync(packed)).toString()) as Record<Written, string>)
    : null
  return manualOf((name) => all?.[name] ?? writtenTopic(name), described(program))
}

function writtenTopic(name: Written): string {
  const file = new URL(`${name}.md`, texts)
  if (existsSync(file)) return readFileSync(file, 'utf8')
  throw new Error(`${name}.md, a topic of the manual, is not beside the program: build it again`)
}
