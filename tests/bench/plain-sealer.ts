/** The sealer of the plain program: marks on the way of its belts, taken in their order, and all that makes the belts stand. */
import { Stream } from '../../src/engine/stream.js'
import type { SealerFacts } from './heap-sealer.js'
import { hair, mask, type PlainConveyor, ring } from './plain-conveyor.js'

/** Stops that may lie ahead on the belts. */
const most = 64

export class PlainSealer {
  jams = 0
  rollChanges = 0
  /** Tape laid on cases and tape left on rolls that were changed, m. */
  tapeLaid = 0
  tapeLost = 0
  /** Times, s: of the shift in each state but working, and all that cases were inside. */
  waiting = 0
  blocked = 0
  jam = 0
  tape = 0
  area = 0
  /** Cases on the belts: from `firstOn` to before `nextOn`. */
  firstOn = 0
  nextOn = 0
  /** Belt travel, m, at the instant since which the belts run, s; and up to when all has happened, s. */
  private travelled = 0
  private since = 0
  private now = 0
  /** Belt travel at which each case entered, and from which the next may, m. */
  private readonly entries = new Float64Array(ring)
  private clearFrom = 0
  /** When each came to the flap place, and the last one left that, s. */
  readonly flapAt = new Float64Array(ring)
  private admittedLast = 0
  /** Stops ahead, the first first: belt travel, m, and the head that finds no tape there, or -1 where a case jams. */
  private readonly marks = new Float64Array(most)
  private readonly kinds = new Int8Array(most)
  private count = 0
  /** Tape left on each roll when all cases on the belts have theirs, and on the one that is changed before that, m. */
  private readonly rolls: number[]
  private readonly lostAt: number[]
  /** The case that left last: how far in ahead it stood last, m, since when it goes on, s, and the one ahead for which it stands next. */
  private isCrossing = false
  private crossing = -1
  private way = 0
  private goesSince = 0
  private ahead = 0
  private reach = 0
  private readonly jamDraws = new Stream('line.sealer', 'jam')
  private readonly clearingDraws = new Stream('line.sealer', 'jam clearing')

  constructor(
    private readonly facts: SealerFacts,
    private readonly infeed: PlainConveyor,
    private readonly outfeed: PlainConveyor,
    /** Takes a case whose way on the outfeed is sure. */
    private readonly onward: (number: number) => void,
    private readonly end: number,
    seed: string,
    shift: number,
  ) {
    this.rolls = facts.heads.map(() => facts.roll)
    this.lostAt = facts.heads.map(() => 0)
    this.jamDraws.begin(seed, shift)
    this.clearingDraws.begin(seed, shift)
  }

  private when(travel: number): number {
    return this.since + (travel - this.travelled) / this.facts.speed
  }

  /** Runs until the case that comes at `due` is on the belts: false where the shift ends before. */
  admits(number: number, due: number): boolean {
    let flapAt = Math.max(due, this.admittedLast)
    this.flapAt[number & mask] = flapAt
    for (;;) {
      const clear = this.when(this.clearFrom)
      const entersAt = Math.max(flapAt + this.facts.fold, clear)
      const endsAt =
        this.firstOn < this.nextOn ? this.when(this.entries[this.firstOn & mask]! + this.facts.bed) : Infinity
      const stopsAt = this.count > 0 ? this.when(this.marks[0]!) : Infinity
      const standsFrom = this.isCrossing ? this.standsFrom() : Infinity
      const first = Math.min(entersAt, endsAt, stopsAt, standsFrom)
      const at = Math.max(first, this.since)
      const until = Math.min(at, this.end, flapAt)
      this.waiting += Math.max(0, until - Math.max(this.now, clear))
      if (at > this.end) return false
      this.now = at
      if (standsFrom === first) this.standsAcross(at)
      else if (stopsAt === first) {
        // nobody comes in while it stands, but between two stops at one place
        const isIn = flapAt < at || (flapAt === at && this.since === at)
        this.stop(at)
        if (!isIn) flapAt = Math.max(flapAt, this.since)
        this.flapAt[number & mask] = flapAt
      } else if (endsAt === first) this.passOn(at)
      else break
    }
    this.infeed.leave(number, flapAt)
    this.admit(number, this.now)
    return true
  }

  private admit(number: number, at: number): void {
    const { facts, infeed, rolls } = this
    const length = infeed.lengths[number & mask]!
    const strip = length + 2 * facts.leg
    const entry = Math.max(this.travelled + facts.speed * (at - this.since), this.clearFrom)
    this.entries[number & mask] = entry
    this.clearFrom = entry + length + facts.gap
    this.admittedLast = at
    this.nextOn = number + 1
    if (this.jamDraws.next() < facts.jamChance) this.mark(entry + facts.heads[0]!, -1)
    for (let head = 0; head < rolls.length; head++) {
      if (rolls[head]! < strip - hair) {
        this.mark(entry + facts.heads[head]!, head)
        this.lostAt[head] = rolls[head]!
        rolls[head] = facts.roll
      }
      rolls[head]! -= strip
    }
  }

