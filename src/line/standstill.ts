/** A line that cannot go on by its own design: cases that wait for one another, or that run in a circle without time passing. */
import { Fault } from '../scenario/fault.js'
import type { Equipment } from './equipment.js'

/** The scenario describes a line that comes to a standstill: no bug of this program. */
export class Standstill extends Fault {
  constructor(
    /** Name of a piece of the line where it shows. */
    readonly piece: string,
    /** What happened, in words. */
    readonly rule: string,
    /** The nearest mend. */
    readonly fix: string,
    readonly shift: number,
  ) {
    super('standstill', rule)
  }
}

const inShift = (seed: string, shift: number) => `in shift ${shift} of seed ${JSON.stringify(seed)}`
const seconds = (time: number) => `${Number(time.toFixed(3))} s`

/** Pieces that wait for one another in a circle, so that none of them moves again. */
export class DeadlockError extends Standstill {
  constructor(
    /** Each waits for the next, the last one for the first. */
    readonly circle: readonly string[],
    /** Since the start of the shift, s. */
    readonly since: number,
    /** One of them stands for a sensor. */
    bySensor: boolean,
    seed: string,
    shift: number,
  ) {
    const waits = circle.map(
      (name, index) => `\`${name}\` waits for \`${circle[(index + 1) % circle.length]}\``,
    )
    super(
      circle[0]!,
      `the line is locked ${inShift(seed, shift)} from ${seconds(since)} on: ${waits.join(', ')}`,
      bySensor
        ? 'change places or times of the sensors in this circle, so that one of these pieces runs again'
        : 'give this circle more room, another way out, or right of way for the cases inside it',
      shift,
    )
  }
}

/** Cases run round a loop of pieces that take no time. */
export class EndlessLoopError extends Standstill {
  constructor(pieces: readonly string[], now: number, seed: string, shift: number) {
    const named = pieces.map((name) => `\`${name}\``).join(', ')
    super(
      pieces[0]!,
      `cases run in a circle without time passing ${inShift(seed, shift)} at ${seconds(now)}: ${named}`,
      'give one of these pieces a time above 0 s',
      shift,
    )
  }
}

/** Pieces that wait for one another, the instant at which the last of them came to stand, s, and whether one stands for a sensor. */
export interface Circle {
  circle: string[]
  since: number
  bySensor: boolean
}

/**
 * The pieces that are locked now, each waiting for the next and the last for the first, with the instant at which
 * the last of them came to stand; null where there are none.
 *
 * A piece is locked if it is blocked, has nothing pending of its own, and waits only for locked pieces. The
 * largest set of which this is true is found by taking away, again and again, whoever breaks it.
 */
export function findCircle(
  equipment: readonly Equipment[],
  mayBeLocked = (piece: Equipment): boolean => piece.standsBlocked(),
  sinceOf = (piece: Equipment): number => piece.stateSince,
): Circle | null {
  const locked = new Set(equipment.filter(mayBeLocked))
  const awaited = (piece: Equipment) =>
    equipment.filter(
      (other) => other.hasRefused(piece) || other.holdsUp(piece) || piece.waitsForSensorOn(other),
    )
  let before = -1
  while (locked.size !== before) {
    before = locked.size
    for (const piece of locked) {
      const others = awaited(piece)
      if (others.length === 0 || others.some((other) => !locked.has(other))) locked.delete(piece)
    }
  }
  if (locked.size === 0) return null
  const path: Equipment[] = []
  let piece = equipment.find((each) => locked.has(each))!
  while (!path.includes(piece)) {
    path.push(piece)
    piece = awaited(piece)[0]!
  }
  const circle = path.slice(path.indexOf(piece))
  return {
    circle: circle.map(({ name }) => name),
    since: Math.max(...circle.map(sinceOf)),
    bySensor: circle.some((each) => each.isStuckBySensor),
  }
}

/** Names of the pieces that lie on a way from `piece` back to itself; none where no way leads back. */
export function piecesOnACircle(piece: Equipment): string[] {
  const onward = (from: Equipment) => {
    const reached = new Set<Equipment>()
    const add = (each: Equipment) => {
      for (const way of each.ways) if ('ways' in way) reached.add(way as Equipment)
    }
    add(from)
    // a set keeps the order in which it was filled, so that this visits what is added on the way
    for (const each of reached) add(each)
    return reached
  }
  return [...onward(piece)].filter((each) => onward(each).has(piece)).map(({ name }) => name)
}
