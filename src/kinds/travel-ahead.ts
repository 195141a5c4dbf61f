/** Travel of belts whose standstills are worked out ahead of the clock. */
import { unset } from '../engine/unset.js'
import { hair, type Travel } from './travel.js'

/** Rests that are told in the order in which they begin. */
interface Told {
  rest(from: number, until: number): void
}

/**
 * The numbers of `Travel`, to the last digit: how far the belts had run at the instant since which they run. Each standstill makes
 * another pair of them, so the pair `n` holds up to standstill `n`. Asked in the order of time.
 */
export class TravelAhead {
  count = 0
  /** A travel, m, and an instant, s: what is asked and what is found, for a number that a call takes or gives may be allocated. */
  travel = unset
  at = unset
  /** Standstills that are over at the instant asked for last. */
  over = 0
  froms = new Float64Array(64)
  untils = new Float64Array(64)
  private ats = new Float64Array(64)
  private sinces = new Float64Array(64)
  /** 1 for one that begins as the machine itself finds its exit shut: what comes to a head at that instant is first. */
  private isOwn = new Uint8Array(64)

  constructor(private readonly speed: number) {}

  /** From where the belts are now. */
  begin(travel: Travel): void {
    this.count = 0
    this.over = 0
    this.ats[0] = travel.at
    this.sinces[0] = travel.since
    this.froms[0] = Infinity
  }

  /** They stand from `from` to `until`, after all that are known. */
  stand(from: number, until: number, isOwn: boolean): void {
    const { count } = this
    const next = count + 1
    if (next === this.froms.length) this.grow()
    this.froms[count] = from
    this.untils[count] = until
    this.isOwn[count] = isOwn ? 1 : 0
    this.ats[next] = this.ats[count]! + this.speed * (from - this.sinces[count]!)
    this.sinces[next] = until
    this.froms[next] = Infinity
    this.count = next
  }

  /** Finds when they come to `travel`: `at`. Where they stop at that instant, it is when they run again. */
  findWhen(): void {
    const { ats, sinces, froms, speed, travel, count } = this
    let run = this.over
    let at = sinces[run]! + (travel - ats[run]!) / speed
    while (froms[run]! <= at && run < count) {
      run++
      at = Math.max(sinces[run]!, sinces[run]! + (travel - ats[run]!) / speed)
    }
    this.at = at
  }

  /** The same for a case that comes to a head there. */
  findMet(): void {
    const { ats, sinces, froms, speed, travel, count } = this
    let run = this.over
    let at = sinces[run]! + (travel - ats[run]!) / speed
    while (run < count && (froms[run]! < at || (froms[run] === at && this.isOwn[run] === 0))) {
      run++
      at = Math.max(sinces[run]!, sinces[run]! + (travel - ats[run]!) / speed)
    }
    this.at = at
  }

  /** As `findWhen`, of what they carry since the instant `at`, which may be long past. One that they stop a rounding before it is taken to be there. */
  findArrival(): void {
    const { ats, sinces, froms, speed, travel, count } = this
    let run = this.over
    while (run > 0 && sinces[run]! > this.at) run--
    let at = sinces[run]! + (travel - ats[run]!) / speed
    while (froms[run]! <= at && run < count) {
      if (ats[run + 1]! > travel - hair) {
        at = froms[run]!
        break
      }
      run++
      at = Math.max(sinces[run]!, sinces[run]! + (travel - ats[run]!) / speed)
    }
    this.at = at
  }

  /** Whether they stand at the instant `at`; if so, until when: `at`. */
  findsStanding(): boolean {
    const { froms, untils, at } = this
    let each = this.count
    while (each > 0 && froms[each - 1]! > at) each--
    if (each === 0 || !(untils[each - 1]! > at)) return false
    this.at = untils[each - 1]!
    return true
  }

  /** Moves `at` on to the first instant at which they run. */
  findRunning(): void {
    let { over, at } = this
    while (over < this.count && this.froms[over]! <= at) at = Math.max(at, this.untils[over++]!)
    this.over = over
    this.at = at
  }

  /** Finds where they are at the instant `at`, at which they run: `travel`. */
  findTravel(): void {
    this.travel = this.ats[this.over]! + this.speed * (this.at - this.sinces[this.over]!)
  }

  /** Travel at which they stand the `n`-th time, m. */
  travelOf(standstill: number): number {
    return this.ats[standstill + 1]!
  }

  /** Time for which they stand before `until`, s. */
  standing(until: number): number {
    let sum = 0
    for (let each = 0; each < this.count && this.froms[each]! < until; each++)
      sum += Math.min(until, this.untils[each]!) - this.froms[each]!
    return sum
  }

  /** Time from `from` to `until` in which they run, s. */
  running(from: number, until: number): number {
    while (this.over < this.count && this.untils[this.over]! <= from) this.over++
    let sum = until - from
    for (let each = this.over; each < this.count && this.froms[each]! < until; each++)
      sum -= Math.min(until, this.untils[each]!) - Math.max(from, this.froms[each]!)
    return Math.max(sum, 0)
  }

  /** Tells the standstills that begin before `at`, after those that have been told. */
  tellRests(at: number, told: Told): void {
    for (; this.over < this.count && this.froms[this.over]! < at; this.over++)
      told.rest(this.froms[this.over]!, this.untils[this.over]!)
  }

  /** When they stopped or started last before `until`, s; -Infinity where they did not. */
  lastTurn(until: number): number {
    const run = this.runBefore(until)
    if (this.froms[run]! < until) return this.froms[run]!
    return run > 0 ? this.untils[run - 1]! : -Infinity
  }

  /** The belts are where they are just before `until`. */
  end(travel: Travel, until: number): void {
    const run = this.runBefore(until)
    const stands = this.froms[run]! < until
    travel.at = this.ats[stands ? run + 1 : run]!
    travel.since = stands ? Infinity : this.sinces[run]!
    travel.isRunning = !stands
  }

  /** Number of the run that lasts until `until`, or that ends in a standstill that does; the last one ends never. */
  private runBefore(until: number): number {
    let run = 0
    while (run < this.count && this.untils[run]! < until) run++
    return run
  }

  private grow(): void {
    const wider = <T extends Float64Array | Uint8Array>(old: T, made: T): T => {
      made.set(old as never)
      return made
    }
    const size = this.froms.length * 2
    this.froms = wider(this.froms, new Float64Array(size))
    this.untils = wider(this.untils, new Float64Array(size))
    this.ats = wider(this.ats, new Float64Array(size))
    this.sinces = wider(this.sinces, new Float64Array(size))
    this.isOwn = wider(this.isOwn, new Uint8Array(size))
  }
}
