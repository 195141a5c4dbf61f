/** A first-in first-out ring of whole numbers that doubles when it is full, so that steady work allocates nothing. */
export class Ring {
  length = 0
  private head = 0
  private items: Int32Array

  /** `capacity` is rounded up to a power of two, so that a mask replaces a division. */
  constructor(capacity = 8) {
    this.items = new Int32Array(2 ** Math.ceil(Math.log2(Math.max(2, capacity))))
  }

  clear(): void {
    this.length = 0
    this.head = 0
  }

  push(item: number): void {
    if (this.length === this.items.length) this.grow()
    this.items[(this.head + this.length) & (this.items.length - 1)] = item
    this.length++
  }

  /** Takes the oldest; the ring must not be empty. */
  shift(): number {
    const item = this.items[this.head]!
    this.head = (this.head + 1) & (this.items.length - 1)
    this.length--
    return item
  }

  /** The item `index` places behind the oldest, 0 for the oldest itself. */
  at(index: number): number {
    return this.items[(this.head + index) & (this.items.length - 1)]!
  }

  private grow(): void {
    const wider = new Int32Array(this.items.length * 2)
    for (let index = 0; index < this.length; index++) wider[index] = this.at(index)
    this.items = wider
    this.head = 0
  }
}