  /** A stop ahead: of two at one place the later one is behind. */
  private mark(travel: number, kind: number): void {
    const { marks, kinds } = this
    let at = this.count++
    for (; at > 0 && marks[at - 1]! > travel; at--) {
      marks[at] = marks[at - 1]!
      kinds[at] = kinds[at - 1]!
    }
    marks[at] = travel
    kinds[at] = kind
  }

  private stop(at: number): void {
    const { facts, end } = this
    const head = this.kinds[0]!
    this.count--
    this.marks.copyWithin(0, 1, this.count + 1)
    this.kinds.copyWithin(0, 1, this.count + 1)
    const isJam = head < 0
    const lasts = isJam ? -facts.jamClearing * Math.log(1 - this.clearingDraws.next()) : facts.rollChange
    const until = at + lasts
    if (isJam) {
      this.jams++
      this.jam += Math.min(until, end) - at
    } else {
      this.rollChanges++
      this.tape += Math.min(until, end) - at
      if (until <= end) this.tapeLost += this.lostAt[head]!
    }
    this.holds(at, until)
    this.stand(at, until)
  }

  private stand(from: number, until: number): void {
    this.travelled += this.facts.speed * (from - this.since)
    this.since = until
    this.now = until
  }

  /** The first case is at the end of the belts, which stand until it can go. */
  private passOn(at: number): void {
    const { outfeed, end } = this
    this.settle()
    const number = this.firstOn
    const length = this.infeed.lengths[number & mask]!
    const goes = outfeed.entry(number, length, at)
    this.blocked += Math.min(goes, end) - at
    if (goes > at) this.stand(at, goes)
    if (goes > end) return
    outfeed.enter(number, goes)
    this.tapeLaid += this.facts.heads.length * (length + 2 * this.facts.leg)
    this.area += goes - this.flapAt[number & mask]!
    this.firstOn++
    this.crossing = number
    this.isCrossing = true
    this.way = 0
    this.goesSince = goes
    this.ahead = outfeed.leftBefore + 1
  }

  // --- the case that stands across the joint ---

  /** When the belts stand next for the case that left last; it has crossed where that is never. */
  private standsFrom(): number {
    const { outfeed, crossing } = this
    const length = outfeed.lengths[crossing & mask]!
    while (this.ahead < crossing) {
      this.reach = outfeed.reach(crossing, this.ahead)
      if (this.reach > length - hair) break
      let from = this.goesSince
      if (this.reach > this.way + hair) {
        from = Math.max(
          from,
          outfeed.entered[crossing & mask]! + this.reach / outfeed.speed,
          outfeed.follows(crossing, this.ahead, this.reach),
        )
      }
      if (outfeed.left[this.ahead & mask]! > from) return from
      this.way = Math.max(this.way, this.reach)
      this.goesSince = from
      this.ahead++
    }
    this.isCrossing = false
    return Infinity
  }

  private standsAcross(at: number): void {
    const until = this.outfeed.left[this.ahead & mask]!
    this.blocked += Math.min(until, this.end) - at
    this.stand(at, until)
    this.way = this.reach
    this.goesSince = until
    this.ahead++
  }

  /** The belts stop and hold the case that left last, as long as its tail is on them. */
  private holds(at: number, until: number): void {
    const { outfeed, crossing } = this
    if (crossing < 0) return
    const place = crossing & mask
    const gone = Math.min(
      outfeed.speed * (at - outfeed.entered[place]!),
      this.way + outfeed.speed * (at - this.goesSince),
    )
    if (gone >= outfeed.lengths[place]! - hair) return
    outfeed.entered[place] = until - gone / outfeed.speed
    this.way = gone
    this.goesSince = until
    this.isCrossing = true
  }

  /** The case that left last has crossed, for the next one is at the end: its way on is sure. */
  settle(): void {
    if (this.crossing >= 0) this.onward(this.crossing)
    this.crossing = -1
    this.isCrossing = false
  }

  /** The shift is over: cases up to `next` are inside. */
  close(next: number): void {
    const { end, facts, infeed } = this
    this.settle()
    for (let number = this.firstOn; number < next; number++) this.area += end - this.flapAt[number & mask]!
    const reached = this.travelled + (this.since > end ? -hair : facts.speed * (end - this.since))
    for (let number = this.firstOn; number < this.nextOn; number++)
      for (const head of facts.heads)
        if (this.entries[number & mask]! + head <= reached)
          this.tapeLaid += infeed.lengths[number & mask]! + 2 * facts.leg
  }
}
