/** Stops that a scenario does not name, and that therefore do not happen. */
import { has } from '../kinds/traits.js'
import type { Scenario } from '../scenario/schema.js'

/** Kinds of stop in words that names of pieces follow, in the order in which they are told. */
const stops = ['jams at', 'tape breaks at', 'blade service at', 'breakdowns of'] as const
type UnnamedStop = (typeof stops)[number]

/** Each kind of stop that a piece may have and has no figures for, with the names of all such pieces in the order of the file. */
export function unnamedStops(scenario: Scenario): { stop: UnnamedStop; pieces: string[] }[] {
  const unnamed = unnamedByPiece(scenario)
  return stops
    .map((stop) => ({
      stop,
      pieces: unnamed.filter((each) => each.stop === stop).map(({ piece }) => piece),
    }))
    .filter(({ pieces }) => pieces.length > 0)
}

const unnamedByPiece = ({ line }: Scenario): { stop: UnnamedStop; piece: string }[] =>
  Object.entries(line).flatMap(([name, piece]) => {
    const hasDrive = !has(piece, 'conveys') || piece.carries !== 'gravity'
    const missing: UnnamedStop[] = hasDrive && !piece.breakdowns ? ['breakdowns of'] : []
    if (has(piece, 'tapes')) {
      if (!piece.jams) missing.push('jams at')
      if (!piece['tape-breaks']) missing.push('tape breaks at')
      if (!piece.blade) missing.push('blade service at')
    }
    return missing.map((stop) => ({ stop, piece: name }))
  })
