/** The manual of this program: its written topics are files beside it. */
import { existsSync, readFileSync } from 'node:fs'
import type { Command } from 'commander'
import { type Manual, manualOf, type Written } from '../manual/topics.js'
import { described } from './described.js'

/** Beside the bundled program; of one that is run from its sources, where they are written. */
const places = [new URL('./manual/', import.meta.url), new URL('../manual/texts/', import.meta.url)]

/** All topics. */
export const manualOfProgram = (program: Command): Manual => manualOf(writtenTopic, described(program))

function writtenTopic(name: Written): string {
  const place = places.map((each) => new URL(`${name}.md`, each)).find((file) => existsSync(file))
  if (place) return readFileSync(place, 'utf8')
  throw new Error(`${name}.md, a topic of the manual, is not beside the program: build it again`)
}
