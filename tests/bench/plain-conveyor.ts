/** An accumulating conveyor in the plain program: when a case comes and is at the end, from the times of those ahead of it. */

/** Rounding that moves nothing, m or s. */
export const hair = 1e-9

/** Cases of which something is known at a time: a power of two above all that lie on the line. */
export const ring = 1024
export const mask = ring - 1

export class PlainConveyor {
  /** Length of each case, and of all before it, m. */
  readonly lengths = new Float64Array(ring)
  private readonly before = new Float64Array(ring)
  /** When each came, as far as its way from here says, is at the end, and leaves, s. */
  readonly entered = new Float64Array(ring)
  readonly due = new Float64Array(ring)
  readonly left = new Float64Array(ring)
  /** The last that had left when the last one came. */
  private gone = -1
  /** Time with nothing on it, and with one at the end that cannot leave, s; and all times on it. */
  empty = 0
  blocked = 0
  area = 0
  private leftLast = 0

  constructor(
    readonly length: number,
    readonly speed: number,
    /** Cases are put on from a place: while the exit is shut only where they will lie on it wholly. */
    private readonly fromPlace: boolean,
    /** End of the shift, s. */
    private readonly end: number,
  ) {
    this.left[mask] = -Infinity
    this.entered[mask] = -Infinity
  }

  /** When case `number` of this length can come that wants to at `at`. */
  entry(number: number, length: number, at: number): number {
    const { lengths, before, entered, left, due, speed } = this
    const last = (number - 1) & mask
    lengths[number & mask] = length
    before[number & mask] = before[last]! + lengths[last]!
    let time = Math.max(at, entered[last]! + lengths[last]! / speed)
    for (;;) {
      while (this.gone + 1 < number && left[(this.gone + 1) & mask]! <= time) this.gone++
      const first = (this.gone + 1) & mask
      const taken = this.gone + 1 < number ? before[number & mask]! - before[first]! : 0
      const isShut = this.gone + 1 < number && due[first]! <= time
      const isFull =
        taken >= this.length - hair || (this.fromPlace && isShut && taken + length > this.length + hair)
      if (taken > 0 && isFull) {
        time = left[first]!
        continue
      }
      // behind the one that left last, which goes on freely
      const past = before[number & mask]! - this.length - before[this.gone & mask]!
      const clear = this.gone >= 0 && past >= 0 ? left[this.gone & mask]! + past / speed : 0
      if (clear <= time) return time
      time = clear
    }
  }

  /** It comes. */
  enter(number: number, time: number): void {
    this.entered[number & mask] = time
    this.left[number & mask] = Infinity
    this.area -= Math.min(time, this.end)
    if (this.gone + 1 === number) this.empty += Math.min(time, this.end) - Math.min(this.leftLast, this.end)
  }

  /** Its way is sure from when it came: finds when it is at the end. */
  findDue(number: number): number {
    const last = (number - 1) & mask
    const due = Math.max(
      this.entered[number & mask]! + this.length / this.speed,
      this.left[last]! + this.lengths[last]! / this.speed,
    )
    this.due[number & mask] = due
    return due
  }

  leave(number: number, time: number): void {
    this.left[number & mask] = time
    this.leftLast = time
    this.area += Math.min(time, this.end)
    this.blocked += Math.max(0, Math.min(time, this.end) - Math.min(this.due[number & mask]!, this.end))
  }

  /** The shift is over, and cases from `number` to before `next` are on it, of which it is not known when they leave. */
  close(number: number, next: number): void {
    this.area += this.end * (next - number)
    if (number === next) this.empty += this.end - Math.min(this.leftLast, this.end)
    else this.blocked += Math.max(0, this.end - this.due[number & mask]!)
  }

  /** How far a case is in that stands across the joint, if all ahead stay where they are from `ahead` on, m. */
  reach(number: number, ahead: number): number {
    return this.length - (this.before[number & mask]! - this.before[ahead & mask]!)
  }

  /** When it may pass there that one has left before which it stood, s. */
  follows(number: number, ahead: number, reach: number): number {
    const beyond = this.before[number & mask]! + reach - this.length - this.before[(ahead - 1) & mask]!
    return beyond > 0 ? this.left[(ahead - 1) & mask]! + beyond / this.speed : 0
  }

  /** The last that had left when the last one came. */
  get leftBefore(): number {
    return this.gone
  }
}
