/** Numbers and names of a file that is read row by row, kept in little room. */

/** Numbers that come one by one. */
export class Growing {
  length = 0
  private room = new Float64Array(1024)

  push(value: number): void {
    if (this.length === this.room.length) {
      const wider = new Float64Array(2 * this.length)
      wider.set(this.room)
      this.room = wider
    }
    this.room[this.length++] = value
  }

  /** Those so far, not copied. */
  get values(): Float64Array {
    return this.room.subarray(0, this.length)
  }
}

/** Names that come again and again, kept once each. */
export class Names {
  readonly list: string[] = []
  private readonly places = new Map<string, number>()

  /** Place of `name` in the list. */
  placeOf(name: string): number {
    const known = this.places.get(name)
    if (known !== undefined) return known
    this.places.set(name, this.list.length)
    this.list.push(name)
    return this.list.length - 1
  }
}
