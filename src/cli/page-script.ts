/** The program that runs in the page of a report, as it was built. */
import { existsSync, readFileSync } from 'node:fs'

/** Beside the bundled program; of one that is run from its sources, where the build puts it. */
const places = [new URL('./page.js', import.meta.url), new URL('../../.build/cli/page.js', import.meta.url)]

/** Its text. */
export function pageScript(): string {
  const place = places.find((each) => existsSync(each))
  if (place) return readFileSync(place, 'utf8')
  throw new Error(
    'page.js, which draws the charts of a report, is missing beside the program: build it again',
  )
}
