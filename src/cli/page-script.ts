/** The programs that run in pages, as they were built. */
import { existsSync, readFileSync } from 'node:fs'
import { brotliDecompressSync } from 'node:zlib'

/** By their names. */
interface Programs {
  /** What draws in the page of a report. */
  page: string
  /** What runs in the page to try a line in. */
  try: string
  /** What searches in the page of the manual. */
  search: string
}

/** All of them, unpacked: beside the bundled program; of one that is run from its sources, where the build puts them. */
export function programs(): Programs {
  const places = ['./', '../../.build/cli/'].map(
    (folder) => new URL(`${folder}pages.json.br`, import.meta.url),
  )
  const place = places.find((each) => existsSync(each))
  if (place) return JSON.parse(brotliDecompressSync(readFileSync(place)).toString('utf8'))
  throw new Error('pages.json.br, the programs of pages, is missing beside the program: build it again')
}
