/** The programs that run in pages, as they were built. */
import { existsSync, readFileSync } from 'node:fs'
import { brotliDecompressSync } from 'node:zlib'

/** The text of one: beside the bundled program; of one that is run from its sources, where the build puts it. */
function built(name: string, what: string): string {
  const places = ['./', '../../.build/cli/'].map((folder) => new URL(`${folder}${name}.br`, import.meta.url))
  const place = places.find((each) => existsSync(each))
  if (place) return brotliDecompressSync(readFileSync(place)).toString('utf8')
  throw new Error(`${name}, which ${what}, is missing beside the program: build it again`)
}

/** What draws in the page of a report. */
export const pageScript = (): string => built('page.js', 'draws the charts of a report')

/** What runs in the page to try a line in. */
export const tryScript = (): string => built('try.js', 'simulates a line in its page')

/** What searches in the page of the manual. */
export const searchScript = (): string => built('search.js', 'searches the manual')
