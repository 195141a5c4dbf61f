/** The work of `tapeshift size`: make the designs, search the cheapest, print, write. */
import { createHash } from 'node:crypto'
import path from 'node:path'
import { designsSizedCsv } from '../questions/size/csv.js'
import { isShown } from '../questions/size/document.js'
import type { Workers } from '../shifts/replicate.js'
import { deliver, loadFiles } from './deliver.js'
import { exits, type Io } from './io.js'
import { Journal, ownerOf } from './journal.js'
import { refuseContradictions } from './options.js'
import { refuseToOverwrite } from './result-folder.js'
import { loadForCommand } from './scenario.js'
import { simulating } from './simulating.js'
import { type SizeOptions, usualMostEach } from './size.js'
import { sizeAsked } from './size-asked.js'
import { combine, inOrder } from './size-choices.js'
import { sizeResult } from './size-document.js'
import { search } from './size-search.js'
import { sizeHead } from './size-warned.js'
import { exitCode } from './warned.js'

/** Sizes the line of the scenario `name`, with `workers`; returns the exit code. */
export async function size(name: string, options: SizeOptions, io: Io, workers: Workers): Promise<number> {
  refuseContradictions(options)
  // the most shifts of a design are not the shifts of the scenario
  const { shifts: most = usualMostEach, ...others } = options
  const loaded = await loadForCommand(name, others, io)
  const asked = sizeAsked(options, loaded)
  const folder = path.resolve(io.cwd, options.out ?? path.join('out', `${loaded.stem}-size`))
  if (options.files) refuseToOverwrite(folder, name, loaded, io)
  const { designs, refused, all } = combine(
    asked.choices,
    loaded,
    (scenario) => asked.rate ?? scenario.target ?? 0,
  )
  const ordered = inOrder(designs, asked.choices, asked.order)
  const { seed, confidence } = loaded.scenario.study
  const isFull = options.full === true
  const note = (text: string) => io.stderr.write(`note: ${text}\n`)
  const owner = ownerOf(loaded)
  // how a search goes on hangs on the order of the designs, and what came of each on how many were tried before
  const course = [asked, most, isFull, confidence, ordered.map(({ key }) => key)]
  const journal = options.files
    ? Journal.open(
        folder,
        { ...owner, scenario: hashOf([owner.scenario, course]) },
        options.resume === true,
        note,
      )
    : null
  try {
    loadFiles(options)
    const found = await simulating(
      {
        designs: ordered,
        seed,
        total: ordered.length,
        isOpen: !isFull,
        counts: 'designs',
        workers,
        isQuiet: options.quiet === true,
        journal,
        io,
      },
      (shifts) => search(ordered, asked, { confidence, most, isFull }, shifts, journal),
    )
    if (found === null) return exits.interrupted
    const result = {
      ...sizeResult({ found, loaded, asked, ordered, all, refused, most, options, name, confidence }),
      ...sizeHead(ordered, found.pick, asked),
    }
    const rows = () => new Map([['designs.csv', designsSizedCsv(result)]])
    await deliver(result, rows, { folder, loaded, options, io })
    journal?.remove()
    return exitCode(result, isShown(result) ? exits.done : exits.requirement, options, io)
  } finally {
    journal?.close()
  }
}

const hashOf = (value: unknown): string => createHash('sha256').update(JSON.stringify(value)).digest('hex')
