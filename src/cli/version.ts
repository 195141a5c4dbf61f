/** The version of the program, from its package. */
import { readFileSync } from 'node:fs'

const { version: found } = JSON.parse(
  readFileSync(new URL('../../package.json', import.meta.url), 'utf8'),
) as { version: string }

export const version: string = found
