/**
 * The line of reference.yaml as one would write it for this line alone: case by case, each piece in turn, without events. The yardstick of
 * what generality costs, and a third opinion of the figures.
 */
import { Stream } from '../../src/engine/stream.js'
import { type LineFacts, referenceLine, type TwinResult } from './heap-line.js'
import { Durations } from './heap-tallies.js'
import { mask, PlainConveyor, ring } from './plain-conveyor.js'
import { PlainSealer } from './plain-sealer.js'

/** Cases in the order in which they come. */
class Arrivals {
  readonly times = new Float64Array(ring)
  arrived = 0
  /** Times that cases stand on the floor, s. */
  area = 0
  private dueAt = 0
  private readonly intervals = new Stream('arrivals.packing', 'time between')
  private readonly mix = new Stream('arrivals.packing', 'mix')

  constructor(
    private readonly facts: LineFacts,
    private readonly end: number,
    seed: string,
    shift: number,
  ) {
    this.intervals.begin(seed, shift)
    this.mix.begin(seed, shift)
    this.draw()
  }

  private draw(): void {
    this.dueAt += -this.facts.timeBetween * Math.log(1 - this.intervals.next())
  }

  /** The next case comes: its length, m, or 0 where none does in the shift. */
  next(): number {
    if (this.dueAt > this.end) return 0
    this.times[this.arrived++ & mask] = this.dueAt
    this.draw()
    return this.facts.lengths[Math.floor(this.mix.next() * this.facts.lengths.length)]!
  }

  /** A case goes onto the line, or the shift ends. */
  goes(number: number, time: number): void {
    this.area += Math.min(time, this.end) - this.times[number & mask]!
  }
}

/** Simulates one shift of `hours` of the study `seed`, with the random numbers that the model draws for it. */
export function simulatePlainLine(
  seed: string,
  shift: number,
  hours = 8,
  facts: LineFacts = referenceLine,
): TwinResult {
  const end = hours * 3600
  const arrivals = new Arrivals(facts, end, seed, shift)
  const infeed = new PlainConveyor(facts.infeed.length, facts.infeed.speed, true, end)
  const outfeed = new PlainConveyor(facts.outfeed.length, facts.outfeed.speed, false, end)
  const timeInSystem = new Durations()
  let [doneAt, busy, tapeOnGoodCases] = [0, 0, 0]

  const onward = (number: number) => {
    const from = Math.max(outfeed.findDue(number), doneAt)
    outfeed.leave(number, from)
    doneAt = from + facts.palletising
    busy += Math.max(0, Math.min(doneAt, end) - Math.min(from, end))
    if (doneAt > end) return
    timeInSystem.add(doneAt - arrivals.times[number & mask]!)
    tapeOnGoodCases += facts.sealer.heads.length * (infeed.lengths[number & mask]! + 2 * facts.sealer.leg)
  }
  const sealer = new PlainSealer(facts.sealer, infeed, outfeed, onward, end, seed, shift)

  /** The next case comes onto the infeed before the end of the shift. */
  const feeds = (number: number): boolean => {
    const length = arrivals.next()
    if (length === 0) return false
    const at = infeed.entry(number, length, arrivals.times[number & mask]!)
    arrivals.goes(number, at)
    if (at > end) return false
    infeed.enter(number, at)
    return true
  }

  let number = 0
  let isThere = feeds(number)
  while (sealer.admits(number, isThere ? infeed.findDue(number) : Infinity)) isThere = feeds(++number)

  // the shift is over: who is in the flap place, on the infeed, and on the floor
  const flapAt = sealer.flapAt[number & mask]!
  const isInside = isThere && flapAt <= end
  if (isInside) infeed.leave(number, flapAt)
  const inside = isInside ? number + 1 : number
  sealer.close(inside)
  let next = isThere ? number + 1 : number
  for (; feeds(next); next++) infeed.findDue(next)
  while (arrivals.next() > 0) arrivals.goes(arrivals.arrived - 1, end)
  infeed.close(inside, next)
  // of all that came to the outfeed it is known when they leave
  outfeed.close(next, next)

  const share = (of: PlainConveyor) => {
    const [waiting, blocked] = [of.empty / end, of.blocked / end]
    return { working: 1 - waiting - blocked, waiting, blocked, jam: 0, tape: 0 }
  }
  const { waiting, blocked, jam, tape } = sealer
  return {
    arrived: arrivals.arrived,
    out: timeInSystem.count,
    jams: sealer.jams,
    rollChanges: sealer.rollChanges,
    meanTimeInSystem: timeInSystem.mean(),
    timeInSystem95: timeInSystem.quantile(0.95),
    tapeLaid: sealer.tapeLaid,
    tapeLost: sealer.tapeLost,
    tapeOnGoodCases,
    held: {
      floor: arrivals.area / end,
      infeed: infeed.area / end,
      sealer: sealer.area / end,
      outfeed: outfeed.area / end,
      palletiser: busy / end,
    },
    states: {
      infeed: share(infeed),
      sealer: {
        working: (end - waiting - blocked - jam - tape) / end,
        waiting: waiting / end,
        blocked: blocked / end,
        jam: jam / end,
        tape: tape / end,
      },
      outfeed: share(outfeed),
      palletiser: { working: busy / end, waiting: 1 - busy / end, blocked: 0, jam: 0, tape: 0 },
    },
  }
}
