/** The three balances that every shift must keep: cases, tape, time. A breach is a bug of this program, never of a scenario. */
import type { Equipment } from './equipment.js'
import type { Exit } from './exit.js'
import type { Floor } from './floor.js'
import type { Source } from './source.js'

/** A balance does not close. */
export class BalanceError extends Error {
  constructor(what: string, seed: string, shift: number) {
    super(
      `the balance of ${what} does not close in shift ${shift} of seed ${JSON.stringify(seed)}: a bug of tapeshift`,
    )
    this.name = 'BalanceError'
  }
}

/** Rounding of the sums of a shift, as a share of their size. */
const hair = 1e-9

/** Throws `BalanceError` when cases, tape or time of the shift that has just ended are not all accounted for. */
export function assertBalances(
  floor: Floor,
  sources: readonly Source[],
  equipment: readonly Equipment[],
  exit: Exit,
  seed: string,
  shift: number,
): void {
  const sealers = equipment.flatMap((piece) => piece.mechanism.taper() ?? [])
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)
  const arrived = sum(sources.map((source) => source.arrived))
  const turnedAway = sum(sources.map((source) => source.turnedAway))
  const lost = sum(equipment.map((piece) => piece.mechanism.jams?.casesLost ?? 0))
  const onTheLine =
    sum(sources.map((source) => source.held())) + sum(equipment.map((piece) => piece.mechanism.held()))
  if (
    floor.broughtIn + arrived !== onTheLine + exit.out + exit.escaped + exit.rejected + lost + turnedAway ||
    onTheLine !== floor.cases.inUse
  )
    throw new BalanceError(
      `cases (${floor.broughtIn} inside, ${arrived} arrived, ${onTheLine} on the line, ${exit.out} out, ${exit.escaped} escaped, ${exit.rejected} rejected, ${lost} lost, ${turnedAway} turned away)`,
      seed,
      shift,
    )
  for (const sealer of sealers)
    for (const head of sealer.heads) {
      const off = head.imbalance()
      if (!(Math.abs(off) <= hair * (1 + head.used) * 100))
        throw new BalanceError(`tape (${off} m at ${sealer.name}, ${head.name})`, seed, shift)
    }
  for (const piece of equipment) {
    const off = sum([...piece.stateTimes]) - floor.counted.time
    if (!(Math.abs(off) <= hair * floor.counted.time * 10) || piece.stateTimes.some((time) => time < 0))
      throw new BalanceError(`time (${off} s at ${piece.name})`, seed, shift)
  }
}
