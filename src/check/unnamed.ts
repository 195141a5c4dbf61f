/** Stops that a scenario does not name, and that therefore do not happen. */
import type { Scenario } from '../scenario/schema.js'

/** A kind of stop in words that the name of the piece follows. */
export type UnnamedStop = 'jams at' | 'tape breaks at' | 'blade service at' | 'breakdowns of'

/** Every stop that a piece of its kind may have and this one has no figures for; in the order of the file. */
export const unnamedStops = ({ line }: Scenario): { stop: UnnamedStop; piece: string }[] =>
  Object.entries(line).flatMap(([name, piece]) => {
    const hasDrive = piece.type !== 'conveyor' || piece.carries !== 'gravity'
    const missing: UnnamedStop[] = hasDrive && !piece.breakdowns ? ['breakdowns of'] : []
    if (piece.type === 'sealer') {
      if (!piece.jams) missing.push('jams at')
      if (!piece['tape-breaks']) missing.push('tape breaks at')
      if (!piece.blade) missing.push('blade service at')
    }
    return missing.map((stop) => ({ stop, piece: name }))
  })
