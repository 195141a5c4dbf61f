/**
 * A case that lies on two pieces: what the piece ahead, onto which it goes, says of it to the piece behind, which still holds
 * its tail.
 *
 * The rules, of any joint. A case passes with its leading edge; from then on the piece ahead alone moves it, and on the piece
 * behind lies what has not crossed yet:
 *
 *   length behind the joint = length of the case - way of its leading edge beyond the joint, while that is above 0
 *
 * What is behind on an accumulating conveyor follows that tail as it follows any case, so nothing overlaps. Belts cannot: while
 * they hold the tail of a case that stands ahead they stand, and so does what they carry. A stop of the piece behind lets the case
 * go on, drawn off by the drive ahead; only the driven belts of a sealer hold it, and rollers or belt ahead slip under it.
 * Places (stations, diverts, inspections, the flap place of a sealer, the exit) take a case in whole, and give it out whole.
 *
 * Nothing happens at the instant at which a tail has crossed: when that is, is worked out where it is asked. The piece ahead
 * says how far the case has come and how far it will come as far as is known by now; where that changes (it stops, moves again,
 * or the cases ahead of it move up) it calls the piece behind, which asks anew.
 */
import { unset } from '../engine/unset.js'

/** One question to the piece ahead and its answer: fields, for a number that is handed over may be allocated. */
export class Tail {
  /** Asked: the way of the leading edge beyond the joint, m. */
  distance = unset
  /** How much of that it has gone, m. */
  gone = unset
  /** How much of that it will go as far as is known, m, and when it is there, s: a time that is past may be any. */
  reach = unset
  reachAt = unset
  /** Its speed ahead, m/s. */
  speed = unset
  /** Length that is left from here to a shut exit when all cases have closed up, m: `Taker.addRoom` adds to it. */
  room = unset

  /** It has been taken in whole. */
  through(): void {
    this.gone = this.distance
    this.reach = this.distance
    this.reachAt = 0
    this.speed = Infinity
  }

  /** It stands where it is. */
  stands(): void {
    this.reach = this.gone
    this.reachAt = 0
  }
}
