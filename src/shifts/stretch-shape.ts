/** What a recorded stretch looks like once it is read back: times in order, and numbers of pieces and cases that there are. */
import * as z from 'zod'
import {
  ascending,
  ascends,
  count,
  isSo,
  maybe,
  number,
  numberOrNull,
  place,
  shapeOf,
  text,
} from '../catalogue/shape.js'
import { stateKeys } from '../catalogue/states.js'
import type { Movement } from '../kinds/in-pictures.js'
import { sideEnds } from '../scenario/size-law.js'
import type { WarmUp } from './steady.js'
import type { Stretch } from './stretch.js'

/** A stretch is some minutes; a longer one than this, s, would be drawn without end. Project rule. */
const mostSeconds = 1e7

const instant = number
const spell = z.tuple([instant, instant])

/** Places that are drawn side by side, at most. */
const mostServers = 10_000

const movement = shapeOf<Movement>()({
  moves: z.enum(['accumulating', 'belt', 'sealer', 'station', 'place']),
  length: z.number().min(0),
  speed: numberOrNull,
  pitches: z.array(z.number().min(0)),
  keeps: maybe(
    z.union([z.object({ spacing: z.number().min(0) }), z.object({ zone: z.number().min(0.001) })]),
  ),
  startDelay: z.number().min(0),
  servers: z.int().min(1).max(mostServers),
}).superRefine(({ moves, speed, length }, context) => {
  if (!['accumulating', 'belt', 'sealer'].includes(moves)) return
  const fault = (path: string, message: string) => context.addIssue({ code: 'custom', path: [path], message })
  if (speed === null || !(speed > 0)) fault('speed', 'a number above 0, where a belt carries')
  if (moves === 'accumulating' && !(length > 0)) fault('length', 'a number above 0')
})

const side = z.number().min(0).max(sideEnds.to)

const ofCase = shapeOf<Stretch['cases'][number]>()({
  id: number,
  kind: place,
  size: maybe(z.object({ length: side, width: side })),
  path: z.array(z.tuple([place, instant, instant.nullable()])),
  came: z.tuple([place, instant]),
  belts: maybe(z.array(instant.nullable())),
  held: maybe(z.array(z.tuple([place, instant, instant.nullable()]))),
  lost: maybe(z.literal(true)),
})

const inOrder = <Row extends readonly [number, ...unknown[]]>(each: z.ZodType<Row>) =>
  z
    .array(each)
    .refine((rows) => ascends(rows.map(([time]) => time)), 'in order of time, none before the one above')

export const warmUpShape = shapeOf<WarmUp>()({
  countFrom: number,
  cut: number,
  isSettled: isSo,
  runs: count,
  at: ascending,
  cases: z.array(number),
}).refine(({ at, cases }) => at.length === cases.length, 'as many `cases` as `at`')

export const stretchShape = shapeOf<Stretch>()({
  shift: z.int(),
  from: instant,
  to: instant,
  why: text,
  cases: z.array(ofCase),
  states: z.array(inOrder(z.tuple([instant, z.enum(stateKeys)]))),
  drives: z.array(inOrder(z.tuple([instant, z.number().min(0)]))),
  breaks: inOrder(spell),
  held: inOrder(spell),
  pieces: z.array(movement),
  sources: z.array(z.object({ name: text, whenFull: text })),
}).superRefine(rules)

function rules(stretch: Stretch, context: z.RefinementCtx): void {
  const { from, to, states, drives, pieces, breaks } = stretch
  const fault = (message: string, ...path: (string | number)[]) =>
    context.addIssue({ code: 'custom', path, message })
  if (!(to > from) || to - from > mostSeconds) fault(`after \`from\`, by ${mostSeconds} s at most`, 'to')
  if (states.length !== pieces.length) fault('a list for each of `pieces`', 'states')
  if (drives.length !== pieces.length) fault('a list for each of `pieces`', 'drives')
  for (const [index, [begin, end]] of breaks.entries())
    if (end < begin) fault('a break that ends after it begins', 'breaks', index)
  for (const [index, each] of stretch.cases.entries()) {
    const wrong = pathFault(each, stretch)
    if (wrong !== null) fault(wrong, 'cases', index)
  }
}

/** What is wrong with the way of a case; null where nothing is. */
function pathFault({ kind, path, came }: Stretch['cases'][number], stretch: Stretch): string | null {
  if (stretch.sources[came[0]] === undefined) return 'a case that came from one of `sources`'
  const pieces = path.map(([piece]) => stretch.pieces[piece])
  if (!pieces.every((piece) => piece !== undefined)) return 'a path over `pieces` that there are'
  if (pieces.some(({ moves, pitches }) => moves === 'accumulating' && !(pitches[kind]! > 0)))
    return 'of a kind that has a pitch'
  const ends = path.map(([, , end]) => end)
  if (ends.slice(0, -1).includes(null)) return 'a path that leaves each piece before the next'
  const times = path.flatMap(([, begin, end]) => (end === null ? [begin] : [begin, end]))
  return ascends(times) ? null : 'a path whose times are in order'
}
