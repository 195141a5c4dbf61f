/** Stops that a scenario does not name, and that therefore do not happen. */
import { has } from '../kinds/traits.js'
import type { Scenario } from '../scenario/schema.js'

type Piece = Scenario['line'][string]

/** Kinds of stop in words that names of pieces follow, in the order in which they are told: whether a piece may have it and has no figures for it. */
const unnamed = {
  'jams at': (piece: Piece) => has(piece, 'tapes') && !piece.jams,
  'tape breaks at': (piece: Piece) => has(piece, 'tapes') && !piece['tape-breaks'],
  'blade service at': (piece: Piece) => has(piece, 'tapes') && !piece.blade,
  'breakdowns of': (piece: Piece) =>
    !(has(piece, 'conveys') && piece.carries === 'gravity') && !piece.breakdowns,
}

/** Each such kind of stop, with the names of all such pieces in the order of the file. */
export const unnamedStops = ({ line }: Scenario): { stop: keyof typeof unnamed; pieces: string[] }[] =>
  (Object.keys(unnamed) as (keyof typeof unnamed)[])
    .map((stop) => ({ stop, pieces: Object.keys(line).filter((name) => unnamed[stop](line[name]!)) }))
    .filter(({ pieces }) => pieces.length > 0)
