/** The work of `tapeshift size`: make the designs, search the cheapest, simulate it for itself, print, write. */
import { createHash } from 'node:crypto'
import path from 'node:path'
import { firstError } from '../check/check.js'
import { codes } from '../check/finding.js'
import { handCalculation } from '../check/hand.js'
import { Line } from '../line/line.js'
import { designsSizedCsv } from '../report/csv.js'
import type { Scenario } from '../scenario/schema.js'
import { estimatesOf, lineResult } from '../study/line-result.js'
import type { Workers } from '../study/replicate.js'
import { findCheapest, type Tried } from '../study/size.js'
import { deliver, loadFiles } from './deliver.js'
import { exits, type Io } from './io.js'
import { Journal, ownerOf } from './journal.js'
import { refuseContradictions } from './options.js'
import { refuseToOverwrite } from './result-folder.js'
import { loadForCommand } from './scenario.js'
import { type Shifts, simulating } from './simulating.js'
import { type SizeOptions, usualMostEach } from './size.js'
import { promiseOf, type SizeAsked, sizeAsked } from './size-asked.js'
import { type ChosenDesign, combine, inOrder } from './size-choices.js'
import { type Found, sizeResult } from './size-document.js'

/** Sizes the line of the scenario `name`, with `workers`; returns the exit code. */
export async function size(name: string, options: SizeOptions, io: Io, workers: Workers): Promise<number> {
  refuseContradictions(options)
  // the most shifts of a design are not the shifts of the scenario, for which the pick is simulated
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
  const { seed, confidence, shifts: usual } = loaded.scenario.study
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
      (shifts) => search(ordered, asked, { confidence, most, usual, isFull }, shifts, journal),
    )
    if (found === null) return exits.interrupted
    const result = sizeResult({
      found,
      loaded,
      asked,
      ordered,
      all,
      refused,
      most,
      options,
      name,
      confidence,
    })
    const rows = () => new Map([['designs.csv', designsSizedCsv(result)]])
    await deliver(result, rows, { folder, loaded, options, io })
    journal?.remove()
    return result.pick === null ? exits.requirement : exits.done
  } finally {
    journal?.close()
  }
}

const hashOf = (value: unknown): string => createHash('sha256').update(JSON.stringify(value)).digest('hex')

async function search(
  ordered: readonly ChosenDesign[],
  asked: SizeAsked,
  how: { confidence: number; most: number; usual: number; isFull: boolean },
  shifts: Shifts,
  journal: Journal | null,
): Promise<Found | null> {
  const lines = new Map<number, Line>()
  const lineOf = (design: number) => {
    if (!lines.has(design)) {
      lines.clear()
      lines.set(design, new Line(ordered[design]!.scenario))
    }
    return lines.get(design)!
  }
  // two designs may be alike in all that shifts depend on, and differ in price
  const keyOf = (design: number) => `${design} ${ordered[design]!.key}`
  /** The design that was asked for last is known from before. */
  let isKnown = false
  const promises = (design: number) =>
    asked.holds.map((text) => promiseOf(text, ordered[design]!.scenario, lineOf(design)))
  const found = await findCheapest(
    ordered.map((design) => ({
      ruledOut: () => (how.isFull ? null : ruledOut(design.scenario, asked)),
      isBelow: belowOf(ordered, design, asked),
    })),
    { promises, ...how },
    async (design, count) => {
      const isThere = shifts.of[design]!.length >= count || (await shifts.ensure(design, count))
      return isThere ? shifts.of[design]!.map(({ values }) => values) : null
    },
    (design) => {
      const outcome = journal?.outcomeOf(keyOf(design)) as Tried | undefined
      isKnown = outcome !== undefined
      // JSON has no word for a number that is none
      const numbers = (values: readonly (number | null)[]) => values.map((value) => value ?? Number.NaN)
      return outcome
        ? { ...outcome, design, sums: numbers(outcome.sums), squares: numbers(outcome.squares) }
        : null
    },
    (tried) => {
      if (tried.without === null) journal?.keepOutcome(keyOf(tried.design), tried)
      shifts.forget(tried.design)
      shifts.tell(tried.without === null && !isKnown)
    },
  )
  if (found === null) {
    shifts.sayInterrupted()
    return null
  }
  const { pick } = found
  const conditions = promises(pick ?? 0)
  if (pick === null) return { ...found, conditions, picked: null }
  const count = Math.max(how.usual, found.tried.find(({ design }) => design === pick)!.shifts)
  if (!(await shifts.ensure(pick, count))) {
    shifts.sayInterrupted()
    return null
  }
  const { scenario } = ordered[pick]!
  const line = lineOf(pick)
  const all = shifts.of[pick]!
  const estimates = estimatesOf(line, scenario, all, { confidence: how.confidence, isPlain: false })
  const picked = {
    shifts: all.length,
    bottleneck: handCalculation(scenario).line.bottleneck?.name ?? null,
    ...lineResult(line, scenario, all, estimates, shifts.warmUps[pick]?.countFrom ?? 0),
  }
  return { ...found, conditions, picked }
}

/** What pencil and paper say against a design; null where nothing. */
function ruledOut({ target, ...others }: Scenario, { needs }: SizeAsked): string | null {
  const rate = Math.max(needs.rate ?? 0, needs.target ? (target ?? 0) : 0)
  const fault = firstError({
    scenario: rate > 0 ? { ...others, target: rate } : others,
    placeOf: () => null,
  })
  return fault ? codes[fault.code] : null
}

/** Whether a design has no more than another of every factor of which more never hurts, and is like it in all else. */
function belowOf(ordered: readonly ChosenDesign[], design: ChosenDesign, { choices, rising }: SizeAsked) {
  if (rising.length === 0) return () => false
  return (other: number) =>
    choices.every(({ path }, index) => {
      const [mine, theirs] = [design.places[index]!, ordered[other]!.places[index]!]
      return rising.includes(path) ? mine <= theirs : mine === theirs
    })
}
